import { sql, type Kysely, type Transaction } from 'kysely'
import { Migrator, type Migration } from 'kysely/migration'
import type { Database } from './database.ts'
import { first } from './migrations/2026-11-26-first.ts'
import { customerGear } from './migrations/2026-11-27-customer-gear.ts'
import { jobs } from './migrations/2026-11-27-jobs.ts'
import { kinds } from './migrations/2026-11-27-kinds.ts'
import { livestock } from './migrations/2026-11-27-livestock.ts'
import { money } from './migrations/2026-11-27-money.ts'
import { people } from './migrations/2026-11-27-people.ts'
import { personUnits } from './migrations/2026-11-27-person-units.ts'
import { pictures } from './migrations/2026-11-27-pictures.ts'
import { search } from './migrations/2026-11-27-search.ts'
import { withoutLimits } from './without-limits.ts'
import { workDeaths } from './migrations/2026-11-27-work-deaths.ts'
import { stagedProducts } from './migrations/2026-11-28-staged-products.ts'
import { listSales } from './migrations/2026-11-29-list-sales.ts'
import { saleTimes } from './migrations/2026-11-30-sale-times.ts'
import { sessionProof } from './migrations/2026-11-30-session-proof.ts'
import { whatIsLearned } from './migrations/2026-11-30-what-is-learned.ts'
import { learnedByMethod } from './migrations/2026-12-01-learned-by-method.ts'
import { otherClubs } from './migrations/2026-12-01-other-clubs.ts'
import { watches } from './migrations/2026-12-01-watches.ts'
import { waysToHear } from './migrations/2026-12-01-ways-to-hear.ts'
import { leastSaving } from './migrations/2026-12-01-worth-waiting.ts'
import { watchesByStore } from './migrations/2026-12-02-watches-by-store.ts'
import { priceSummaries } from './migrations/2026-12-03-price-summaries.ts'
import { sump } from './migrations/2026-12-03-sump.ts'
import { watchRegions } from './migrations/2026-12-04-watch-regions.ts'
import { sightingParts } from './migrations/2026-12-05-sighting-parts.ts'
import { watchedList } from './migrations/2026-12-05-watched-list.ts'
import { voteBeforeGone } from './migrations/2026-12-06-vote-before-gone.ts'
import { watchedPlace } from './migrations/2026-12-07-watched-place.ts'
import { foundGone } from './migrations/2026-12-08-found-gone.ts'
import { goneBy } from './migrations/2026-12-09-gone-by.ts'
import { onAWord } from './migrations/2026-12-09-on-a-word.ts'
import { goneWasDisputed } from './migrations/2026-12-10-gone-was-disputed.ts'

/** In order of their names, which start with their day. A landed one is never edited. */
export const MIGRATIONS: Record<string, Migration> = {
  '2026-11-26-first': first,
  '2026-11-27-customer-gear': customerGear,
  '2026-11-27-jobs': jobs,
  '2026-11-27-kinds': kinds,
  '2026-11-27-livestock': livestock,
  '2026-11-27-money': money,
  '2026-11-27-people': people,
  '2026-11-27-person-units': personUnits,
  '2026-11-27-pictures': pictures,
  '2026-11-27-search': search,
  '2026-11-27-work-deaths': workDeaths,
  '2026-11-28-staged-products': stagedProducts,
  '2026-11-29-list-sales': listSales,
  '2026-11-30-sale-times': saleTimes,
  '2026-11-30-session-proof': sessionProof,
  '2026-11-30-what-is-learned': whatIsLearned,
  '2026-12-01-learned-by-method': learnedByMethod,
  '2026-12-01-other-clubs': otherClubs,
  '2026-12-01-watches': watches,
  '2026-12-01-ways-to-hear': waysToHear,
  '2026-12-01-worth-waiting': leastSaving,
  '2026-12-02-watches-by-store': watchesByStore,
  '2026-12-03-price-summaries': priceSummaries,
  '2026-12-03-sump': sump,
  '2026-12-04-watch-regions': watchRegions,
  '2026-12-05-sighting-parts': sightingParts,
  '2026-12-05-watched-list': watchedList,
  '2026-12-06-vote-before-gone': voteBeforeGone,
  '2026-12-07-watched-place': watchedPlace,
  '2026-12-08-found-gone': foundGone,
  '2026-12-09-gone-by': goneBy,
  '2026-12-09-on-a-word': onAWord,
  '2026-12-10-gone-was-disputed': goneWasDisputed,
}

/** Of two starts at once the second waits for the first. Any number would do, as long as no other lock here has it. */
const ONE_AT_A_TIME = 20_261_126

const migratorOf = (db: Kysely<Database>, migrations = MIGRATIONS): Migrator =>
  new Migrator({ db, provider: { getMigrations: async () => migrations } })

/**
 * Brings the database to this release's schema, all or nothing; a second run does nothing. Returns the names applied.
 * Its statements have the time that they need, as many rows as there may be. A test names migrations of its own.
 *
 * Errors: throws what the database said, nothing having changed; throws too where the database is of a later release.
 */
export async function migrate(db: Kysely<Database>, migrations: Record<string, Migration> = MIGRATIONS): Promise<string[]> {
  return db.transaction().execute(async (trx) => {
    await withoutLimits(trx)
    await sql`select pg_advisory_xact_lock(${sql.lit(ONE_AT_A_TIME)})`.execute(trx)
    if (await isOfNewer(trx, migrations)) throw new Error(OF_NEWER)
    const { error, results } = await migratorOf(trx, migrations).migrateToLatest()
    if (error !== undefined) throw new Error('The database could not be brought to this release. Nothing was changed.', { cause: error })
    return (results ?? []).map((result) => result.migrationName)
  })
}

const OF_NEWER =
  'These tables are of a newer release: this one cannot read them, and nothing was changed. Start the newer release, or see “Back again” in the README.'

/** Whether a release that this one does not know of wrote the tables: what ran there is not among the steps of this one. */
async function isOfNewer(trx: Transaction<Database>, migrations: Record<string, Migration>): Promise<boolean> {
  const { there } = (await sql<{ there: boolean }>`select to_regclass('kysely_migration') is not null as there`.execute(trx)).rows[0] ?? {}
  if (!there) return false
  const { rows } = await sql<{ name: string }>`select name from kysely_migration`.execute(trx)
  return rows.some(({ name }) => !Object.hasOwn(migrations, name))
}

/** True when nothing is left to apply. */
export async function isMigrated(db: Kysely<Database>): Promise<boolean> {
  const migrations = await migratorOf(db).getMigrations()
  return migrations.every((migration) => migration.executedAt !== undefined)
}
