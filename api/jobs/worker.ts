import type { Kysely } from 'kysely'
import type { Logger } from 'pino'
import type { Database } from '../../db/database.ts'
import { finishJob, freeJobs, putBackJob, takeDueJob, type Lease, type TakenJob } from '../../db/jobs.ts'
import { isDiskFull, isUnreachable } from '../../db/reach.ts'
import { loggable } from '../http/log.ts'
import { JobCancelled, JobFailed, JobInterrupted, taskOf, type JobHandler } from './task.ts'

/** Whoever asks for work wakes the worker of this process at once; this finds what is due by itself, and what another process left. */
const LOOK_MS = 2_000
/** A job that ended its process this often would do so for ever. */
const MOST_DEATHS = 5
/** A database that went away comes back within this time, or the next try waits as long again. */
const RETRY_MS = 5_000

const WORDS = {
  deaths: 'The server ended five times while it was at this, and does not try again.',
  disk: 'The disk of the server is full. Nothing of it was kept. Make room, then start it again.',
  bug: 'Something broke here; the log of the server has it. Nothing of it was kept.',
}

export interface Workshop {
  db: Kysely<Database>
  engine: 'embedded' | 'postgres'
  handlers: Readonly<Record<string, JobHandler>>
  clock: () => number
  log: Logger
}
interface Shift extends Workshop {
  /** Of a job that could not be put back, the database being away: nobody died over it, and it goes back as soon as there is an answer. */
  owed: Set<Lease>
}
export interface Worker {
  /** Looks for work now and not at the next turn. */
  wake(): void
  /** Ends after the step under way; what was begun is put back. */
  stop(): Promise<void>
}

/** Works at one due job at a time, the oldest first, until it is stopped. */
export function startWorker(given: Workshop): Worker {
  const shop: Shift = { ...given, owed: new Set() }
  const stopping = new AbortController()
  let timer: NodeJS.Timeout | undefined
  let turn = Promise.resolve()
  let looking = false
  const look = async (): Promise<void> => {
    looking = true
    clearTimeout(timer)
    while (!stopping.signal.aborted && (await workOnNext(shop, stopping.signal)));
    looking = false
    if (!stopping.signal.aborted) timer = setTimeout(begin, LOOK_MS).unref()
  }
  const begin = (): void => {
    if (looking || stopping.signal.aborted) return
    turn = look().catch((error: unknown) => {
      looking = false
      shop.log.warn({ err: loggable(error) }, 'looking for work failed')
      if (!stopping.signal.aborted) timer = setTimeout(begin, RETRY_MS).unref()
    })
  }
  // On the embedded database nobody else can be at work: what is in hand is of a process that has died.
  turn = (shop.engine === 'embedded' ? freeJobs(shop.db, Object.keys(shop.handlers)) : Promise.resolve())
    .catch((error: unknown) => shop.log.warn({ err: loggable(error) }, 'freeing jobs failed'))
    .then(begin)
  return {
    wake: begin,
    async stop() {
      stopping.abort()
      clearTimeout(timer)
      await turn
    },
  }
}

/** False where nothing is due. */
async function workOnNext(shop: Shift, stopping: AbortSignal): Promise<boolean> {
  for (const lease of shop.owed) await putBack(shop, lease, 0)
  const job = await takeDueJob(shop.db, Object.keys(shop.handlers), new Date(shop.clock()))
  if (job === undefined) return false
  const end = (state: 'done' | 'failed' | 'cancelled', outcome: Parameters<typeof finishJob>[3]): Promise<boolean> =>
    finishJob(shop.db, job.lease, state, outcome, new Date(shop.clock()))
  try {
    if (job.deaths >= MOST_DEATHS) throw new JobFailed(WORDS.deaths)
    if (job.cancelAsked) throw new JobCancelled('cancelled')
    const handler = shop.handlers[job.kind]
    if (handler === undefined) throw new Error(`no handler of ${job.kind}`)
    const outcome = await handler(taskOf(shop, job, stopping))
    // Already ended where its handler did so with its last transaction.
    await end('done', outcome)
  } catch (error) {
    await endBadly(shop, job, error, end)
  }
  return true
}

async function putBack({ db, clock, owed }: Shift, lease: Lease, inMs: number): Promise<void> {
  owed.add(lease)
  await putBackJob(db, lease, new Date(clock() + inMs))
  owed.delete(lease)
}

async function endBadly(
  shop: Shift,
  job: TakenJob,
  error: unknown,
  end: (state: 'failed' | 'cancelled', outcome: { words: string }) => Promise<boolean>,
): Promise<void> {
  if (error instanceof JobInterrupted) return putBack(shop, job.lease, 0)
  if (error instanceof JobCancelled) return void (await end('cancelled', { words: 'Cancelled. Nothing of it was kept.' }))
  if (error instanceof JobFailed) return void (await end('failed', { words: error.message }))
  if (isDiskFull(error)) return void (await end('failed', { words: WORDS.disk }))
  if (isUnreachable(error)) {
    shop.log.warn({ job: job.id, kind: job.kind }, 'the database does not answer; the job is tried again')
    return putBack(shop, job.lease, RETRY_MS)
  }
  shop.log.error({ job: job.id, kind: job.kind, err: loggable(error) }, 'job failed')
  await end('failed', { words: WORDS.bug })
}
