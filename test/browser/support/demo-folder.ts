import { hashPassword } from '../../../api/auth/password-hash.ts'
import { drawDemoPictures } from '../../../api/demo/demo-pictures.ts'
import { civilDateAt, type CivilDate } from '../../../core/dates.ts'
import type { Role } from '../../../core/people/roles.ts'
import { connect } from '../../../db/connect.ts'
import { CLUB } from '../../../db/demo/club.ts'
import { DEMO_SEED, seedDemo, type SeededDemo } from '../../../db/demo/seed-demo.ts'
import { migrate } from '../../../db/migrate.ts'

const PASSWORDS: Record<Role, string> = {
  member: 'drift lantern orbit 52',
  advisor: 'gravel harbor signal 71',
  manager: 'willow ferry copper 38',
}

/** A data folder with the demo scenario on the embedded database, closed and unlocked. */
export interface DemoFolder {
  path: string
  /** The day at the club that the scenario ends before. */
  today: CivilDate
  demo: SeededDemo
}

export const todayAtClub = (): CivilDate => civilDateAt(Date.now(), CLUB.timeZone)

/** Makes an empty folder a demo's data folder: some eight seconds, half of them the database's own first start. */
export async function makeDemoFolder(path: string): Promise<DemoFolder> {
  const today = todayAtClub()
  const connection = await connect({ dataDir: path })
  try {
    await migrate(connection.db)
    const demo = await seedDemo(connection.db, { seed: DEMO_SEED, today, passwords: PASSWORDS, hash: hashPassword, now: new Date() })
    await drawDemoPictures(connection.db)
    return { path, today, demo }
  } finally {
    await connection.checkpoint()
    await connection.close()
  }
}
