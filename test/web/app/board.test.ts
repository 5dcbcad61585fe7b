import { QueryClient } from '@tanstack/react-query'
import { describe, expect, it } from 'vitest'
import { matchingRows } from '../../../web/app/prices/board-in-memory.ts'
import { withKept } from '../../../web/app/prices/kept-rows.ts'
import type { Unsent } from '../../../web/app/post/unsent.ts'
import { keptHere, waitingWords } from '../../../web/app/prices/kept-here.ts'
import { lowerElsewhere, pricesOfRows, pricesOfViews } from '../../../web/app/prices/lower-elsewhere.ts'
import { readPricesAnew } from '../../../web/app/prices/read-anew.ts'
import { notTakenWords, noVoteWords, sayBehind, sayState } from '../../../web/app/prices/sighting-words.ts'
import { seenAgain } from '../../../web/app/prices/unchanged.ts'
import { boardRow, storeOf } from './sample-board.ts'

const here = boardRow({ priceMinor: 4000 })
const there = boardRow({ storeId: 'kettle', storeName: 'Kettle Lane', priceMinor: 3749 })
const stores = [storeOf('upriver'), storeOf('kettle')]

describe('a lower price elsewhere', () => {
  it('is told beside the dearer row alone', () => {
    expect(lowerElsewhere(here, pricesOfRows([here, there]), stores)).toEqual({ storeName: 'kettle', priceMinor: 3749, tax: '' })
    expect(lowerElsewhere(there, pricesOfRows([here, there]), stores)).toBeNull()
  })
  it('is compared with the tax that a store adds: 37.49 with 8 % on top is 40.49, more than 40.00 with tax in it', () => {
    expect(lowerElsewhere(here, pricesOfRows([here, there]), [storeOf('upriver', 800, true), storeOf('kettle', 800, false)])).toBeNull()
  })
  it('counts the regular price where a sale is over, and no used goods', () => {
    const over = { ...there, over: true, regularMinor: 4100 }
    expect(lowerElsewhere(here, pricesOfRows([here, over]), stores)).toBeNull()
    const used = boardRow({ ...there.sighting, condition: 'used' })
    expect(lowerElsewhere(here, pricesOfRows([here, used]), stores)).toBeNull()
    expect(lowerElsewhere({ ...here, sighting: { ...here.sighting, condition: 'used' } }, pricesOfRows([here, there]), stores)).toBeNull()
  })

  it('holds no price against one of another currency', () => {
    const here = boardRow({ priceMinor: 5000 })
    const there = boardRow({ storeId: 'kettle', storeName: 'Kettle Lane', priceMinor: 3000 })
    const [upriver, kettle] = [storeOf('upriver'), storeOf('kettle')]
    expect(lowerElsewhere(here, pricesOfRows([here, there]), [upriver, kettle])).toEqual({ storeName: 'kettle', priceMinor: 3000, tax: '' })
    expect(lowerElsewhere(here, pricesOfRows([here, there]), [upriver, { ...kettle, currency: 'CAD' }])).toBeNull()
  })
  it('is looked for at every store, not among the rows alone, and says how its tag is meant', () => {
    const today = {
      condition: 'shelf',
      seenOn: '2026-10-01',
      holdsUntil: null,
      lastDayStated: false,
      age: 'current',
      reporters: 1,
    } as const
    const view = (storeId: string, priceMinor: number, more = {}) => ({
      productId: here.sighting.productId,
      storeId,
      today: { ...today, priceMinor, sightingIds: [] },
      ...more,
    })
    const far = [storeOf('upriver', 800, false), storeOf('quay', 800, true), storeOf('reef', 800, false)]
    const prices = pricesOfViews([view('quay', 4100), view('reef', 100, { otherClub: 'Reef club' })])
    // 40.00 and 8 % on top is 43.20.
    expect(lowerElsewhere(here, prices, far)).toEqual({ storeName: 'quay', priceMinor: 4100, tax: 'tax in it' })
    expect(lowerElsewhere(here, pricesOfViews([view('quay', 4400)]), far)).toBeNull()
    const untaxed = [storeOf('upriver', 800, false), storeOf('quay', 0, false)]
    expect(lowerElsewhere(here, pricesOfViews([view('quay', 4000)]), untaxed)).toMatchObject({ priceMinor: 4000, tax: 'no tax added' })
  })
  it('is asked for anew after a word on any sighting', async () => {
    const queries = new QueryClient()
    for (const key of [['price-views', ['p']], ['profile']]) queries.setQueryData(key, {})
    await readPricesAnew(queries)
    expect(queries.getQueryState(['price-views', ['p']])?.isInvalidated).toBe(true)
    expect(queries.getQueryState(['profile'])?.isInvalidated).toBe(false)
  })
  it('is not told of another product, nor where a store is not known', () => {
    expect(lowerElsewhere(here, pricesOfRows([here, boardRow({ ...there.sighting, productId: 'other' })]), stores)).toBeNull()
    expect(lowerElsewhere(here, pricesOfRows([here, there]), [storeOf('upriver')])).toBeNull()
  })
})

