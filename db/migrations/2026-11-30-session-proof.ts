import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** When whoever is signed in last gave the password once more, for what an unattended screen should not do. */
export const sessionProof: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table session add column proven_at timestamptz`.execute(db)
  },
}
