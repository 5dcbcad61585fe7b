import { describe, expect, it } from 'vitest'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { PriceRecord, SightingRow } from '../../../core/pricing/record.ts'
import { priceViews } from '../../../core/pricing/price-views.ts'
import { answerOf } from '../../../web/app/prices/product-answer.ts'
import { readBoardSearch } from '../../../web/app/prices/board-search.ts'
import { isPrinted, summaryOf } from '../../../web/app/prices/price-summary.ts'
import { sayBehind, sayRow, sayStanding, sayState } from '../../../web/app/prices/sighting-words.ts'
import { mergeTyped } from '../../../web/app/parts/merge.ts'

let made = 0
const row = (part: Partial<SightingRow>): SightingRow => ({
  id: `id-${(made += 1)}`, productId: 'p', storeId: 'upriver', condition: 'shelf', priceMinor: 18999, printedRegularMinor: null, seenOn: '2026-09-22', lastDay: null, evidence: 'none', note: null,
  reporterId: 'r1', receivedAt: '2026-09-22T10:00:00Z', doubt: null, withdrawn: false, confirmations: 0, disputes: 0, productName: 'Pellick C-1800', storeName: 'Upriver', reporterName: 'Noor Fenwick',
  own: false, mayVote: true, myVote: null, withdrawnReason: null, ...part,
}) // prettier-ignore
const product = {
  id: 'p',
  kind: 'filter',
  name: 'Pellick C-1800',
  maker: null,
  gtin: null,
  oversize: false,
  note: null,
  spec: {},
  parts: [],
  archived: false,
  version: 1,
} as const
const recordOf = (sightings: SightingRow[], asOf = '2026-10-20'): PriceRecord => ({
  product: { ...product, parts: [] },
  sightings,
  total: sightings.length,
  views: priceViews(sightings, asOf),
  rolledUp: [],
  listed: null,
  asOf,
})
const sale = row({
  condition: 'sale',
  priceMinor: 15199,
  printedRegularMinor: 18999,
  seenOn: '2026-10-16',
  lastDay: '2026-10-25',
  reporterId: 'r2',
})
const record = recordOf([sale, row({}), row({ storeId: 'saltcote', storeName: 'Saltcote', priceMinor: 19500 })])

describe('how a price is told', () => {
  it.each([
    [{ confirmations: 2 }, 'confirmed by 2'],
    [{}, 'one report'],
    [{ withdrawn: true, confirmations: 3 }, 'withdrawn'],
    [{ doubt: { code: 'slipped_decimal', words: 'ten times' } }, 'waits for a second member'],
    [{ disputes: 1 }, 'disputed by 1, not counted'],
    [{ disputes: 1, confirmations: 2 }, 'confirmed by 2, disputed by 1'],
  ] as const)('%o is "%s"', (part, words) => {
    expect(sayState(row(part))).toBe(words)
  })
  it('stands against the regular price of its store', () => {
    const board = { sighting: sale, regularMinor: 18999, underRegular: 1 - 15199 / 18999, over: false }
    expect(sayStanding(board, 'USD', 2026)).toBe('20 % under $189.99')
    expect(sayStanding({ ...board, over: true }, 'USD', 2026)).toBe('over since Oct 25')
    expect(sayStanding({ ...board, regularMinor: null, underRegular: null }, 'USD', 2026)).toBe('regular price not known')
    expect(sayStanding({ ...board, underRegular: 0 }, 'USD', 2026)).toBe('')
    expect(sayStanding({ ...board, underRegular: -0.05 }, 'USD', 2026)).toBe('5 % over $189.99')
  })
})

describe('who is behind a row of the board', () => {
  it.each([
    [4, {}, '4 members'],
    [1, {}, 'one report'],
    [1, { confirmations: 1 }, '2 members'],
    [0, { imported: true }, 'a list'],
    [1, { imported: true, confirmations: 1 }, 'a list, confirmed by one member'],
    [4, { disputes: 1, confirmations: 2 }, 'confirmed by 2, disputed by 1'],
    [undefined, { confirmations: 2 }, 'confirmed by 2'],
  ])('%s %o', (members, part, words) => {
    expect(sayRow({ sighting: { ...row(part), ...part }, members })).toBe(words)
    if (members === 4 && !('disputes' in part)) expect(words).toBe(sayBehind(4, false))
  })
})

describe('one product over all stores', () => {
  it('is told at the store where it is cheapest today, so that best seen is not above today and today not above full', () => {
    const { full, today, best } = summaryOf(record.views)
    expect([full?.storeId, full?.view.priceMinor, today?.view.priceMinor, best?.priceMinor]).toEqual(['upriver', 18999, 15199, 15199])
  })
  it('has no figures without a price, and says so', () => {
    expect(summaryOf([])).toEqual({ today: null, full: null, best: null })
    expect(answerOf(recordOf([]), 'USD').title).toBe('No price is known today')
  })
  it('has an answer in one sentence', () => {
    expect(answerOf(record, 'USD')).toEqual({
      title: 'On sale at Upriver to Oct 25',
      words: '$38.00 under its regular price there. No lower price was seen in the last 12 months.',
    })
  })
  it('says that a regular price was only printed on a sale’s tag, never that it was seen charged', () => {
    const over = row({ condition: 'sale', priceMinor: 12399, printedRegularMinor: 14599, seenOn: '2026-10-06', lastDay: '2026-10-10' })
    const only = recordOf([over])
    const { full, today } = summaryOf(only.views)
    expect(isPrinted(full, today)).toBe(true)
    expect(answerOf(only, 'USD').title).toBe('$145.99 at Upriver: the regular price that a sale tag named')
    expect(answerOf(only, 'USD').words).toMatch(/^The tag of a sale seen Oct 6 names it; nobody has seen it charged since\. /)
    const shelf = summaryOf(recordOf([row({ priceMinor: 14599 })]).views)
    expect(isPrinted(shelf.full, shelf.today)).toBe(false)
  })
  it('names an old sighting as one', () => {
    const view: PriceView = {
      productId: 'p',
      storeId: 'upriver',
      today: {
        priceMinor: 18999,
        condition: 'shelf',
        seenOn: '2026-06-22',
        holdsUntil: null,
        lastDayStated: false,
        age: 'ageing',
        reporters: 1,
        sightingIds: [],
      },
    }
    expect(answerOf({ ...record, views: [view] }, 'USD').words).toContain('120 days old')
  })
})

it('filters are read off an address, and what is no filter is left out', () => {
  expect(readBoardSearch({ kind: 'tank', store: 's', q: 'row' })).toEqual({ kind: 'tank', store: 's', q: 'row' })
  expect(readBoardSearch({ kind: 'boat', q: '', store: 5 })).toEqual({})
})

it('a field that was not touched takes the other’s change; a touched one stays and clashes only where both moved', () => {
  expect(mergeTyped({ a: 1, b: 1, c: 1 }, { a: 2, b: 1, c: 5 }, { a: 3, b: 4, c: 5 })).toEqual({
    merged: { a: 2, b: 4, c: 5 },
    clashes: ['a'],
  })
})
