import { describe, expect, it } from 'vitest'
import { ProblemError, readProblem } from '../../../web/app/client/problem.ts'
import type { SightingBody } from '../../../web/app/client/sightings.ts'
import { outcomeOf, sendQueue } from '../../../web/app/post/send-unsent.ts'
import {
  discardAllUnsent,
  dropUnsent,
  keepUnsent,
  onUnsentChange,
  readUnsent,
  type Keep,
  type Unsent,
} from '../../../web/app/post/unsent.ts'

function memory(): Keep & { data: Map<string, string> } {
  const data = new Map<string, string>()
  return {
    data,
    getItem: (key) => data.get(key) ?? null,
    setItem: (key, value) => void data.set(key, value),
    removeItem: (key) => void data.delete(key),
  }
}
const body = (id: string): SightingBody => ({
  id, productId: 'p', storeId: 's', condition: 'shelf', priceMinor: 15900, printedRegularMinor: null, seenOn: '2026-10-20', lastDay: null, evidence: 'none', note: null,
}) // prettier-ignore
const unsent = (id: string): Unsent => ({
  sighting: body(id),
  productName: 'Pellick C-1800',
  storeName: 'Saltcote',
  keptAt: '2026-10-20T14:00:00Z',
  refused: null,
})
const taken = { doubt: null }
const noSignal = (): never => {
  throw new ProblemError(readProblem(0, null))
}

describe('sightings kept on the phone', () => {
  it('are kept for one account alone', () => {
    const keep = memory()
    keepUnsent('noor', unsent('a'), keep)
    expect(readUnsent('bram', keep)).toEqual([])
    expect(readUnsent('noor', keep)).toHaveLength(1)
  })
  it('hold one entry an id, however often it is kept', () => {
    const keep = memory()
    keepUnsent('noor', unsent('a'), keep)
    keepUnsent('noor', { ...unsent('a'), storeName: 'Upriver' }, keep)
    expect(readUnsent('noor', keep).map(({ storeName }) => storeName)).toEqual(['Upriver'])
  })
  it('leave nothing behind once the last one is gone', () => {
    const keep = memory()
    keepUnsent('noor', unsent('a'), keep)
    dropUnsent('noor', 'a', keep)
    expect(keep.data.size).toBe(0)
    keepUnsent('noor', unsent('b'), keep)
    discardAllUnsent('noor', keep)
    expect(keep.data.size).toBe(0)
  })
  it('survive an entry that cannot be read', () => {
    const keep = memory()
    keep.setItem('driploop.unsent.noor', JSON.stringify([null, { nonsense: true }, unsent('a')]))
    expect(readUnsent('noor', keep).map(({ sighting }) => sighting.id)).toEqual(['a'])
    keep.setItem('driploop.unsent.noor', '{')
    expect(readUnsent('noor', keep)).toEqual([])
  })
  it('say that they changed, until nobody listens any more', () => {
    const keep = memory()
    let heard = 0
    const stop = onUnsentChange(() => (heard += 1))
    keepUnsent('noor', unsent('a'), keep)
    stop()
    dropUnsent('noor', 'a', keep)
    expect(heard).toBe(1)
  })
  it('throw where the browser refuses to store, so that nothing is called kept that is not', () => {
    const full: Keep = { ...memory(), setItem: () => { throw new DOMException('full', 'QuotaExceededError') } } // prettier-ignore
    expect(() => keepUnsent('noor', unsent('a'), full)).toThrow('full')
  })
})

describe('sending what is kept', () => {
  it('sends oldest first and forgets what the server took', async () => {
    const keep = memory()
    const sent: string[] = []
    keepUnsent('noor', unsent('a'), keep)
    keepUnsent('noor', unsent('b'), keep)
    const outcomes = await sendQueue(
      'noor',
      async ({ id }) => {
        sent.push(id)
        return taken
      },
      keep,
    )
    expect(sent).toEqual(['a', 'b'])
    expect([...outcomes.values()]).toEqual([
      { kind: 'posted', doubt: null },
      { kind: 'posted', doubt: null },
    ])
    expect(readUnsent('noor', keep)).toEqual([])
  })
  it('keeps everything without a signal and does not try the rest', async () => {
    const keep = memory()
    let tries = 0
    keepUnsent('noor', unsent('a'), keep)
    keepUnsent('noor', unsent('b'), keep)
    await sendQueue('noor', async () => { tries += 1; return noSignal() }, keep) // prettier-ignore
    expect(tries).toBe(1)
    expect(readUnsent('noor', keep)).toEqual([unsent('a'), unsent('b')])
  })
  it('sends the same id again after a signal was lost, so that it is posted once', async () => {
    const keep = memory()
    const ids: string[] = []
    keepUnsent('noor', unsent('a'), keep)
    await sendQueue('noor', async ({ id }) => { ids.push(id); return noSignal() }, keep) // prettier-ignore
    await sendQueue(
      'noor',
      async ({ id }) => {
        ids.push(id)
        return taken
      },
      keep,
    )
    expect(ids).toEqual(['a', 'a'])
    expect(readUnsent('noor', keep)).toEqual([])
  })
  it('keeps a refused one with its reason, goes on with the next, and does not send it again by itself', async () => {
    const keep = memory()
    const sent: string[] = []
    const post = async ({ id }: SightingBody): Promise<typeof taken> => {
      sent.push(id)
      if (id === 'a')
        throw new ProblemError(
          readProblem(422, { title: 'Not taken', errors: [{ field: 'priceMinor', message: 'Price is 0. A price is above 0.' }] }),
        )
      return taken
    }
    keepUnsent('noor', unsent('a'), keep)
    keepUnsent('noor', unsent('b'), keep)
    await sendQueue('noor', post, keep)
    await sendQueue('noor', post, keep)
    expect(sent).toEqual(['a', 'b'])
    expect(readUnsent('noor', keep)[0]?.refused?.errors[0]?.message).toBe('Price is 0. A price is above 0.')
  })
  it.each([
    [0, 'waits'],
    [401, 'waits'],
    [429, 'waits'],
    [500, 'waits'],
    [503, 'waits'],
    [403, 'refused'],
    [404, 'refused'],
    [409, 'refused'],
    [422, 'refused'],
  ] as const)('after status %i it %s', (status, kind) => {
    expect(outcomeOf(readProblem(status, null)).kind).toBe(kind)
  })
})
