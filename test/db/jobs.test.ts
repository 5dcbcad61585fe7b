import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import {
  cancelJob,
  deleteJobsEndedBefore,
  enqueue,
  findJob,
  finishJob,
  freeJobs,
  listJobs,
  putBackJob,
  reportProgress,
  resumeJob,
  takeDueJob,
} from '../../db/jobs.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { person } from '../support/rows.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
})
afterAll(() => test.close())
afterEach(() => test.db.deleteFrom('job').execute())

const NOON = new Date('2026-10-20T12:00:00Z')
const later = (seconds: number): Date => new Date(NOON.getTime() + seconds * 1000)
const KINDS = ['count']

describe('the queue of jobs', () => {
  it('hands out the oldest due job once, and none before its time', async () => {
    const second = await enqueue(test.db, 'count', { to: 2 }, later(5))
    const first = await enqueue(test.db, 'count', { to: 1 }, later(0))
    await enqueue(test.db, 'count', { to: 3 }, later(60))
    expect(await takeDueJob(test.db, ['sweep'], later(10))).toBeUndefined()
    expect(await takeDueJob(test.db, KINDS, later(10))).toMatchObject({ id: first, payload: { to: 1 }, state: 'running', takes: 1 })
    expect(await takeDueJob(test.db, KINDS, later(10))).toMatchObject({ id: second })
    expect(await takeDueJob(test.db, KINDS, later(10))).toBeUndefined()
  })

  it('gives one job to one of many who ask at the same moment', async () => {
    for (let made = 0; made < 3; made += 1) await enqueue(test.db, 'count', {}, NOON)
    const taken = await Promise.all(Array.from({ length: 8 }, () => takeDueJob(test.db, KINDS, later(1))))
    const ids = taken.flatMap((job) => job?.id ?? [])
    expect(ids).toHaveLength(3)
    expect(new Set(ids).size).toBe(3)
  })

  it('gives a job whose worker fell silent to another, and the first can neither report nor end it', async () => {
    const id = await enqueue(test.db, 'count', {}, NOON)
    const dead = await takeDueJob(test.db, KINDS, NOON)
    expect(await reportProgress(test.db, dead!.lease, { done: 7, position: { line: 7 } }, later(20))).toBe(true)
    expect(await takeDueJob(test.db, KINDS, later(45))).toBeUndefined()
    const second = await takeDueJob(test.db, KINDS, later(51))
    expect(second).toMatchObject({ id, takes: 2, deaths: 1, done: 7, position: { line: 7 } })
    expect(await reportProgress(test.db, dead!.lease, { done: 99 }, later(52))).toBe(false)
    expect(await finishJob(test.db, dead!.lease, 'done', {}, later(52))).toBe(false)
    expect(await finishJob(test.db, second!.lease, 'done', { counted: 7 }, later(53))).toBe(true)
    expect(await findJob(test.db, id)).toMatchObject({ state: 'done', outcome: { counted: 7 }, endedAt: later(53).toISOString() })
  })

  it('takes a job back from a server that is stopped, and from one that died on the embedded database', async () => {
    await enqueue(test.db, 'count', {}, NOON)
    const stopped = await takeDueJob(test.db, KINDS, NOON)
    await putBackJob(test.db, stopped!.lease, later(1))
    expect(await takeDueJob(test.db, KINDS, later(2))).toMatchObject({ takes: 2, deaths: 0 })
    await freeJobs(test.db, ['another kind'])
    expect(await takeDueJob(test.db, KINDS, later(3))).toBeUndefined()
    await freeJobs(test.db, KINDS)
    expect(await takeDueJob(test.db, KINDS, later(3))).toMatchObject({ takes: 3, deaths: 1 })
  })

  it('is cancelled at once while it waits, at the next word of its worker while it runs, and not after its end', async () => {
    const waiting = await enqueue(test.db, 'count', {}, later(60))
    expect(await cancelJob(test.db, waiting, 'count', NOON)).toMatchObject({ ok: true })
    expect(await findJob(test.db, waiting)).toMatchObject({ state: 'cancelled', endedAt: NOON.toISOString() })
    const running = await enqueue(test.db, 'count', {}, NOON)
    const taken = await takeDueJob(test.db, KINDS, NOON)
    expect(await cancelJob(test.db, running, 'count', NOON)).toMatchObject({ ok: true })
    expect(await reportProgress(test.db, taken!.lease, { done: 1 }, NOON)).toBe(false)
    await finishJob(test.db, taken!.lease, 'cancelled', {}, NOON)
    expect(await cancelJob(test.db, running, 'count', NOON)).toMatchObject({ ok: false, refusal: { code: 'closed' } })
    expect(await cancelJob(test.db, running, 'other', NOON)).toMatchObject({ ok: false })
  })

  it('goes on after its end only where the outcome says that it may, and once', async () => {
    const id = await enqueue(test.db, 'count', { dryRun: true }, NOON)
    const [taken, says] = [await takeDueJob(test.db, KINDS, NOON), await person(test.db, 'manager')]
    // Asked for too late to stop it.
    await cancelJob(test.db, id, 'count', NOON)
    await finishJob(test.db, taken!.lease, 'done', { ready: true, creates: 3 }, NOON)
    const change = { when: { ready: true }, payload: { dryRun: false }, dueAt: later(1), startedBy: says.id }
    expect(await resumeJob(test.db, id, 'count', { ...change, when: { ready: false } })).toMatchObject({ ok: false })
    const tries = await Promise.all([resumeJob(test.db, id, 'count', change), resumeJob(test.db, id, 'count', change)])
    expect(tries.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await takeDueJob(test.db, KINDS, later(2))).toMatchObject({
      id,
      payload: { dryRun: false },
      outcome: null,
      startedBy: says.id,
      cancelAsked: false,
    })
  })

  it('tells who started it, newest first, and forgets what ended long ago', async () => {
    const manager = await person(test.db, 'manager')
    const old = await enqueue(test.db, 'count', {}, NOON)
    const taken = await takeDueJob(test.db, KINDS, NOON)
    await finishJob(test.db, taken!.lease, 'failed', { words: 'no room' }, NOON)
    const recent = await enqueue(test.db, 'count', {}, later(1), manager.id)
    expect((await listJobs(test.db, manager, 'count', 10)).map(({ id, startedByName }) => [id, startedByName])).toEqual([
      [recent, manager.name],
      [old, null],
    ])
    await deleteJobsEndedBefore(test.db, later(1))
    expect((await listJobs(test.db, manager, 'count', 10)).map(({ id }) => id)).toEqual([recent])
  })
})
