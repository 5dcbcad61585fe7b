import { rm } from 'node:fs/promises'
import { randomUUID } from 'node:crypto'
import type { ImportOrder } from '../../core/exchange/import-outcome.ts'
import { enqueue, listJobs } from '../../db/jobs.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { invalid, problem } from '../http/problem.ts'
import { IMPORT_JOB } from './import-job.ts'
import { makeUploadFolder, saveUpload, uploadPath } from './upload.ts'

/** Files that wait, each up to 100 MB of the server's disk. */
const MOST_WAITING = 10

/** Takes a file in and queues it; the id of the job, or the refusal. A file that cannot be queued is not kept. */
export async function startImport(c: Ctx, asked: Omit<ImportOrder, 'bytes'>) {
  const db = c.get('db')
  const { config, clock, wake } = c.get('deps')
  const waiting = (await listJobs(db, signedIn(c), IMPORT_JOB, 100)).filter(({ endedAt }) => endedAt === null).length
  if (waiting >= MOST_WAITING)
    return problem(c, 409, 'busy', `${waiting} files are waiting to be read. Cancel one, or send this one when they are done.`)
  const body = c.req.raw.body
  if (body === null) return invalid(c, 'body', 'The file is empty. Choose another one.')
  await makeUploadFolder(config.dataDir)
  const id = randomUUID()
  const path = uploadPath(config.dataDir, id)
  const bytes = await saveUpload(body, path)
  if (bytes === 0) {
    await rm(path, { force: true })
    return invalid(c, 'body', 'The file is empty. Choose another one.')
  }
  try {
    await enqueue(db, IMPORT_JOB, { ...asked, bytes }, new Date(clock()), signedIn(c).id, id)
  } catch (error) {
    await rm(path, { force: true })
    throw error
  }
  wake?.()
  return id
}
