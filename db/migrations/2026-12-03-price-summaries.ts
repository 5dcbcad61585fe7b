import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * What the sightings of a product at a store say, one row a pair, kept with each of them: however long the record is, a screen reads this. It is made anew from the sightings
 * whenever it was made by another method than the release's, so that nothing of it is in a backup.
 */
const STATEMENTS = [
  sql`create table price_summary (
    product_id uuid not null constraint price_summary_product_fk references product (id) on delete cascade,
    store_id uuid not null constraint price_summary_store_fk references store (id) on delete cascade,
    sightings integer not null,
    newest_id uuid,
    newest_on date,
    newest_at timestamptz,
    facts text not null,
    version bigint not null default 0,
    constraint price_summary_pk primary key (product_id, store_id),
    constraint price_summary_newest_whole check ((newest_id is null) = (newest_on is null) and (newest_id is null) = (newest_at is null))
  ) with (fillfactor = 80)`,
  sql`create index price_summary_newest on price_summary (newest_on desc, newest_at desc, newest_id) where newest_id is not null`,
  sql`create index price_summary_of_store on price_summary (store_id, newest_on desc, newest_at desc, newest_id) where newest_id is not null`,
  sql`create table price_summary_method (
    only_one boolean constraint price_summary_method_pk primary key default true constraint price_summary_method_only_one check (only_one),
    method integer not null
  )`,
]

export const priceSummaries: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
