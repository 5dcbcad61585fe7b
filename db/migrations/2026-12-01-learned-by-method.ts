import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Two releases beside each other keep a snapshot of a day each: the key is day and method. With it goes what the record says of its reporters. */
const STATEMENTS = [
  sql`alter table price_snapshot_product drop constraint price_snapshot_product_day_fkey, drop constraint price_snapshot_product_pkey,
    add column method integer`,
  sql`update price_snapshot_product set method = price_snapshot.method from price_snapshot where price_snapshot.day = price_snapshot_product.day`,
  sql`alter table price_snapshot drop constraint price_snapshot_pkey, add primary key (day, method)`,
  sql`alter table price_snapshot_product alter column method set not null, add primary key (day, method, product_id),
    add constraint price_snapshot_product_of foreign key (day, method) references price_snapshot (day, method) on delete cascade`,
  sql`create table price_snapshot_reporter (
    day date not null,
    method integer not null,
    reporter_id uuid not null constraint price_snapshot_reporter_who references person (id) on delete cascade,
    confirmed integer not null check (confirmed >= 0),
    disputed integer not null check (disputed >= 0),
    primary key (day, method, reporter_id),
    constraint price_snapshot_reporter_of foreign key (day, method) references price_snapshot (day, method) on delete cascade
  )`,
]

export const learnedByMethod: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
