import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * What somebody found gone is a word of its own beside a vote, which says whether a report was right. A sighting knows the first day on which it was found so, and whether it came with a
 * file. Of a price said to be still there, the id under which a person posts it on a day: whatever is pressed at once, it is posted under that one.
 */
const STATEMENTS = [
  sql`alter table sighting_vote alter column vote drop not null`,
  sql`alter table sighting_vote add column gone_on date`,
  sql`alter table sighting_vote add constraint sighting_vote_says_something check (vote is not null or gone_on is not null)`,
  sql`alter table sighting add column gone_on date`,
  sql`create index sighting_found_gone on sighting (product_id, store_id, gone_on) where gone_on is not null`,
  sql`alter table sighting add column imported boolean not null default false`,
  sql`alter table notice drop column vote_before`,
  sql`create table said_there (
    person_id uuid not null constraint said_there_person_fk references person (id) on delete cascade,
    product_id uuid not null constraint said_there_product_fk references product (id) on delete cascade,
    store_id uuid not null constraint said_there_store_fk references store (id) on delete cascade,
    condition text not null constraint said_there_condition check (condition in ('shelf', 'sale', 'clearance', 'used')),
    price_minor bigint not null constraint said_there_price check (price_minor > 0),
    day date not null,
    sighting_id uuid not null,
    constraint said_there_pk primary key (person_id, product_id, store_id, condition, price_minor, day))`,
  sql`create index said_there_of_product on said_there (product_id)`,
  sql`create index said_there_of_store on said_there (store_id)`,
]

export const foundGone: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
