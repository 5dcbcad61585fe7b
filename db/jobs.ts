import { sql, type Kysely, type Selectable } from 'kysely'
import type { Job, JobState, JsonObject } from '../core/jobs/job.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, JobTable } from './database.ts'
import { nameFor } from './person-names.ts'
import { isId, type Refusal } from './refusal.ts'
import type { Viewer } from './viewer.ts'

/** A worker that says nothing for this long has died: its job is taken up by another. Ten times what lies between two of its steps. */
const LEASE_MS = 30_000

/** A job in the hands of one worker. `takes` tells it from the same job in the hands of a later one. */
export interface TakenJob extends Job {
  lease: { id: string; takes: number }
}
export type Lease = TakenJob['lease']

/**
 * Puts work into the queue, to begin at `dueAt` or soon after. Returns its id.
 *
 * Within a transaction it is there for workers only once that is kept. `startedBy` is null for the service itself; an
 * `id` is given where something else is named after it.
 */
export async function enqueue(
  db: Kysely<Database>,
  kind: string,
  payload: JsonObject,
  dueAt: Date,
  startedBy: string | null = null,
  id?: string,
): Promise<string> {
  const values = { kind, payload, due_at: dueAt, started_by: startedBy, ...(id === undefined ? {} : { id }) }
  return (await db.insertInto('job').values(values).returning('id').executeTakeFirstOrThrow()).id
}

/** The oldest due job of these kinds that nobody works at, now in the caller's hands. One whose worker died is among them. */
export async function takeDueJob(db: Kysely<Database>, kinds: readonly string[], now: Date): Promise<TakenJob | undefined> {
  if (kinds.length === 0) return undefined
  const row = await db
    .updateTable('job')
    .set((eb) => ({ state: 'running', leased_until: leaseFrom(now), takes: eb('takes', '+', 1), deaths: deathsSoFar }))
    .where('id', '=', (eb) =>
      eb
        .selectFrom('job')
        .select('id')
        .where('kind', 'in', kinds)
        .where('due_at', '<=', now)
        .where((on) => on.or([on('state', '=', 'waiting'), on.and([on('state', '=', 'running'), on('leased_until', '<', now)])]))
        .orderBy('due_at')
        .orderBy('created_at')
        .limit(1)
        .forUpdate()
        .skipLocked(),
    )
    .returningAll()
    .executeTakeFirst()
  return row && { ...jobOf(row), lease: { id: row.id, takes: row.takes } }
}

/** How far a job has come. False where it is no longer the caller's: cancelled by somebody, or taken up by another worker. */
export async function reportProgress(
  db: Kysely<Database>,
  lease: Lease,
  at: { phase?: string; done?: number; total?: number; position?: JsonObject },
  now: Date,
): Promise<boolean> {
  const row = await held(db, lease)
    .set({ ...at, leased_until: leaseFrom(now) })
    .returning('cancel_asked')
    .executeTakeFirst()
  return row !== undefined && !row.cancel_asked
}

/**
 * Ends a job with what came of it. Call it with the transaction that does the work, so that one is never kept without the other.
 * False where it is no longer the caller's: then the work must be undone.
 */
export async function finishJob(
  db: Kysely<Database>,
  lease: Lease,
  state: Extract<JobState, 'done' | 'failed' | 'cancelled'>,
  outcome: JsonObject,
  now: Date,
): Promise<boolean> {
  const row = await held(db, lease).set({ state, outcome, ended_at: now, leased_until: null }).returning('id').executeTakeFirst()
  return row !== undefined
}

/** Puts a job back for the next worker, as a server does that is stopped. */
export async function putBackJob(db: Kysely<Database>, lease: Lease, dueAt: Date): Promise<void> {
  await held(db, lease).set({ state: 'waiting', leased_until: null, due_at: dueAt }).execute()
}

/** Frees every job of these kinds in anybody's hands. Only where no other process can be at work: on the embedded database, before the first is taken. */
export async function freeJobs(db: Kysely<Database>, kinds: readonly string[]): Promise<void> {
  if (kinds.length === 0) return
  await db
    .updateTable('job')
    .set({ state: 'waiting', leased_until: null, deaths: deathsSoFar })
    .where('state', '=', 'running')
    .where('kind', 'in', kinds)
    .execute()
}

/** Lets a job that ended go on with its kept position, once, in the name of whoever says so. Errors: `closed` where it is not in a state for it. */
export async function resumeJob(
  db: Kysely<Database>,
  id: string,
  kind: string,
  change: { when: JsonObject; payload: JsonObject; dueAt: Date; startedBy: string },
): Promise<Result<void, Refusal<'closed'>>> {
  const row = await db
    .updateTable('job')
    .set({
      state: 'waiting',
      due_at: change.dueAt,
      started_by: change.startedBy,
      cancel_asked: false,
      ended_at: null,
      outcome: null,
      done: 0,
      payload: sql`payload || ${change.payload}::jsonb`,
    })
    .where('id', '=', id)
    .where('kind', '=', kind)
    .where('state', '=', 'done')
    .where(sql<boolean>`outcome @> ${change.when}::jsonb`)
    .returning('id')
    .executeTakeFirst()
  return row ? ok(undefined) : refuse({ code: 'closed', message: 'This is no longer waiting for an answer. Look at it again.' })
}

