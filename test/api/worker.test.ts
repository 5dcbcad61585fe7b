import { pino } from 'pino'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { JobFailed, type JobHandler, type Task } from '../../api/jobs/task.ts'
import { startWorker, type Worker } from '../../api/jobs/worker.ts'
import type { Job } from '../../core/jobs/job.ts'
import { cancelJob, enqueue, findJob, putBackJob, takeDueJob, type Lease } from '../../db/jobs.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'

let test: TestDatabase
const workers: Worker[] = []
beforeAll(async () => {
  test = await testDatabase()
})
afterEach(async () => {
  for (const worker of workers.splice(0)) await worker.stop()
  await test.db.deleteFrom('job').execute()
})
afterAll(() => test.close())

const start = (handlers: Record<string, JobHandler>, db = test.db): Worker => {
  const worker = startWorker({
    db,
    engine: test.connection.engine,
    handlers,
    clock: Date.now,
    log: pino({ level: 'silent' }),
  })
  workers.push(worker)
  return worker
}
const soon = (): Date => new Date(Date.now() - 1)
async function ended(id: string): Promise<Job> {
  for (let tries = 0; tries < 500; tries += 1) {
    const job = await findJob(test.db, id)
    if (job?.endedAt != null) return job
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
  throw new Error('the job did not end')
}
/** A handler that stands still at a named step until it is let go. */
function gate(): { reached: Promise<Task>; open: () => void; handler: JobHandler } {
  const reached = Promise.withResolvers<Task>()
  const open = Promise.withResolvers<void>()
  return {
    reached: reached.promise,
    open: open.resolve,
    handler: async (task) => {
      reached.resolve(task)
      await open.promise
      await task.at({ done: 1, position: { step: 1 } })
      return { reached: true }
    },
  }
}

describe('the worker', () => {
  it('does what is due and keeps what came of it', async () => {
    const worker = start({ double: async ({ job }) => ({ is: Number(job.payload['of']) * 2 }) })
    const id = await enqueue(test.db, 'double', { of: 21 }, soon())
    worker.wake()
    expect(await ended(id)).toMatchObject({ state: 'done', outcome: { is: 42 } })
  })

  it('tells a failure in words where there are some, and goes on with the next job', async () => {
    const worker = start({
      plain: async () => {
        throw new JobFailed('The file is gone.')
      },
      full: async () => {
        throw Object.assign(new Error('could not extend file'), { code: '53100' })
      },
      bug: async () => {
        throw new TypeError('undefined is not a function')
      },
    })
    const ids = [await enqueue(test.db, 'plain', {}, soon()), await enqueue(test.db, 'full', {}, soon()), await enqueue(test.db, 'bug', {}, soon())] // prettier-ignore
    worker.wake()
    const said = (await Promise.all(ids.map(ended))).map(({ state, outcome }) => `${state}: ${JSON.stringify(outcome)}`)
    expect(said[0]).toBe('failed: {"words":"The file is gone."}')
    expect(said[1]).toMatch(/^failed: .*The disk of the server is full/)
    expect(said[2]).toMatch(/^failed: .*Something broke here/)
    expect(said.join()).not.toContain('undefined')
  })

  it('lets go of a job that is cancelled meanwhile', async () => {
    const { reached, open, handler } = gate()
    const worker = start({ slow: handler })
    const id = await enqueue(test.db, 'slow', {}, soon())
    worker.wake()
    await reached
    await cancelJob(test.db, id, 'slow', new Date())
    open()
    expect(await ended(id)).toMatchObject({ state: 'cancelled', outcome: { words: 'Cancelled. Nothing of it was kept.' } })
  })

  it('puts a job back when it is stopped, and the next one goes on from its position', async () => {
    const { reached, open, handler } = gate()
    const worker = start({ slow: handler })
    const id = await enqueue(test.db, 'slow', {}, soon())
    worker.wake()
    await reached
    const stopping = worker.stop()
    open()
    await stopping
    expect(await findJob(test.db, id)).toMatchObject({ state: 'waiting', position: { step: 1 }, done: 1 })
    const next = start({ slow: async ({ job }) => ({ from: job.position['step'] ?? 0 }) })
    next.wake()
    expect(await ended(id)).toMatchObject({ state: 'done', outcome: { from: 1 }, takes: 2 })
  })

  it('gives up a job that five servers died over, and none that they put back in order as often', async () => {
    const lives = async (id: string, count: number, end: (lease: Lease) => Promise<void>): Promise<void> => {
      for (let life = 0; life < count; life += 1) {
        const taken = await takeDueJob(test.db, ['cursed'], new Date())
        if (taken?.id !== id) throw new Error('the job is not due')
        await end(taken.lease)
      }
    }
    const fellSilent = async ({ id }: Lease): Promise<void> => {
      const past = new Date(Date.now() - 1)
      await test.db.updateTable('job').set({ leased_until: past }).where('id', '=', id).execute()
    }
    const wellTold = await enqueue(test.db, 'cursed', {}, soon())
    await lives(wellTold, 9, (lease) => putBackJob(test.db, lease, soon()))
    await lives(wellTold, 4, fellSilent)
    const handlers = { cursed: async () => ({ is: 'done' }) }
    start(handlers)
    expect(await ended(wellTold)).toMatchObject({ state: 'done', outcome: { is: 'done' } })
    await workers.pop()?.stop()
    const dead = await enqueue(test.db, 'cursed', {}, soon())
    await lives(dead, 5, fellSilent)
    start(handlers)
    expect(await ended(dead)).toMatchObject({ state: 'failed', outcome: { words: expect.stringMatching(/^The server ended five times/) } })
  })

  it('counts no death where the database went away, even for putting the job back', async () => {
    const away = Object.assign(new Error('the connection ended'), { code: 'ECONNREFUSED' })
    let [tries, refusals] = [0, 0]
    const faltering = test.db.withPlugin({
      transformQuery: ({ node }) => {
        if (tries === 1 && refusals === 0 && node.kind === 'UpdateQueryNode') {
          refusals += 1
          throw away
        }
        return node
      },
      transformResult: async ({ result }) => result,
    })
    const slow: JobHandler = async () => {
      tries += 1
      if (tries === 1) throw away
      return { tries }
    }
    const id = await enqueue(test.db, 'slow', {}, soon())
    start({ slow }, faltering)
    expect(await ended(id)).toMatchObject({ state: 'done', outcome: { tries: 2 }, takes: 2, deaths: 0 })
    expect(refusals).toBe(1)
  })

  it('ends a job with the transaction that did its work', async () => {
    const worker = start({
      whole: async (task) => {
        await task.db.transaction().execute((trx) => task.finish(trx, { kept: 'with the work' }))
        return { kept: 'beside the work' }
      },
    })
    const id = await enqueue(test.db, 'whole', {}, soon())
    worker.wake()
    expect(await ended(id)).toMatchObject({ state: 'done', outcome: { kept: 'with the work' } })
  })
})
