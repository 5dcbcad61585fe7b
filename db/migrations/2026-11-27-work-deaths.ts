import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** How often a worker fell silent over a job: a server that is stopped in order, or a job that goes on later, is none. */
export const workDeaths: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table job add column deaths integer not null default 0`.execute(db)
  },
}
