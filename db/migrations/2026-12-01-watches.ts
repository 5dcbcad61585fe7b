import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * What members want to be told of, what they were told, and how it reached them. A watch is of one product, or of every product that meets a
 * requirement: `{ kind, tests, fits: { quoteId, letter } | null }`. Its limit is an amount, or the price to buy at by a day.
 */
const WATCHES = [
  sql`create table watch (
    id uuid constraint watch_pk primary key,
    person_id uuid not null constraint watch_person_fk references person (id) on delete cascade,
    product_id uuid constraint watch_product_fk references product (id) on delete cascade,
    requirement jsonb constraint watch_requirement_is_object check (jsonb_typeof(requirement) = 'object'),
    kind text generated always as (requirement ->> 'kind') stored,
    limit_minor bigint constraint watch_limit check (limit_minor > 0),
    currency text not null constraint watch_currency check (currency ~ '^[A-Z]{3}$'),
    by_day date,
    conditions text[] not null constraint watch_conditions check (cardinality(conditions) > 0 and conditions <@ array['new', 'clearance', 'used']),
    region_id uuid constraint watch_region_fk references region (id) on delete set null,
    store_ids uuid[] not null default '{}',
    created_at timestamptz not null default now(),
    ended_at timestamptz,
    version integer not null default 1,
    constraint watch_of_product_or_requirement check ((product_id is null) <> (requirement is null)),
    constraint watch_has_limit check (limit_minor is not null or by_day is not null))`,
  sql`create index watch_of_person on watch (person_id, created_at)`,
  sql`create index watch_of_product on watch (product_id) where ended_at is null`,
  sql`create index watch_of_kind on watch (kind) where ended_at is null and kind is not null`,
  sql`create index watch_by_day on watch (by_day) where ended_at is null and by_day is not null`,
]

/** `total_minor` is with tax, in the currency of the install on that day; `price_minor` is what the tag says in `currency`. */
const NOTICES = [
  sql`create table notice (
    id uuid constraint notice_pk primary key,
    watch_id uuid not null constraint notice_watch_fk references watch (id) on delete cascade,
    person_id uuid not null constraint notice_person_fk references person (id) on delete cascade,
    product_id uuid not null constraint notice_product_fk references product (id) on delete cascade,
    store_id uuid not null constraint notice_store_fk references store (id) on delete cascade,
    condition text not null constraint notice_condition check (condition in ('shelf', 'sale', 'clearance', 'used')),
    price_minor bigint not null constraint notice_price check (price_minor > 0),
    currency text not null constraint notice_currency check (currency ~ '^[A-Z]{3}$'),
    total_minor bigint not null constraint notice_total check (total_minor > 0),
    total_currency text not null constraint notice_total_currency check (total_currency ~ '^[A-Z]{3}$'),
    deal_key text not null constraint notice_deal_key_length check (length(deal_key) between 1 and 200),
    sighting_id uuid not null,
    seen_on date not null,
    deal_from date not null,
    deal_until date not null constraint notice_deal_days check (deal_until >= deal_from),
    last_day_stated boolean not null default false,
    told_at timestamptz not null default now(),
    seen_at timestamptz,
    answer text constraint notice_answer check (answer in ('still_there', 'gone')),
    answered_at timestamptz,
    constraint notice_deal_once unique (watch_id, deal_key),
    constraint notice_answered_at_a_time check ((answer is null) = (answered_at is null)))`,
  sql`create index notice_of_person on notice (person_id, told_at desc, id)`,
  sql`create index notice_not_seen on notice (person_id) where seen_at is null`,
  sql`create index notice_of_product on notice (product_id)`,
  sql`create index notice_of_store on notice (store_id)`,
  sql`create table notice_delivery (
    notice_id uuid not null constraint notice_delivery_notice_fk references notice (id) on delete cascade,
    channel text not null constraint notice_delivery_channel check (channel in ('email', 'push')),
    state text not null default 'waiting' constraint notice_delivery_state check (state in ('waiting', 'sent', 'failed', 'given_up')),
    tries integer not null default 0 constraint notice_delivery_tries check (tries >= 0),
    next_try_at timestamptz not null default now(),
    reason text constraint notice_delivery_reason_length check (length(reason) <= 300),
    constraint notice_delivery_pk primary key (notice_id, channel))`,
  sql`create index notice_delivery_due on notice_delivery (next_try_at) where state in ('waiting', 'failed')`,
  sql`create table feed_token (
    person_id uuid constraint feed_token_pk primary key constraint feed_token_person_fk references person (id) on delete cascade,
    token_hash text not null constraint feed_token_hash_once unique,
    created_at timestamptz not null default now())`,
]

/**
 * Products whose record changed while somebody watches them, and watches that are new: looked at soon after, never while a sighting is posted. A
 * row is only ever added and taken away, so that no post waits for another. Per statement, since an import writes a hundred thousand at once.
 */
const DUE = [
  sql`create table watch_due (
    id bigint generated always as identity constraint watch_due_pk primary key,
    product_id uuid constraint watch_due_product_fk references product (id) on delete cascade,
    watch_id uuid constraint watch_due_watch_fk references watch (id) on delete cascade,
    constraint watch_due_names_one check ((product_id is null) <> (watch_id is null)))`,
  sql`create function note_watched_sightings() returns trigger language plpgsql as $$
    begin
      insert into watch_due (product_id)
      select distinct changed.product_id from changed
      where exists (select from watch where watch.product_id = changed.product_id and watch.ended_at is null)
        or exists (select from watch join product on product.kind = watch.kind where product.id = changed.product_id and watch.ended_at is null);
      return null;
    end $$`,
  sql`create trigger sighting_added_is_watched after insert on sighting referencing new table as changed
    for each statement execute function note_watched_sightings()`,
  sql`create trigger sighting_changed_is_watched after update on sighting referencing new table as changed
    for each statement execute function note_watched_sightings()`,
]

export const watches: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of [...WATCHES, ...NOTICES, ...DUE]) await statement.execute(db)
  },
}
