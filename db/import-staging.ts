import { sql, type Kysely, type Transaction } from 'kysely'
import type { JsonObject } from '../core/jobs/job.ts'
import type { Database } from './database.ts'

/**
 * What an import holds until all of its file is known to be sound: its rows, read and checked in short steps, so that nobody waits for it and a
 * killed server goes on where it was. One last transaction writes them where they belong.
 */

/** A row that was read: its place in the file and its content, in the shape of its data set. */
export interface StagedRow<Data = JsonObject> {
  line: number
  data: Data
}

/** A row as a file has it. One that is not sound is not checked nor written, and kept for what it is called: a kit of the file may name it. */
export interface ReadRow extends StagedRow<object> {
  sound: boolean
}

/** Adds rows; one that is there already, from before a server was killed, stays. */
export async function stageRows(trx: Transaction<Database>, jobId: string, rows: readonly ReadRow[]): Promise<void> {
  if (rows.length === 0) return
  // Through text: one driver would take a bare list for an array of its own.
  await sql`insert into import_row (job_id, line, data, action)
    select ${jobId}::uuid, one.line, one.data, case when one.sound then 'create' end
    from jsonb_to_recordset(${JSON.stringify(rows)}::text::jsonb) as one (line integer, data jsonb, sound boolean)
    on conflict do nothing`.execute(trx)
}

/**
 * Tells the planner how many rows are staged. It goes by what it last counted, a table that was empty between two imports, and by plans that a connection
 * made then: each step would sort or join all of a large file. The embedded engine never counts by itself.
 */
export async function countRows(db: Kysely<Database>): Promise<void> {
  await sql`analyze import_row`.execute(db)
}

/** The last line of the next `count` staged rows behind a line; undefined where there are none. */
export async function endOfRows(db: Kysely<Database>, jobId: string, after: number, count: number): Promise<number | undefined> {
  const { rows } = await sql<{ line: number | null }>`select max(line) as line from
    (select line from import_row where job_id = ${jobId} and line > ${after} order by line limit ${count}) as next`.execute(db)
  return rows[0]?.line ?? undefined
}

/** Some sound rows as they were staged. */
export async function stagedRows<Data>(db: Kysely<Database>, jobId: string, after: number, upTo: number): Promise<StagedRow<Data>[]> {
  const rows = await db
    .selectFrom('import_row')
    .select(['line', 'data'])
    .where('job_id', '=', jobId)
    .where('line', '>', after)
    .where('line', '<=', upTo)
    .where('action', 'is not', null)
    .orderBy('line')
    .execute()
  // A row is read in the shape that its own data set staged it in.
  return rows as unknown as StagedRow<Data>[]
}

/** What is to become of a row, and which one of ours it is about. */
export interface StagedDecision {
  line: number
  action: 'create' | 'update' | 'same'
  targetId: string | null
  targetVersion: number | null
  /** Fields found out by the check, in place of what the file said until a check begins anew. */
  found: JsonObject
  /** Fields that stay as the first check settled them. */
  settled?: JsonObject
}

/** What the file said in the fields that the check found, kept beside them in the row for a check that begins anew. */
const SAID = sql`jsonb_build_object('said', (select jsonb_object_agg(key, import_row.data -> key) from jsonb_object_keys(one.found) as key))`

export async function decideRows(trx: Transaction<Database>, jobId: string, decisions: readonly StagedDecision[]): Promise<void> {
  if (decisions.length === 0) return
  await sql`update import_row set action = one.action, target_id = one."targetId", target_version = one."targetVersion",
      data = case when one.found = '{}' then data else data || one.found || ${SAID} end || coalesce(one.settled, '{}')
    from jsonb_to_recordset(${JSON.stringify(decisions)}::text::jsonb) as one (line integer, action text, "targetId" uuid, "targetVersion" integer, found jsonb, settled jsonb)
    where import_row.job_id = ${jobId} and import_row.line = one.line`.execute(trx)
}

/** Makes some rows again what the file said, whatever an earlier check decided and found: what is here may have changed since. */
export async function undecideRows(trx: Transaction<Database>, jobId: string, after: number, upTo: number): Promise<void> {
  await sql`update import_row set action = 'create', target_id = null, target_version = null, data = (data || coalesce(data -> 'said', '{}')) - 'said'
    where job_id = ${jobId} and line > ${after} and line <= ${upTo} and action is not null
      and (action <> 'create' or target_id is not null or data -> 'said' is not null)`.execute(trx)
}

/** Rows deleted in one statement: a few milliseconds of work. */
const SWEEP_ROWS = 2_000

/** Lets go of some staged rows; false once there are none. */
export async function dropRows(db: Kysely<Database>, jobId: string): Promise<boolean> {
  const { numAffectedRows } = await sql`delete from import_row where job_id = ${jobId} and line in
    (select line from import_row where job_id = ${jobId} order by line limit ${SWEEP_ROWS})`.execute(db)
  return (numAffectedRows ?? 0n) > 0n
}

/** Rows that nobody will write any more: of imports that ended, and of those that were tried and not written until `before`. */
export async function dropLeftRows(db: Kysely<Database>, before: Date): Promise<void> {
  const { rows } = await sql<{ id: string }>`select id from job where ended_at < ${before}
    and exists (select from import_row where import_row.job_id = job.id)`.execute(db)
  for (const { id } of rows) {
    await sql`update job set outcome = outcome || '{"ready": false}' where id = ${id} and outcome @> '{"ready": true}'`.execute(db)
    while (await dropRows(db, id));
  }
}
