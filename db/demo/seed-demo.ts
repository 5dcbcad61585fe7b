import { randomUUID } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { CivilDate } from '../../core/dates.ts'
import type { Role } from '../../core/people/roles.ts'
import type { Database } from '../database.ts'
import { createInstall } from '../install.ts'
import { inTransaction } from '../refusal.ts'
import { rebuildSummaries } from '../summary-rebuild.ts'
import { CLUB, PEOPLE } from './club.ts'
import { seedCatalog, seedPeople, seedSightings } from './seed-record.ts'
import { seedQuotes } from './seed-quotes.ts'
import { seedSaleTimes } from './seed-sale-times.ts'
import { seedSetup } from './seed-setup.ts'
import { seedWatches } from './seed-watches.ts'
import { demoRecord } from './sightings.ts'

export interface DemoOptions {
  /** The same seed and day make the same scenario. */
  seed: number
  /** The day at the club: what is on record ends on the day before. */
  today: CivilDate
  /** Of the first person of each role. */
  passwords: Record<Role, string>
  hash: (password: string) => Promise<string>
  /** Nothing is dated after it. Left out: the first hour of `today` at the club. */
  now?: Date
}

export interface SeededDemo {
  signIns: Array<{ role: Role; name: string; signInName: string; password: string }>
  /** The issued quote that shows the job done. */
  showcase: { quoteId: string; revision: number }
}

/** What `npm run demo` seeds from. Any other makes another year and a half. */
export const DEMO_SEED = 7

/** Midnight in the club's zone is five o'clock UTC in winter and four in summer. */
const FIRST_HOUR = 'T05:00:00Z'

/**
 * Fills an empty, migrated database with the demo scenario, all or nothing.
 *
 * Errors: throws where there is an install already; nothing was changed then.
 */
export async function seedDemo(db: Kysely<Database>, options: DemoOptions): Promise<SeededDemo> {
  const { seed, today, passwords, hash } = options
  const now = options.now ?? new Date(`${today}${FIRST_HOUR}`)
  const firsts = (['manager', 'advisor', 'member'] as const).flatMap((role) => PEOPLE.find((person) => person.role === role) ?? [])
  const [nobody, ...known] = await Promise.all([hash(randomUUID()), ...firsts.map((person) => hash(passwords[person.role]))])
  const hashes = new Map(firsts.map((person, index) => [person.id, known[index] ?? nobody]))
  const record = demoRecord(seed, today)
  return inTransaction(db, async (trx) => {
    const made = await createInstall(trx, CLUB)
    if (!made.ok) throw new Error('The demo scenario goes into an empty database only.')
    await seedPeople(trx, (person) => hashes.get(person.id) ?? nobody, record)
    await seedCatalog(trx)
    const saleTimes = await seedSaleTimes(trx)
    await seedSightings(trx, record)
    await rebuildSummaries(trx)
    const quotes = await seedQuotes(trx, { record, saleTimes }, today, now)
    await seedSetup(trx, quotes.school, today)
    await seedWatches(trx, record, today, now)
    return {
      signIns: firsts.map(({ role, name, signInName }) => ({ role, name, signInName, password: passwords[role] })),
      showcase: { quoteId: quotes.showcase, revision: 1 },
    }
  })
}
