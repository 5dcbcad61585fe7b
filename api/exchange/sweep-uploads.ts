import { readdir, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Kysely } from 'kysely'
import type { Database } from '../../db/database.ts'
import { findJob } from '../../db/jobs.ts'
import { uploadFolder } from './upload.ts'

/** Files that no import will read any more: their server was killed while they came in, or before it took them away. Call it at the start. */
export async function sweepUploads(db: Kysely<Database>, dataDir: string): Promise<void> {
  const names = await readdir(uploadFolder(dataDir)).catch(() => [])
  for (const name of names) {
    const job = await findJob(db, name)
    if (job === undefined || job.endedAt !== null) await rm(join(uploadFolder(dataDir), name), { force: true })
  }
}
