import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** What a store's own list says is watched as what members see is; no sighting is behind a deal of it. */
const STATEMENTS = [
  sql`alter table notice alter column sighting_id drop not null`,
  sql`create function note_watched_list() returns trigger language plpgsql as $$
    begin
      insert into watch_due (product_id, store_id)
      select distinct changed.product_id, store.id from changed join store on store.own
      where exists (select from watch where watch.product_id = changed.product_id and watch.ended_at is null)
        or exists (select from watch join product on product.kind = watch.kind where product.id = changed.product_id and watch.ended_at is null);
      return null;
    end $$`,
  sql`create trigger list_price_added_is_watched after insert on list_price referencing new table as changed
    for each statement execute function note_watched_list()`,
  sql`create trigger list_price_changed_is_watched after update on list_price referencing new table as changed
    for each statement execute function note_watched_list()`,
]

export const watchedList: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
