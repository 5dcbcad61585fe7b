import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * How people hear of what they watch outside the application. An address is theirs alone and is written to only once it was confirmed through a link,
 * of which the hash is kept. A device is what a browser gave for messages, known by the hash of its address.
 */
const STATEMENTS = [
  sql`create table person_mail (
    person_id uuid constraint person_mail_pk primary key constraint person_mail_person_fk references person (id) on delete cascade,
    address text not null constraint person_mail_address_length check (length(address) between 3 and 254),
    confirmed_at timestamptz,
    token_hash text constraint person_mail_token_once unique,
    token_ends_at timestamptz,
    last_letter_at timestamptz,
    failing_since timestamptz,
    constraint person_mail_token_ends check ((token_hash is null) = (token_ends_at is null)))`,
  sql`create table push_device (
    id_hash text constraint push_device_pk primary key constraint push_device_hash check (id_hash ~ '^[0-9a-f]{64}$'),
    person_id uuid not null constraint push_device_person_fk references person (id) on delete cascade,
    endpoint text not null constraint push_device_endpoint_length check (length(endpoint) <= 2000),
    p256dh text not null constraint push_device_key_length check (length(p256dh) <= 100),
    auth text not null constraint push_device_auth_length check (length(auth) <= 40),
    device text not null constraint push_device_word check (device in ('phone', 'tablet', 'computer')),
    created_at timestamptz not null,
    failing_since timestamptz)`,
  sql`create index push_device_of_person on push_device (person_id, created_at)`,
]

export const waysToHear: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of STATEMENTS) await statement.execute(db)
  },
}
