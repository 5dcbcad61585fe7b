import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/** Work in the background, and what an import holds until all of its file is known to be sound. */
const JOBS = [
  sql`create table job (
    id uuid constraint job_pk primary key default gen_random_uuid(),
    kind text not null constraint job_kind_length check (length(kind) between 1 and 60),
    payload jsonb not null constraint job_payload_is_object check (jsonb_typeof(payload) = 'object'),
    state text not null default 'waiting' constraint job_state check (state in ('waiting', 'running', 'done', 'failed', 'cancelled')),
    due_at timestamptz not null,
    started_by uuid constraint job_started_by_fk references person (id),
    created_at timestamptz not null default now(),
    leased_until timestamptz,
    takes integer not null default 0,
    cancel_asked boolean not null default false,
    phase text not null default '',
    done integer not null default 0,
    total integer not null default 0,
    position jsonb not null default '{}' constraint job_position_is_object check (jsonb_typeof(position) = 'object'),
    outcome jsonb constraint job_outcome_is_object check (jsonb_typeof(outcome) = 'object'),
    ended_at timestamptz,
    constraint job_ends_in_a_state check ((ended_at is not null) = (state in ('done', 'failed', 'cancelled'))))`,
  sql`create index job_due on job (due_at) where state in ('waiting', 'running')`,
  sql`create index job_newest on job (created_at desc)`,
  // Rows of a file that were read and found sound by themselves; gone with the end of their import.
  sql`create table import_row (
    job_id uuid not null constraint import_row_job_fk references job (id) on delete cascade,
    line integer not null,
    data jsonb not null constraint import_row_data_is_object check (jsonb_typeof(data) = 'object'),
    action text constraint import_row_action check (action in ('create', 'update', 'same')),
    target_id uuid,
    target_version integer,
    constraint import_row_pk primary key (job_id, line))`,
  sql`create table import_fault (
    id bigint generated always as identity constraint import_fault_pk primary key,
    job_id uuid not null constraint import_fault_job_fk references job (id) on delete cascade,
    line integer not null,
    heading text,
    message text not null)`,
  sql`create index import_fault_of_job on import_fault (job_id, line)`,
]

export const jobs: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of JOBS) await statement.execute(db)
  },
}
