import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * A store has further rates of tax, a currency and a warranty, and may be the install's own; stores are grouped; foreign currencies have dated
 * rates; the own store has a price list. A store of before keeps its one rate as its usual one.
 */
const STATEMENTS = [
  sql`alter table store
    add column tax_name text constraint store_tax_name_length check (length(tax_name) between 1 and 40),
    add column other_rates jsonb not null default '[]'::jsonb constraint store_other_rates_is_list check (jsonb_typeof(other_rates) = 'array'),
    add column delivery_rate text,
    add column warranty_months integer constraint store_warranty check (warranty_months >= 0),
    add column currency text constraint store_currency check (currency ~ '^[A-Z]{3}$'),
    add column own boolean not null default false`,
  sql`create unique index store_own_once on store (own) where own`,
  sql`alter table product add column warranty_months integer constraint product_warranty check (warranty_months >= 0)`,
  sql`create table region (
    id uuid constraint region_pk primary key default gen_random_uuid(),
    name text not null constraint region_name_length check (length(name) between 1 and 80),
    version integer not null default 1)`,
  sql`create unique index region_name_once on region (lower(name))`,
  sql`create table region_store (
    region_id uuid not null constraint region_store_region_fk references region (id) on delete cascade,
    store_id uuid not null constraint region_store_store_fk references store (id) on delete cascade,
    constraint region_store_pk primary key (region_id, store_id))`,
  sql`create index region_store_of_store on region_store (store_id)`,
  sql`create table currency_rate (
    currency text not null constraint currency_rate_currency check (currency ~ '^[A-Z]{3}$'),
    seen_on date not null,
    rate double precision not null constraint currency_rate_above_zero check (rate > 0),
    source text not null constraint currency_rate_source_length check (length(source) between 1 and 120),
    entered_by uuid not null constraint currency_rate_entered_by_fk references person (id),
    entered_at timestamptz not null default now(),
    constraint currency_rate_pk primary key (currency, seen_on))`,
  sql`create table stock_item (
    product_id uuid constraint stock_item_pk primary key constraint stock_item_product_fk references product (id),
    stock_number text constraint stock_item_number_length check (length(stock_number) between 1 and 40),
    stock_count integer constraint stock_item_count check (stock_count >= 0),
    version integer not null default 1)`,
  sql`create unique index stock_item_number_once on stock_item (lower(stock_number)) where stock_number is not null`,
  sql`create table list_price (
    product_id uuid not null constraint list_price_item_fk references stock_item (product_id) on delete cascade,
    valid_from date not null,
    price_minor bigint not null constraint list_price_above_zero check (price_minor > 0),
    constraint list_price_pk primary key (product_id, valid_from))`,
]

export const money: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
