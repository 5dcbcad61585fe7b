import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import postgres from 'postgres'
import { IMPORT_JOB, importHandler } from '../../api/exchange/import-job.ts'
import { makeUploadFolder, uploadPath } from '../../api/exchange/upload.ts'
import { taskOf } from '../../api/jobs/task.ts'
import { connect, type Connection } from '../../db/connect.ts'
import { createInstall } from '../../db/install.ts'
import { enqueue, takeDueJob } from '../../db/jobs.ts'
import { migrate } from '../../db/migrate.ts'
import { granted, install, person } from '../support/rows.ts'
import { median, type Measurement } from './measurement.ts'

const ROWS = 50_000
const ROUNDS = 3

const nameAt = (index: number): string => `Halden bench ${index}`
const powerAt = (index: number): number => 5 + (index % 900)
const indexes = Array.from({ length: ROWS }, (_, index) => index)
const CSV = ['name,powerW,note', ...indexes.map((index) => `${nameAt(index)},${powerAt(index)},"row ${index}"`)].join('\n')

/** Reading the file, checking every row against the catalog, writing all of it: the whole job as its worker does it. */
async function timeOfImport({ db, engine }: Connection, folder: string, startedBy: string): Promise<number> {
  const order = { set: 'catalog', kind: 'heater', format: 'csv', fileName: 'bench', bytes: CSV.length, dryRun: false }
  const id = await enqueue(db, IMPORT_JOB, order, new Date(), startedBy)
  await makeUploadFolder(folder)
  await writeFile(uploadPath(folder, id), CSV)
  const job = await takeDueJob(db, [IMPORT_JOB], new Date(Date.now() + 1000))
  if (job === undefined) throw new Error('the job is not there')
  const started = performance.now()
  const outcome = await importHandler(folder)(taskOf({ db, engine, clock: Date.now }, job, new AbortController().signal))
  if (outcome['creates'] !== ROWS) throw new Error(`not all was written: ${JSON.stringify(outcome)}`)
  return performance.now() - started
}

/** The same rows by COPY over raw postgres.js, into the same table with its indexes and triggers: nothing is read, checked or decided. */
async function timeOfCopy(sql: postgres.Sql): Promise<number> {
  const lines = indexes.map((index) => `heater\t${nameAt(index)}\trow ${index}\t{"powerW":${powerAt(index)}}\n`)
  const started = performance.now()
  const target = await sql`copy product (kind, name, note, spec) from stdin`.writable()
  await pipeline(Readable.from(lines), target)
  return performance.now() - started
}

/** Rows a second of a catalog import of 50 000 rows on PostgreSQL, against COPY of the same rows. */
export default async function importRows(): Promise<Measurement[]> {
  const url = process.env['TEST_DATABASE_URL'] ?? ''
  const connection = await connect({ databaseUrl: url })
  const sql = postgres(url, { max: 1, onnotice: () => undefined })
  const folder = await mkdtemp(join(tmpdir(), 'driploop-bench-'))
  try {
    await migrate(connection.db)
    granted(await createInstall(connection.db, install))
    const { id } = await person(connection.db, 'manager')
    const empty = async (): Promise<void> => void (await sql`delete from product`)
    const [values, baselines]: [number[], number[]] = [[], []]
    for (let round = 0; round < ROUNDS; round += 1) {
      baselines.push((ROWS / (await timeOfCopy(sql))) * 1000)
      await empty()
      values.push((ROWS / (await timeOfImport(connection, folder, id))) * 1000)
      await empty()
    }
    const [value, baseline] = [median(values), median(baselines)]
    return [{ name: 'import.rows', value, unit: '1/s', baseline, ratio: value / baseline }]
  } finally {
    await sql.end()
    await connection.close()
    await rm(folder, { recursive: true, force: true })
  }
}