/** Asks for an end: at once where nobody works at it yet, else as soon as its worker looks up. Errors: `closed` where it has ended. */
export async function cancelJob(db: Kysely<Database>, id: string, kind: string, now: Date): Promise<Result<void, Refusal<'closed'>>> {
  const row = await db
    .updateTable('job')
    .set({
      cancel_asked: true,
      state: sql<JobState>`case when state = 'waiting' then 'cancelled' else state end`,
      ended_at: sql<Date | null>`case when state = 'waiting' then ${now}::timestamptz else ended_at end`,
    })
    .where('id', '=', id)
    .where('kind', '=', kind)
    .where('state', 'in', ['waiting', 'running'])
    .returning('id')
    .executeTakeFirst()
  return row ? ok(undefined) : refuse({ code: 'closed', message: 'This has already ended. There is nothing left to cancel.' })
}

/**
 * Cancels a job that has ended and could go on, by the same outcome that resumeJob asks for: of the two only one succeeds.
 * Errors: `closed` where it is not in a state for it.
 */
export async function withdrawJob(
  db: Kysely<Database>,
  id: string,
  kind: string,
  when: JsonObject,
  now: Date,
): Promise<Result<void, Refusal<'closed'>>> {
  const row = await db
    .updateTable('job')
    .set({ state: 'cancelled', cancel_asked: true, outcome: null, ended_at: now })
    .where('id', '=', id)
    .where('kind', '=', kind)
    .where('state', '=', 'done')
    .where(sql<boolean>`outcome @> ${when}::jsonb`)
    .returning('id')
    .executeTakeFirst()
  return row ? ok(undefined) : refuse({ code: 'closed', message: 'This has already ended. There is nothing left to cancel.' })
}

export async function findJob(db: Kysely<Database>, id: string): Promise<Job | undefined> {
  if (!isId(id)) return undefined
  const row = await db.selectFrom('job').selectAll().where('id', '=', id).executeTakeFirst()
  return row && jobOf(row)
}

export type NamedJob = Job & { startedByName: string | null }

const namedJobs = (db: Kysely<Database>, viewer: Viewer, kind: string) =>
  db
    .selectFrom('job')
    .leftJoin('person', 'person.id', 'job.started_by')
    .selectAll('job')
    .select(nameFor(viewer, 'person').$castTo<string | null>().as('started_by_name'))
    .where('job.kind', '=', kind)
const namedOf = (row: Selectable<JobTable> & { started_by_name: string | null }): NamedJob => ({
  ...jobOf(row),
  startedByName: row.started_by_name,
})

/** Newest first. */
export async function listJobs(db: Kysely<Database>, viewer: Viewer, kind: string, limit: number): Promise<NamedJob[]> {
  return (await namedJobs(db, viewer, kind).orderBy('job.created_at', 'desc').limit(limit).execute()).map(namedOf)
}

export async function findJobOfKind(db: Kysely<Database>, viewer: Viewer, id: string, kind: string): Promise<NamedJob | undefined> {
  if (!isId(id)) return undefined
  const row = await namedJobs(db, viewer, kind).where('job.id', '=', id).executeTakeFirst()
  return row && namedOf(row)
}

/** Forgets those that ended before an instant, with all that hangs on them. */
export async function deleteJobsEndedBefore(db: Kysely<Database>, before: Date): Promise<void> {
  await db.deleteFrom('job').where('ended_at', '<', before).execute()
}

/** One more where it is taken out of the hands of a worker that fell silent; one that was put back has not. */
const deathsSoFar = sql<number>`deaths + case when state = 'running' then 1 else 0 end`

const leaseFrom = (now: Date): Date => new Date(now.getTime() + LEASE_MS)

const held = (db: Kysely<Database>, { id, takes }: Lease) =>
  db.updateTable('job').where('id', '=', id).where('takes', '=', takes).where('state', '=', 'running')

const jobOf = (row: Selectable<JobTable>): Job => ({
  id: row.id,
  kind: row.kind,
  payload: row.payload,
  state: row.state,
  dueAt: row.due_at.toISOString(),
  startedBy: row.started_by,
  createdAt: row.created_at.toISOString(),
  endedAt: row.ended_at?.toISOString() ?? null,
  takes: row.takes,
  deaths: row.deaths,
  phase: row.phase,
  done: row.done,
  total: row.total,
  position: row.position,
  cancelAsked: row.cancel_asked,
  outcome: row.outcome,
})
