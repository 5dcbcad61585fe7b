import type { Kysely, Transaction } from 'kysely'
import type { Job, JsonObject } from '../../core/jobs/job.ts'
import type { Database } from '../../db/database.ts'
import { finishJob, reportProgress, type TakenJob } from '../../db/jobs.ts'

/** Somebody cancelled the job. Its handler lets go and need not catch it. */
export class JobCancelled extends Error {}
/** The server is being stopped, or another worker has the job: what was reached is kept, and somebody goes on from there. */
export class JobInterrupted extends Error {}
/** The work cannot be done, for a reason that a person can read. */
export class JobFailed extends Error {}

interface Progress {
  phase?: string
  done?: number
  total?: number
  position?: JsonObject
}

/** A job as its handler sees it. */
export interface Task {
  db: Kysely<Database>
  engine: 'embedded' | 'postgres'
  job: Job
  clock: () => number
  /**
   * Says how far it has come, and whether to go on: call it at least every ten seconds, with `position` where a later start could begin. With a
   * transaction, so that the position is kept with the work that reached it.
   * Errors: JobCancelled, JobInterrupted.
   */
  at(progress: Progress, trx?: Transaction<Database>): Promise<void>
  /** Ends the job inside the transaction that does its work. Errors: JobInterrupted where it is another's by now: the work is undone. */
  finish(trx: Transaction<Database>, outcome: JsonObject): Promise<void>
}

/** Does one kind of work. What it returns is the outcome, unless it finished the job itself. It may be called again for a job it had begun. */
export type JobHandler = (task: Task) => Promise<JsonObject>

export function taskOf({ db, engine, clock }: Pick<Task, 'db' | 'engine' | 'clock'>, job: TakenJob, stopping: AbortSignal): Task {
  return {
    db,
    engine,
    job,
    clock,
    async at(progress, trx) {
      const goOn = await reportProgress(trx ?? db, job.lease, progress, new Date(clock()))
      if (!goOn) throw new JobCancelled('cancelled')
      if (stopping.aborted) throw new JobInterrupted('stopping')
    },
    async finish(trx, outcome) {
      if (!(await finishJob(trx, job.lease, 'done', outcome, new Date(clock())))) throw new JobInterrupted('no longer ours')
    },
  }
}
