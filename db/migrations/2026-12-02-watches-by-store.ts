import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** What changed is told by product and store: one sighting asks for the record of one store, however many there are of the product. */
const STATEMENTS = [
  sql`alter table watch_due add column store_id uuid constraint watch_due_store_fk references store (id) on delete cascade`,
  sql`alter table watch_due add constraint watch_due_store_of_product check (store_id is null or product_id is not null)`,
  sql`create or replace function note_watched_sightings() returns trigger language plpgsql as $$
    begin
      insert into watch_due (product_id, store_id)
      select distinct changed.product_id, changed.store_id from changed
      where exists (select from watch where watch.product_id = changed.product_id and watch.ended_at is null)
        or exists (select from watch join product on product.kind = watch.kind where product.id = changed.product_id and watch.ended_at is null);
      return null;
    end $$`,
]

export const watchesByStore: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
