import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Prices that clubs tell one another: whether this one does, whom it reads, and what those said. */
const STATEMENTS = [
  sql`create table open_prices (
    one boolean primary key default true check (one),
    publishes boolean not null
  )`,
  sql`create table other_club (
    id uuid primary key default gen_random_uuid(),
    address text not null unique check (length(address) between 1 and 300),
    name text not null check (length(name) between 1 and 200),
    added_at timestamptz not null default now(),
    read_at timestamptz,
    tried_at timestamptz,
    etag text,
    fault text,
    left_out integer not null default 0
  )`,
  // What it calls a store, and which of ours that is.
  sql`create table other_club_store (
    club_id uuid not null references other_club (id) on delete cascade,
    key text not null check (length(key) between 1 and 64),
    name text not null,
    town text,
    country text not null,
    store_id uuid references store (id) on delete set null,
    primary key (club_id, key)
  )`,
  sql`create index other_club_store_of_store on other_club_store (store_id)`,
  sql`create table other_club_price (
    club_id uuid not null references other_club (id) on delete cascade,
    origin_id text not null check (length(origin_id) between 8 and 64),
    store_key text not null,
    gtin text check (length(gtin) = 14),
    product_name text not null,
    condition text not null check (condition in ('shelf', 'sale', 'clearance', 'used')),
    price_minor bigint not null check (price_minor > 0),
    printed_regular_minor bigint check (printed_regular_minor > 0),
    currency text not null check (length(currency) = 3),
    includes_tax boolean not null,
    seen_on date not null,
    last_day date,
    primary key (club_id, origin_id),
    foreign key (club_id, store_key) references other_club_store (club_id, key) on delete cascade
  )`,
  sql`create index other_club_price_of_product on other_club_price (gtin, seen_on)`,
  sql`create index other_club_price_of_store on other_club_price (club_id, store_key)`,
]

export const otherClubs: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
