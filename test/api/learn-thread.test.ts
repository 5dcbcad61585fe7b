import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { learnPrices, lotsOf } from '../../api/outlook/learn-prices.ts'
import { learnInThread } from '../../api/outlook/learn-thread.ts'
import type { LearnLot } from '../../api/outlook/learn-worker.ts'
import { createWorld, type World } from './support/world.ts'

/** A thread that does this alone. */
const running = (source: string): URL => new URL(`data:text/javascript,${encodeURIComponent(source)}`)
const FAILS = running(`setTimeout(() => { throw new Error('no more memory') }, 50)`)
const ENDS = running(`setTimeout(() => process.exit(0), 50)`)
const ANSWERS = running(`import { parentPort } from 'node:worker_threads'
  parentPort.once('message', () => parentPort.on('message', (lot) => parentPort.postMessage({ ok: true, learned: lot })))`)
const job = { record: { products: [], windows: [], asOf: '2026-11-26' }, trust: {} }
const never = (): Promise<never> => new Promise(() => undefined)

describe('the thread that learns', () => {
  it.each([
    ['fails', FAILS, /no more memory/],
    ['ends without a word', ENDS, /ended by itself/],
  ])('that %s is heard while a lot is read, and while its answer is awaited', async (_, script, said) => {
    await expect(learnInThread(job, [never], script)).rejects.toThrow(said)
    await expect(learnInThread(job, [async () => ({ told: '[]' })], script)).rejects.toThrow(said)
  })
})

describe('lots that were learnt from', () => {
  it('are held by nobody while the next ones are read', async () => {
    setFlagsFromString('--expose-gc')
    const collect = runInNewContext('gc') as () => void
    const read: Array<WeakRef<LearnLot & object>> = []
    const held: number[] = []
    const readOne = async (): Promise<LearnLot> => {
      collect()
      held.push(read.filter((lot) => lot.deref() !== undefined).length)
      const lot: LearnLot & object = { told: '[]' }
      read.push(new WeakRef(lot))
      return lot
    }
    expect(
      await learnInThread(
        job,
        Array.from({ length: 4 }, () => readOne),
        ANSWERS,
      ),
    ).toBeNull()
    expect(Math.max(...held), 'the last ones at most').toBeLessThanOrEqual(2)
    expect(held).toHaveLength(4)
  })
})

describe('what is read at a time', () => {
  it('is each product once, in order, two thousand sightings or one product that has more, and five hundred products at most', () => {
    const seen = new Map([
      ['a', 1200],
      ['b', 1000],
      ['c', 1000],
      ['d', 8000],
      ['e', 1],
    ])
    expect(lotsOf(['a', 'b', 'c', 'd', 'e', 'unseen'], seen)).toEqual([['a'], ['b', 'c'], ['d'], ['e', 'unseen']])
    const many = Array.from({ length: 1001 }, (_, index) => `p${index}`)
    expect(lotsOf(many, new Map()).map(({ length }) => length)).toEqual([500, 500, 1])
    expect(lotsOf(many, new Map()).flat()).toEqual(many)
    expect(lotsOf([], seen)).toEqual([])
  })
})

describe('learning that failed', () => {
  let world: World
  beforeAll(async () => {
    world = await createWorld()
  })
  afterAll(() => world.close())

  it('is tried again', async () => {
    for (const script of [FAILS, ENDS])
      await expect(learnPrices(world.db, Date.now(), (asked, reads) => learnInThread(asked, reads, script))).rejects.toThrow(Error)
    expect(await learnPrices(world.db, Date.now())).toBe('learned')
  })
})
