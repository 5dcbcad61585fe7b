import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * The first schema. Money is int8 minor units, quantities are in the specs in SI units, instants are timestamptz, civil days are date.
 * Frozen once released: a later change is a later file.
 */
const PEOPLE = [
  sql`create table install (
    one boolean constraint install_pk primary key default true constraint install_is_one_row check (one),
    name text not null constraint install_name_length check (length(name) between 1 and 120),
    mode text not null constraint install_mode check (mode in ('club', 'store')),
    currency text not null constraint install_currency check (currency ~ '^[A-Z]{3}$'),
    country text not null constraint install_country check (country ~ '^[A-Z]{2}$'),
    time_zone text not null,
    units jsonb not null,
    contact text not null,
    paper text not null constraint install_paper check (paper in ('a4', 'letter')),
    energy_price_minor double precision not null constraint install_energy_price check (energy_price_minor >= 0),
    circuit_voltage_v double precision not null constraint install_circuit_voltage check (circuit_voltage_v > 0),
    circuit_current_a double precision not null constraint install_circuit_current check (circuit_current_a > 0),
    version integer not null default 1)`,
  sql`create table person (
    id uuid constraint person_pk primary key default gen_random_uuid(),
    name text not null constraint person_name_length check (length(name) between 1 and 120),
    sign_in_name text not null constraint person_sign_in_name_length check (length(sign_in_name) between 1 and 120),
    role text not null constraint person_role check (role in ('member', 'advisor', 'manager')),
    password_hash text not null,
    invited_by uuid constraint person_invited_by_fk references person (id),
    created_at timestamptz not null default now(),
    disabled_at timestamptz,
    version integer not null default 1)`,
  sql`create unique index person_sign_in_name_once on person (lower(sign_in_name))`,
  sql`create table session (
    id_hash text constraint session_pk primary key,
    person_id uuid not null constraint session_person_fk references person (id) on delete cascade,
    created_at timestamptz not null,
    expires_at timestamptz not null,
    last_seen_at timestamptz not null)`,
  sql`create index session_of_person on session (person_id)`,
  sql`create index session_expiry on session (expires_at)`,
  sql`create table one_use_link (
    token_hash text constraint one_use_link_pk primary key,
    id uuid not null default gen_random_uuid() constraint one_use_link_id_once unique,
    purpose text not null constraint one_use_link_purpose check (purpose in ('first_manager', 'invite')),
    role text not null constraint one_use_link_role check (role in ('member', 'advisor', 'manager')),
    name text,
    created_by uuid constraint one_use_link_created_by_fk references person (id),
    expires_at timestamptz not null,
    used_at timestamptz)`,
  sql`create table sign_in_attempt (
    id bigint generated always as identity constraint sign_in_attempt_pk primary key,
    key text not null,
    at timestamptz not null)`,
  sql`create index sign_in_attempt_of_key on sign_in_attempt (key, at)`,
]

const CATALOG = [
  sql`create table store (
    id uuid constraint store_pk primary key default gen_random_uuid(),
    name text not null constraint store_name_length check (length(name) between 1 and 120),
    kind text not null constraint store_kind check (kind in ('local', 'online')),
    town text,
    country text not null constraint store_country check (country ~ '^[A-Z]{2}$'),
    subdivision text,
    time_zone text not null,
    tax_basis_points double precision not null constraint store_tax check (tax_basis_points between 0 and 10000),
    prices_include_tax boolean not null,
    delivery_taxed boolean not null,
    delivery jsonb not null,
    return_days integer constraint store_return_days check (return_days >= 0),
    note text,
    archived boolean not null default false,
    version integer not null default 1)`,
  sql`create unique index store_name_once on store (lower(name))`,
  sql`create table product (
    id uuid constraint product_pk primary key default gen_random_uuid(),
    kind text not null constraint product_kind check (kind in ('tank', 'kit', 'stand', 'mat', 'lid', 'filter', 'heater', 'light',
      'substrate', 'conditioner', 'ammonia_source', 'test_kit', 'thermometer', 'power')),
    name text not null constraint product_name_length check (length(name) between 1 and 200),
    maker text,
    gtin text constraint product_gtin_digits check (gtin ~ '^([0-9]{8}|[0-9]{12,14})$'),
    oversize boolean not null default false,
    note text,
    spec jsonb not null constraint product_spec_is_object check (jsonb_typeof(spec) = 'object'),
    archived boolean not null default false,
    version integer not null default 1,
    constraint product_id_kind unique (id, kind))`,
  sql`create unique index product_name_once on product (kind, lower(name))`,
  // A twelve-digit number and the same with leading zeros are one number.
  sql`create unique index product_gtin_once on product (lpad(gtin, 14, '0')) where gtin is not null`,
  sql`create index product_by_kind on product (kind, name, id) where not archived`,
  // The kinds stand in the row so that the database itself refuses a kit inside a kit.
  sql`create table kit_part (
    kit_id uuid not null,
    part_id uuid not null,
    kit_kind text not null default 'kit' constraint kit_part_of_kit check (kit_kind = 'kit'),
    part_kind text not null constraint kit_part_is_no_kit check (part_kind <> 'kit'),
    quantity integer not null constraint kit_part_quantity check (quantity between 1 and 1000),
    position integer not null,
    constraint kit_part_pk primary key (kit_id, part_id),
    constraint kit_part_kit_fk foreign key (kit_id, kit_kind) references product (id, kind) on delete cascade,
    constraint kit_part_part_fk foreign key (part_id, part_kind) references product (id, kind))`,
  sql`create index kit_part_of_part on kit_part (part_id)`,
]

