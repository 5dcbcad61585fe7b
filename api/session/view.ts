import { getInstall } from '../../db/install.ts'
import type { SessionView } from '../answers/people.ts'
import type { Ctx } from '../context.ts'
import { plainInstall } from '../day.ts'

/** Who is signed in, and where. */
export async function sessionView(c: Ctx, person: SessionView['person']): Promise<SessionView> {
  return { person, install: plainInstall(await getInstall(c.get('db'))) }
}