describe('"price unchanged" in one tap', () => {
  it('is the same shelf price seen today', () => {
    expect(seenAgain(here.sighting, '2026-10-20')).toMatchObject({
      priceMinor: 4000,
      storeId: 'upriver',
      condition: 'shelf',
      seenOn: '2026-10-20',
    })
  })
  it.each([
    ['a sale', { condition: 'sale' }],
    ['a shelf tag that says it is reduced', { printedRegularMinor: 5000 }],
    ['used goods', { condition: 'used' }],
    ['what was seen today', { seenOn: '2026-10-20' }],
  ] as const)('is not offered for %s', (_what, part) => {
    expect(seenAgain({ ...here.sighting, ...part }, '2026-10-20')).toBeNull()
  })
})

it('a disputed row stays in its place while the board is open, and once the server shows it again it stands there alone', () => {
  expect(withKept([there], [{ row: here, at: 0 }])).toEqual([here, there])
  expect(withKept([there, here], [{ row: here, at: 0 }])).toEqual([there, here])
  expect(withKept([], [{ row: here, at: 7 }])).toEqual([here])
})

it.each([
  ['yours', { reporterId: 'me', own: true, mayVote: false }],
  ['no vote: who posted it invited you', { own: true, tie: 'invited_you' as const, mayVote: false }],
  ['no vote: you invited who posted it', { own: true, tie: 'invited_by_you' as const, mayVote: false }],
  ['withdrawn', { withdrawn: true, mayVote: false }],
  ['not yours to judge', { mayVote: false }],
  [null, {}],
] as const)('in place of a vote it says: %s', (words, part) => {
  expect(noVoteWords({ ...here.sighting, ...part }, 'me')).toBe(words)
})

it('without a signal the rows read before are searched: each product and store once, its newest first', () => {
  const older = boardRow({ priceMinor: 4200, seenOn: '2026-08-01' })
  const tank = boardRow({ productId: 't', productName: 'Wendlemere 20 long', seenOn: '2026-09-30' }, { kind: 'tank' })
  const rows = [older, here, tank, here]
  expect(matchingRows(rows, {})).toEqual([tank, here])
  expect(matchingRows(rows, { q: ' pellick ' })).toEqual([here])
  expect(matchingRows(rows, { kind: 'tank' })).toEqual([tank])
  expect(matchingRows(rows, { store: 'kettle' })).toEqual([])
})

describe('what this phone has not sent yet', () => {
  const { sighting } = here
  const waiting: Unsent = { sighting, productName: 'Pellick C-1800', storeName: 'Upriver', keptAt: '2026-10-20T14:00:00Z', refused: null }
  const refused: Unsent = { ...waiting, refused: { title: 'Not taken', detail: null, errors: [] } }
  it('is found by its product and store alone, whatever its price', () => {
    expect(keptHere([waiting], { productId: sighting.productId, storeId: sighting.storeId })).toBe(waiting)
    expect(keptHere([waiting], { productId: 'other', storeId: sighting.storeId })).toBeUndefined()
    expect(keptHere([waiting], { productId: sighting.productId, storeId: 'other' })).toBeUndefined()
  })
  it.each([
    [[waiting], 'One sighting is kept on this phone and waits to be sent'],
    [[waiting, waiting], '2 sightings are kept on this phone and wait to be sent'],
    [[refused], 'One sighting was not taken'],
    [[waiting, refused, refused], 'One sighting is kept on this phone and waits to be sent; 2 sightings were not taken'],
  ])('is counted apart from what was refused', (queue, words) => {
    expect(waitingWords(queue)).toBe(words)
  })
  it('never has a vote in it, and says so', () => {
    expect(notTakenWords({ status: 0, title: 'The server was not reached', detail: 'What you typed is kept here.' })).toBe(
      'Not taken: no signal. Your word is not kept; say it again when the signal is back.',
    )
    expect(notTakenWords({ status: 409, title: 'Someone was faster', detail: 'It is withdrawn.' })).toBe(
      'Your word was not taken. It is withdrawn.',
    )
  })
})

it('a list is told as one, with how many members confirmed it', () => {
  expect([sayBehind(0, true), sayBehind(1, true), sayBehind(3, true)]).toEqual([
    'a list',
    'a list, confirmed by one member',
    'a list, confirmed by 3 members',
  ])
  expect([sayBehind(1, false), sayBehind(4, false)]).toEqual(['one report', '4 members'])
  expect(sayState({ withdrawn: false, doubt: null, confirmations: 0, disputes: 0, imported: true })).toBe('a list')
})
