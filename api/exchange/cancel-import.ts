import { rm } from 'node:fs/promises'
import { setImmediate as breathe } from 'node:timers/promises'
import type { Result } from '../../core/result.ts'
import { dropRows } from '../../db/import-staging.ts'
import { cancelJob, findJob, withdrawJob } from '../../db/jobs.ts'
import type { Refusal } from '../../db/refusal.ts'
import type { Ctx } from '../context.ts'
import { IMPORT_JOB, READY } from './import-job.ts'
import { uploadPath } from './upload.ts'

/** Ends an import that is under way or was tried and waits to be written, and lets go of its file and rows. Errors: `closed` where it has ended. */
export async function cancelImport(c: Ctx, id: string): Promise<Result<void, Refusal<'closed'>>> {
  const db = c.get('db')
  const { clock, config } = c.get('deps')
  const now = new Date(clock())
  const cancelled = await cancelJob(db, id, IMPORT_JOB, now)
  const ended = cancelled.ok ? cancelled : await withdrawJob(db, id, IMPORT_JOB, READY, now)
  if (!ended.ok) return ended
  // Whoever reads it holds it open; nobody else needs it.
  await rm(uploadPath(config.dataDir, id), { force: true })
  // One at work lets go of its rows itself.
  if ((await findJob(db, id))?.state === 'cancelled') while (await dropRows(db, id)) await breathe()
  return ended
}
