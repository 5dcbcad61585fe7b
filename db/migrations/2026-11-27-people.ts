import { sql, type Kysely } from 'kysely'
import type { Migration } from 'kysely/migration'

/**
 * Who changed what, in rows that nothing changes or deletes; links that set a new password; what a session's device called itself; what of
 * the sightings was taken back by whom and why.
 */
const AUDIT = [
  sql`create table audit_entry (
    id uuid constraint audit_entry_pk primary key default gen_random_uuid(),
    at timestamptz not null default now(),
    actor_id uuid constraint audit_entry_actor_fk references person (id),
    action text not null constraint audit_entry_action check (action ~ '^[a-z_]{3,60}$'),
    subject_kind text not null constraint audit_entry_subject_kind check (subject_kind ~ '^[a-z_]{3,40}$'),
    subject_id text constraint audit_entry_subject_id check (length(subject_id) <= 60),
    subject_name text constraint audit_entry_subject_name check (length(subject_name) <= 200),
    changes jsonb not null constraint audit_entry_changes_are_list check (jsonb_typeof(changes) = 'array'))`,
  sql`create index audit_entry_newest on audit_entry (at desc, id)`,
  sql`create index audit_entry_of_actor on audit_entry (actor_id, at desc)`,
  sql`create function refuse_change_of_audit() returns trigger language plpgsql as $$
    begin
      raise exception 'the audit trail is only ever added to' using errcode = 'restrict_violation', constraint = 'audit_entry_is_frozen';
    end $$`,
  sql`create trigger audit_entry_is_frozen before update or delete on audit_entry for each row execute function refuse_change_of_audit()`,
  sql`create trigger audit_entry_is_not_emptied before truncate on audit_entry for each statement execute function refuse_change_of_audit()`,
]

const ACCOUNTS = [
  sql`alter table session add column device text not null default '' constraint session_device_length check (length(device) <= 60)`,
  sql`alter table one_use_link add column person_id uuid constraint one_use_link_person_fk references person (id) on delete cascade`,
  sql`alter table one_use_link drop constraint one_use_link_purpose`,
  sql`alter table one_use_link add constraint one_use_link_purpose check (purpose in ('first_manager', 'invite', 'new_password'))`,
  sql`alter table one_use_link add constraint one_use_link_names_person check ((purpose = 'new_password') = (person_id is not null))`,
  sql`create index one_use_link_of_person on one_use_link (person_id) where person_id is not null`,
]

const MODERATION = [
  sql`create table sighting_undo (
    id uuid constraint sighting_undo_pk primary key default gen_random_uuid(),
    reporter_id uuid not null constraint sighting_undo_reporter_fk references person (id),
    undone_by uuid not null constraint sighting_undo_undone_by_fk references person (id),
    at timestamptz not null,
    sightings integer not null constraint sighting_undo_of_some check (sightings > 0),
    reversed_at timestamptz)`,
  sql`create index sighting_undo_newest on sighting_undo (at desc)`,
  sql`alter table sighting add column undo_id uuid constraint sighting_undo_fk references sighting_undo (id)`,
  sql`alter table sighting add column withdrawn_reason text constraint sighting_withdrawn_reason check (length(withdrawn_reason) <= 500)`,
  sql`alter table sighting add constraint sighting_undone_is_withdrawn check (undo_id is null or withdrawn_at is not null)`,
  sql`create index sighting_of_undo on sighting (undo_id) where undo_id is not null`,
  // The managers' list: everything that waits for a second person. It is short, however long the record is.
  sql`create index sighting_waiting on sighting (received_at desc, id) where not accepted and withdrawn_at is null`,
]

export const people: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const statement of [...AUDIT, ...ACCOUNTS, ...MODERATION]) await statement.execute(db)
  },
}
