import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * A region that is taken out ends the watches of it: without it they would be of anywhere, which nobody asked for. They are marked, so that their owner's list says why they ended.
 */
const STATEMENTS = [
  sql`alter table watch add column region_gone boolean not null default false`,
  sql`create function end_watches_of_region() returns trigger language plpgsql as $$
    begin
      update watch set ended_at = now(), region_gone = true, version = version + 1 where region_id = old.id and ended_at is null;
      return old;
    end $$`,
  sql`create trigger region_taken_out before delete on region for each row execute function end_watches_of_region()`,
]

export const watchRegions: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
