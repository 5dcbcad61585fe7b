import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** When sales are known to happen: at the stores named, or at every store where none is. */
const STATEMENTS = [
  sql`create table sale_time (
    id uuid primary key default gen_random_uuid(),
    name text not null check (length(name) between 1 and 80),
    rule jsonb not null,
    length_days integer not null check (length_days between 1 and 62),
    note text,
    version integer not null default 1
  )`,
  sql`create unique index sale_time_name on sale_time (lower(name))`,
  sql`create table sale_time_store (
    sale_time_id uuid not null references sale_time (id) on delete cascade,
    store_id uuid not null references store (id) on delete cascade,
    primary key (sale_time_id, store_id)
  )`,
  sql`create index sale_time_store_of_store on sale_time_store (store_id)`,
]

export const saleTimes: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
