import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** The smallest saving that the manager holds worth waiting for; five of a currency with two decimals until she says otherwise. */
export const leastSaving: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table install add column least_saving_minor integer not null default 500
      check (least_saving_minor between 0 and 1000000000)`.execute(db)
  },
}
