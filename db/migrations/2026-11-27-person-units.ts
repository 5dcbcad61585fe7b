import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Units that one person reads and types in; null: the install's. */
export const personUnits: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table person add column units jsonb`.execute(db)
  },
}
