import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** What a customer has at home already, kept for the next quote. */
export const customerGear: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await sql`alter table customer add column gear jsonb not null default '[]'
      constraint customer_gear_is_list check (jsonb_typeof(gear) = 'array')`.execute(db)
  },
}
