import { sql, type Kysely } from 'kysely'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { Database } from './database.ts'

/** Faults written in one statement, far from the 65 535 values that it can have. */
const STEP_FAULTS = 5_000
/** Faults read at once. */
const PAGE_FAULTS = 1_000

export async function addFaults(db: Kysely<Database>, jobId: string, faults: readonly ImportFault[]): Promise<void> {
  for (let start = 0; start < faults.length; start += STEP_FAULTS) {
    const step = faults.slice(start, start + STEP_FAULTS)
    const values = step.map(({ row, column, message }) => ({ job_id: jobId, line: row, heading: column, message }))
    await db.insertInto('import_fault').values(values).execute()
  }
}

const faultsAfter = async (db: Kysely<Database>, jobId: string, after: { line: number; id: number | string }, limit: number) =>
  db
    .selectFrom('import_fault')
    .select(['id', 'line', 'heading', 'message'])
    .where('job_id', '=', jobId)
    .where(sql<boolean>`(line, id) > (${after.line}, ${after.id})`)
    .orderBy('line')
    .orderBy('id')
    .limit(limit)
    .execute()

const faultOf = ({ line, heading, message }: { line: number; heading: string | null; message: string }): ImportFault => ({
  row: line,
  column: heading,
  message,
})

const BEFORE_ALL = { line: 0, id: 0 }

/** The same fault in more rows is told once: a store that is not here would be named in every one of its sightings. Up to here each row is listed. */
const TOLD_EACH = 3

/** The first of them, in the order of the file; one that many rows have, once, with how many. */
export async function listFaults(db: Kysely<Database>, jobId: string, limit: number): Promise<ImportFault[]> {
  const { rows } = await sql<{ line: number; heading: string | null; message: string; rows: number }>`
    select line, heading, message, rows from (select id, line, heading, message,
        count(*) over (partition by heading, message)::integer as rows,
        row_number() over (partition by heading, message order by line, id) as nth
      from import_fault where job_id = ${jobId}) as f
    where rows <= ${TOLD_EACH}::integer or nth = 1 order by line, id limit ${limit}`.execute(db)
  return rows.map((row) => ({ ...faultOf(row), ...(row.rows > TOLD_EACH && { rows: row.rows }) }))
}

/** All of them in the order of the file, those of one row as they were found, a page at a time. */
export async function* faultPages(db: Kysely<Database>, jobId: string): AsyncGenerator<ImportFault[]> {
  for (let after: Parameters<typeof faultsAfter>[2] = BEFORE_ALL; ;) {
    const page = await faultsAfter(db, jobId, after, PAGE_FAULTS)
    const last = page.at(-1)
    if (last === undefined) return
    after = last
    yield page.map(faultOf)
  }
}
