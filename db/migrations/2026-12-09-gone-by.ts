import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * Which answers to notices say that a sighting is gone: taking one back takes back what it said, and nothing else. What was said before is held against the answers that stand. What a
 * manager takes back of a person's words is kept with the taking back, which may be reversed; that may be of a person who has nothing but such words.
 */
const STATEMENTS = [
  sql`alter table sighting_vote add column gone_by uuid[] not null default '{}'`,
  sql`update sighting_vote set gone_by = array(select n.id from notice n join sighting s on s.id = sighting_vote.sighting_id
    where n.person_id = sighting_vote.person_id and n.answer = 'gone' and n.product_id = s.product_id and n.store_id = s.store_id
      and (n.sighting_id = s.id or (n.condition <> 'used' and s.condition <> 'used' and n.seen_on <= s.seen_on)))
    where gone_on is not null`,
  sql`create index sighting_vote_found_gone on sighting_vote (person_id) where gone_on is not null`,
  sql`create table undone_gone (
    undo_id uuid not null constraint undone_gone_undo_fk references sighting_undo (id) on delete cascade,
    sighting_id uuid not null,
    gone_on date not null,
    gone_by uuid[] not null,
    constraint undone_gone_pk primary key (undo_id, sighting_id))`,
  sql`alter table sighting_undo add column found_gone integer not null default 0 constraint sighting_undo_found_gone check (found_gone >= 0)`,
  sql`alter table sighting_undo drop constraint sighting_undo_of_some`,
  sql`alter table sighting_undo add constraint sighting_undo_of_some check (sightings >= 0 and sightings + found_gone > 0)`,
]

export const goneBy: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
