import { sql, type Kysely, type Transaction } from 'kysely'
import type { AuditAction, AuditSubjectKind } from '../core/audit/audit-actions.ts'
import { auditChanges, type AuditChanges } from '../core/audit/audit-changes.ts'
import type { CivilDate } from '../core/dates.ts'
import type { Database } from './database.ts'
import { nameFor } from './person-names.ts'
import { manages, type Viewer } from './viewer.ts'

export interface AuditSubject {
  kind: AuditSubjectKind
  id?: string
  /** What it was called then: of a thing, never of a person or customer, who is looked up by the id. */
  name?: string
}

/**
 * Adds a line to the trail of who changed what. Call it in the transaction of the change, so that there is neither without the other.
 *
 * `actor` is the signed-in person, null for the service itself or somebody at its console. `before` and `after` are the thing as it was and is:
 * the fields that differ are kept, values only where they are not about a person. Leave both out where the action says it all.
 */
export async function audit(
  trx: Transaction<Database>,
  entry: { actor: { id: string } | null; action: AuditAction; subject: AuditSubject; before?: object; after?: object },
): Promise<void> {
  const { actor, action, subject, before, after } = entry
  await trx
    .insertInto('audit_entry')
    .values({
      actor_id: actor?.id ?? null,
      action,
      subject_kind: subject.kind,
      subject_id: subject.id ?? null,
      subject_name: subject.name?.slice(0, 200) ?? null,
      // Through text: one driver would take a bare list for an array of its own.
      changes: sql`${JSON.stringify(auditChanges(subject.kind, before, after))}::text::jsonb`,
    })
    .execute()
}

export interface AuditEntry {
  id: string
  at: Date
  /** Null for the service itself. */
  actor: { id: string; name: string } | null
  action: AuditAction
  subject: { kind: AuditSubjectKind; id: string | null; name: string | null }
  changes: AuditChanges
}

export interface AuditFilter {
  personId?: string | undefined
  subject?: AuditSubjectKind | undefined
  /** A civil day of the place. */
  day?: { date: CivilDate; timeZone: string } | undefined
}

/** Entries that match, none for anyone but a manager. */
function matching(db: Kysely<Database>, viewer: Viewer, filter: AuditFilter) {
  let query = db.selectFrom('audit_entry').where(manages(viewer))
  if (filter.personId !== undefined) query = query.where('actor_id', '=', filter.personId)
  if (filter.subject !== undefined) query = query.where('subject_kind', '=', filter.subject)
  if (filter.day !== undefined) {
    const { date, timeZone } = filter.day
    query = query
      .where('at', '>=', sql<Date>`${date}::date::timestamp at time zone ${timeZone}`)
      .where('at', '<', sql<Date>`(${date}::date + 1)::timestamp at time zone ${timeZone}`)
  }
  return query
}

/** The same with the names of people as they are now, newest first. */
const named = (db: Kysely<Database>, viewer: Viewer, filter: AuditFilter) =>
  matching(db, viewer, filter)
    .leftJoin('person as actor', 'actor.id', 'audit_entry.actor_id')
    .leftJoin('person as changed', (join) =>
      join
        .on('audit_entry.subject_kind', '=', 'person')
        .on((eb) => eb(eb.cast<string>('changed.id', 'text'), '=', eb.ref('audit_entry.subject_id'))),
    )
    .selectAll('audit_entry')
    .select([nameFor(viewer, 'actor').as('actor_name'), nameFor(viewer, 'changed').as('changed_name')])
    .orderBy('audit_entry.at', 'desc')
    .orderBy('audit_entry.id', 'desc')

/** Newest first; none for anyone but a manager. A person who was changed is told by the name she has now. */
export async function listAudit(
  db: Kysely<Database>,
  viewer: Viewer,
  { limit, offset, ...filter }: AuditFilter & { limit: number; offset: number },
): Promise<{ items: AuditEntry[]; total: number }> {
  const { total } = await matching(db, viewer, filter)
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow()
  const rows = await named(db, viewer, filter).limit(limit).offset(offset).execute()
  return { items: rows.map(entryOf), total }
}

/** Entries read at once for a file: a statement of some milliseconds. */
const PAGE_ROWS = 500

/** Every entry that matches, newest first, a page at a time; none for anyone but a manager. What is added meanwhile is not in it. */
export async function* auditPages(db: Kysely<Database>, viewer: Viewer, filter: AuditFilter): AsyncGenerator<AuditEntry[]> {
  for (let last: { at_text: string; id: string } | undefined; ;) {
    // As text on both ways: a Date has milliseconds, the column microseconds, and entries between the two would be missing or there twice.
    let query = named(db, viewer, filter)
      .select(sql<string>`audit_entry.at::text`.as('at_text'))
      .limit(PAGE_ROWS)
    if (last !== undefined)
      query = query.where(sql<boolean>`(audit_entry.at, audit_entry.id) < (${last.at_text}::text::timestamptz, ${last.id}::uuid)`)
    const rows = await query.execute()
    last = rows.at(-1)
    if (last === undefined) return
    yield rows.map(entryOf)
  }
}

interface Row {
  id: string
  at: Date
  actor_id: string | null
  actor_name: string | null
  changed_name: string | null
  action: AuditAction
  subject_kind: AuditSubjectKind
  subject_id: string | null
  subject_name: string | null
  changes: AuditChanges
}

const entryOf = (row: Row): AuditEntry => ({
  id: row.id,
  at: row.at,
  actor: row.actor_id === null ? null : { id: row.actor_id, name: row.actor_name ?? '' },
  action: row.action,
  subject: { kind: row.subject_kind, id: row.subject_id, name: row.changed_name ?? row.subject_name },
  changes: row.changes,
})