const SIGHTINGS = [
  sql`create table sighting (
    id uuid constraint sighting_pk primary key,
    product_id uuid not null constraint sighting_product_fk references product (id),
    store_id uuid not null constraint sighting_store_fk references store (id),
    condition text not null constraint sighting_condition check (condition in ('shelf', 'sale', 'clearance', 'used')),
    price_minor bigint not null constraint sighting_price check (price_minor > 0),
    printed_regular_minor bigint constraint sighting_printed_regular check (printed_regular_minor > 0),
    seen_on date not null,
    last_day date constraint sighting_last_day check (last_day >= seen_on),
    evidence text not null constraint sighting_evidence check (evidence in ('none', 'tag', 'receipt', 'page')),
    note text,
    reporter_id uuid not null constraint sighting_reporter_fk references person (id),
    received_at timestamptz not null default now(),
    doubt jsonb,
    withdrawn_at timestamptz,
    confirmations integer not null default 0,
    disputes integer not null default 0,
    accepted boolean not null generated always as (withdrawn_at is null and not (disputes > 0 and disputes >= confirmations)
      and (doubt is null or confirmations > 0)) stored,
    constraint sighting_last_day_of_offer check (last_day is null or condition in ('sale', 'clearance')))`,
  sql`create index sighting_newest_of_pair on sighting (product_id, store_id, seen_on desc, received_at desc, id) where accepted`,
  sql`create index sighting_of_product on sighting (product_id, seen_on, received_at)`,
  sql`create index sighting_newest on sighting (seen_on desc) where accepted`,
  sql`create index sighting_of_reporter on sighting (reporter_id, received_at)`,
  sql`create table sighting_vote (
    sighting_id uuid not null constraint sighting_vote_sighting_fk references sighting (id) on delete cascade,
    person_id uuid not null constraint sighting_vote_person_fk references person (id),
    vote text not null constraint sighting_vote_vote check (vote in ('confirm', 'dispute')),
    at timestamptz not null default now(),
    constraint sighting_vote_pk primary key (sighting_id, person_id))`,
  sql`create index sighting_vote_of_person on sighting_vote (person_id)`,
]

