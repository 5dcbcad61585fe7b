import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Every index of the sightings: the table that holds them now keeps its own, under its own name, so that none is built anew. */
const INDEXES: ReadonlyArray<[name: string, of: string]> = [
  ['newest_of_pair', '(product_id, store_id, seen_on desc, received_at desc, id) where accepted'],
  ['of_product', '(product_id, seen_on, received_at)'],
  ['newest', '(seen_on desc) where accepted'],
  ['of_reporter', '(reporter_id, received_at)'],
  ['of_undo', '(undo_id) where undo_id is not null'],
  ['waiting', '(received_at desc, id) where not accepted and withdrawn_at is null'],
]
const FOREIGN_KEYS: ReadonlyArray<[name: string, column: string, table: string]> = [
  ['product', 'product_id', 'product'],
  ['store', 'store_id', 'store'],
  ['reporter', 'reporter_id', 'person'],
  ['undo', 'undo_id', 'sighting_undo'],
]

/**
 * Sightings lie in parts by ranges of their id, which begins with the moment in which it was made. What is there becomes the part for everything that no other part is of: no row is
 * copied, and none can be without a place. Parts of years are made by the service, which moves their rows out of it.
 */
const STATEMENTS = [
  sql`alter table sighting_vote drop constraint sighting_vote_sighting_fk`,
  sql`drop trigger sighting_added_is_watched on sighting`,
  sql`drop trigger sighting_changed_is_watched on sighting`,
  sql`alter table sighting rename to sighting_rest`,
  sql`alter table sighting_rest rename constraint sighting_pk to sighting_rest_pk`,
  ...INDEXES.map(([name]) => sql`alter index ${sql.ref(`sighting_${name}`)} rename to ${sql.ref(`sighting_rest_${name}`)}`),
  sql`create table sighting (like sighting_rest including defaults including generated including constraints) partition by range (id)`,
  sql`alter table sighting add constraint sighting_pk primary key (id)`,
  ...INDEXES.map(([name, of]) => sql`create index ${sql.ref(`sighting_${name}`)} on sighting ${sql.raw(of)}`),
  ...FOREIGN_KEYS.map(
    ([name, column, table]) =>
      sql`alter table sighting add constraint ${sql.ref(`sighting_${name}_fk`)} foreign key (${sql.ref(column)}) references ${sql.table(table)} (id)`,
  ),
  sql`alter table sighting attach partition sighting_rest default`,
  sql`alter table sighting_vote add constraint sighting_vote_sighting_fk foreign key (sighting_id) references sighting (id) on delete cascade`,
  sql`create trigger sighting_added_is_watched after insert on sighting referencing new table as changed
    for each statement execute function note_watched_sightings()`,
  sql`create trigger sighting_changed_is_watched after update on sighting referencing new table as changed
    for each statement execute function note_watched_sightings()`,
  // Nothing else ever counts a table that lies in parts.
  sql`analyze sighting`,
]

export const sightingParts: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
