import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** What the price record taught, a dated snapshot a night: what belongs to kinds and stores in one row, products one by one, since a screen asks for few. `method` tells the shape and the reckoning: what another release learnt is learnt anew. */
const STATEMENTS = [
  sql`create table price_snapshot (
    day date primary key,
    method integer not null,
    learned jsonb not null,
    made_at timestamptz not null default now()
  )`,
  sql`create table price_snapshot_product (
    day date not null references price_snapshot (day) on delete cascade,
    product_id uuid not null,
    learned jsonb not null,
    primary key (day, product_id)
  )`,
]

export const whatIsLearned: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
