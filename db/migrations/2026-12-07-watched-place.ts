import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * What things cost is another thing once a place becomes a store, a club again, or another store its own: every watch is looked at anew then. So is a product of which stock came
 * in: what there was none of is no deal.
 */
const STATEMENTS = [
  sql`create function look_at_every_watch() returns trigger language plpgsql as $$
    begin
      insert into watch_due (watch_id) select id from watch where ended_at is null;
      return null;
    end $$`,
  sql`create trigger install_mode_is_watched after update of mode on install for each row
    when (old.mode is distinct from new.mode) execute function look_at_every_watch()`,
  sql`create trigger own_store_is_watched after update of own, archived on store for each row
    when (old.own is distinct from new.own or (new.own and old.archived is distinct from new.archived)) execute function look_at_every_watch()`,
  sql`create trigger own_store_added_is_watched after insert on store for each row when (new.own) execute function look_at_every_watch()`,
  sql`create trigger stock_changed_is_watched after update on stock_item referencing new table as changed
    for each statement execute function note_watched_list()`,
]

export const watchedPlace: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