const QUOTES = [
  sql`create table customer (
    id uuid constraint customer_pk primary key default gen_random_uuid(),
    name text not null constraint customer_name_length check (length(name) <= 120),
    reach text not null default '',
    note text not null default '',
    erased_on date,
    created_at timestamptz not null default now(),
    version integer not null default 1)`,
  sql`create index customer_by_name on customer (lower(name))`,
  sql`create table quote (
    id uuid constraint quote_pk primary key default gen_random_uuid(),
    number text constraint quote_number_once unique,
    state text not null default 'draft' constraint quote_state check (state in ('draft', 'issued', 'accepted', 'declined', 'lapsed', 'withdrawn')),
    advisor_id uuid not null constraint quote_advisor_fk references person (id),
    customer_id uuid not null constraint quote_customer_fk references customer (id),
    title text not null,
    draft jsonb not null constraint quote_draft_is_object check (jsonb_typeof(draft) = 'object'),
    latest_revision integer not null default 0,
    stands_until date,
    link_version integer not null default 1,
    saved_at timestamptz not null default now(),
    version integer not null default 1,
    constraint quote_numbered_once_issued check (number is not null or state in ('draft', 'withdrawn')))`,
  sql`create index quote_of_customer on quote (customer_id)`,
  sql`create index quote_newest on quote (saved_at desc)`,
  sql`create index quote_open_until on quote (stands_until) where state = 'issued'`,
  sql`create table quote_counter (
    year integer constraint quote_counter_pk primary key,
    last integer not null)`,
  sql`create table quote_revision (
    quote_id uuid not null constraint quote_revision_quote_fk references quote (id),
    revision integer not null constraint quote_revision_from_one check (revision >= 1),
    document jsonb not null constraint quote_revision_document_is_object check (jsonb_typeof(document) = 'object'),
    summary jsonb not null,
    issued_at timestamptz not null,
    issued_on date not null,
    stands_until date not null,
    constraint quote_revision_pk primary key (quote_id, revision))`,
  sql`create function refuse_change_of_revision() returns trigger language plpgsql as $$
    begin
      raise exception 'an issued revision never changes' using errcode = 'restrict_violation', constraint = 'quote_revision_is_frozen';
    end $$`,
  sql`create trigger quote_revision_is_frozen before update or delete on quote_revision for each row execute function refuse_change_of_revision()`,
  sql`create trigger quote_revision_is_not_emptied before truncate on quote_revision for each statement execute function refuse_change_of_revision()`,
  sql`create table quote_answer (
    quote_id uuid not null,
    revision integer not null,
    answer text not null constraint quote_answer_answer check (answer in ('accepted', 'declined')),
    letter text constraint quote_answer_letter check (letter in ('A', 'B', 'C', 'D')),
    note text not null,
    at timestamptz not null,
    constraint quote_answer_pk primary key (quote_id, revision),
    constraint quote_answer_revision_fk foreign key (quote_id, revision) references quote_revision (quote_id, revision),
    constraint quote_answer_names_build check ((answer = 'accepted') = (letter is not null)))`,
  sql`create unique index quote_answer_one_acceptance on quote_answer (quote_id) where answer = 'accepted'`,
]

const SETUPS = [
  // The build a setup is for: the suggested one of the newest revision until the customer accepts one.
  sql`create table setup (
    id uuid constraint setup_pk primary key default gen_random_uuid(),
    quote_id uuid not null constraint setup_one_a_quote unique,
    revision integer not null,
    letter text not null constraint setup_letter check (letter in ('A', 'B', 'C', 'D')),
    link_version integer not null default 1,
    started_on date,
    last_used_at timestamptz,
    constraint setup_revision_fk foreign key (quote_id, revision) references quote_revision (quote_id, revision))`,
  sql`create table setup_tick (
    setup_id uuid not null constraint setup_tick_setup_fk references setup (id) on delete cascade,
    step_id text not null,
    ticked_on date not null,
    constraint setup_tick_pk primary key (setup_id, step_id))`,
  sql`create table setup_reading (
    id uuid constraint setup_reading_pk primary key,
    setup_id uuid not null constraint setup_reading_setup_fk references setup (id) on delete cascade,
    taken_on date not null,
    ammonia_mg_l double precision constraint setup_reading_ammonia check (ammonia_mg_l >= 0),
    nitrite_mg_l double precision constraint setup_reading_nitrite check (nitrite_mg_l >= 0),
    nitrate_mg_l double precision constraint setup_reading_nitrate check (nitrate_mg_l >= 0),
    ph double precision constraint setup_reading_ph check (ph between 0 and 14),
    kh_degrees double precision constraint setup_reading_kh check (kh_degrees >= 0),
    temperature_c double precision,
    note text not null,
    received_at timestamptz not null default now())`,
  sql`create index setup_reading_of_setup on setup_reading (setup_id, taken_on)`,
]

export const first: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of [...PEOPLE, ...CATALOG, ...SIGHTINGS, ...QUOTES, ...SETUPS]) await statement.execute(db)
  },
}
