import { describe, expect, it } from 'vitest'
import { ProblemError, readProblem } from '../../../web/app/client/problem.ts'
import { postedNow, type Posted } from '../../../web/app/post/posted.ts'
import { sameAgain } from '../../../web/app/post/same-again.ts'
import { outcomeNow, sendQueue } from '../../../web/app/post/send-unsent.ts'
import { dropUnsent, keepUnsent, readUnsent, type Unsent } from '../../../web/app/post/unsent.ts'
import { boardRow } from './sample-board.ts'

const waiting: Posted = { id: 'a', kind: 'waits', doubt: null, productId: 'p', what: '$21.49 for Torvane Watch at Saltcote' }
const body = {
  productId: 'p', storeId: 's', condition: 'shelf', priceMinor: 2149, printedRegularMinor: null, seenOn: '2026-10-20', lastDay: null, evidence: 'none', note: null,
} as const // prettier-ignore
const kept: Unsent = {
  sighting: { id: 'a', ...body },
  productName: 'Torvane Watch',
  storeName: 'Saltcote',
  keptAt: '2026-10-20T14:00:00Z',
  refused: null,
}
const refused: Unsent = { ...kept, refused: { title: 'Not taken', detail: null, errors: [] } }

describe('what was told of a posted sighting', () => {
  it('stays "kept" while the phone holds it, and turns into "posted" once it holds it no more', () => {
    expect(postedNow(waiting, [kept], undefined)).toBe(waiting)
    expect(postedNow(waiting, [], { kind: 'posted', doubt: null })).toEqual({ ...waiting, kind: 'posted' })
  })
  it('says why it waits for a second member when it was posted later', () => {
    expect(postedNow(waiting, [], { kind: 'posted', doubt: 'About a tenth.' }).doubt).toBe('About a tenth.')
  })
  it('turns into "not taken" where the server refused it, and stays so after it is discarded', () => {
    const told = postedNow(waiting, [refused], undefined)
    expect(told.kind).toBe('refused')
    expect(postedNow(told, [], undefined)).toBe(told)
  })
  it('is known by its id as soon as the queue has changed', async () => {
    const data = new Map<string, string>()
    const keep = { getItem: (key: string) => data.get(key) ?? null, setItem: (key: string, value: string) => void data.set(key, value), removeItem: (key: string) => void data.delete(key) } // prettier-ignore
    keepUnsent('ines', { ...kept, sighting: { ...kept.sighting, id: 'later' } }, keep)
    await sendQueue('ines', () => Promise.reject(new ProblemError(readProblem(0, null))), keep)
    expect(outcomeNow('later')?.kind).toBe('waits')
    await sendQueue('ines', async () => ({ doubt: { code: 'slipped_decimal', words: 'About a tenth.' } }), keep)
    expect(outcomeNow('later')).toEqual({ kind: 'posted', doubt: 'About a tenth.' })
    expect(readUnsent('ines', keep)).toEqual([])
  })
})

it('one that is removed while another is on its way is not sent', async () => {
  const data = new Map<string, string>()
  const keep = { getItem: (key: string) => data.get(key) ?? null, setItem: (key: string, value: string) => void data.set(key, value), removeItem: (key: string) => void data.delete(key) } // prettier-ignore
  keepUnsent('ines', { ...kept, sighting: { ...kept.sighting, id: 'first' } }, keep)
  keepUnsent('ines', { ...kept, sighting: { ...kept.sighting, id: 'slip' } }, keep)
  const sent: string[] = []
  await sendQueue(
    'ines',
    async ({ id }) => {
      sent.push(id)
      dropUnsent('ines', 'slip', keep)
      return { doubt: null }
    },
    keep,
  )
  expect(sent).toEqual(['first'])
})

describe('the same price a second time', () => {
  const { sighting } = boardRow({ ...body, reporterId: 'me' })
  it('is noticed in the record and in what the phone keeps', () => {
    expect(sameAgain(body, [sighting], [], 'me')).toBe('posted')
    expect(sameAgain(body, [], [kept], 'me')).toBe('kept')
  })
  it('is none from someone else, of another day or price, withdrawn, refused, or while the form is not complete', () => {
    expect(sameAgain(body, [sighting], [refused], 'you')).toBeNull()
    expect(sameAgain({ ...body, priceMinor: 2199 }, [sighting], [kept], 'me')).toBeNull()
    expect(sameAgain({ ...body, seenOn: '2026-10-21' }, [sighting], [kept], 'me')).toBeNull()
    expect(sameAgain(body, [{ ...sighting, withdrawn: true }], [], 'me')).toBeNull()
    expect(sameAgain(null, [sighting], [kept], 'me')).toBeNull()
  })
})
