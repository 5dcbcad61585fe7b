import { describe, expect, it } from 'vitest'
import type { Slot } from '../../../core/catalog/kinds.ts'
import type { SlotRow } from '../../../core/quote/revision.ts'
import type { BuildLetter } from '../../../core/quote/draft.ts'
import { compareSuggested, compareTotals, sayCheapest } from '../../../core/quote/compare-totals.ts'
import type { LineCost, Tier } from '../../../core/pricing/tiers.ts'
import { aLineCost } from '../pricing/a-line-cost.ts'

const sum = (totalMinor: number, discountMinor = 0): Tier => ({
  complete: true,
  goodsMinor: totalMinor,
  discountMinor,
  deliveryMinor: 0,
  taxMinor: 0,
  totalMinor,
})
const onSale = (savedMinor: number, holdsUntil: string | null, lastDayStated = holdsUntil !== null): LineCost =>
  aLineCost({ todayMinor: 10_000, fullMinor: 10_000 + savedMinor, holdsUntil, lastDayStated })

const build = (letter: BuildLetter, today: number, full: number, lines = [aLineCost({})], expected?: number) => ({
  letter,
  cost: { lines, receipts: [], today: sum(today), full: sum(full), bestSeen: sum(today) },
  ...(expected !== undefined && {
    byDate: {
      until: '2026-12-20',
      learnedOn: '2026-11-26',
      expectedMinor: expected,
      low10Minor: expected,
      high90Minor: expected,
      waits: 1,
    },
  }),
})
const said = { currency: 'USD', thisYear: 2026 }
const told = (...builds: Parameters<typeof compareTotals>[0]) => compareTotals(builds, said).map(({ words }) => words)

// Worked by hand: today 470 and 500, full 492 and 500: of 30 today 22 are A's sale, 8 stay.
describe('two builds, one of them on sale', () => {
  const a = build('A', 47_000, 49_200, [onSale(2_200, '2026-11-30')])

  it('what remains of the difference at full price is said beside it', () => {
    expect(told(a, build('B', 50_000, 50_000))).toEqual([
      'A is cheaper by $30.00 today. $22.00 of that is a sale that ends Nov 30; $8.00 remains at full price.',
    ])
  })

  it('one that is cheaper by its sale alone is told as the dearer one at full price', () => {
    expect(told(a, build('B', 49_000, 49_000))).toEqual([
      'A is cheaper by $20.00 today. That is a sale that ends Nov 30: at full price B is cheaper by $2.00.',
    ])
    expect(told(a, build('B', 49_200, 49_200))).toEqual([
      'A is cheaper by $22.00 today. All of that is a sale that ends Nov 30; at full price they cost the same.',
    ])
  })

  it('a sale of the dearer one hides a larger difference', () => {
    const b = build('B', 50_000, 53_000, [onSale(1_000, '2026-11-28'), onSale(2_000, '2026-12-02')])
    expect(told(build('A', 47_000, 47_000), b)).toEqual([
      'A is cheaper by $30.00 today. At full price it is cheaper by $60.00: B has sales that end Nov 28 to Dec 2.',
    ])
  })

  it('says "about" where no last day is printed, as the line itself does', () => {
    const guess = [onSale(2_200, '2026-12-02', false)]
    expect(told(build('A', 47_000, 49_200, guess), build('B', 50_000, 50_000))[0]).toContain('a sale that ends about Dec 2; $8.00')
  })
})

it('without sales the difference is the same at full price, and equal totals are said to be equal', () => {
  expect(told(build('A', 47_000, 47_000), build('B', 50_000, 50_000))).toEqual(['A is cheaper by $30.00 today. So it is at full price.'])
  expect(told(build('A', 47_000, 47_000), build('B', 47_000, 47_000))).toEqual(['A costs the same today.'])
})

it('says what is expected by the day of the need, whichever is cheaper by then', () => {
  const [words] = told(build('A', 47_000, 47_000, undefined, 46_000), build('B', 50_000, 50_000, undefined, 44_030))
  expect(words).toContain('By Dec 20, following the advice, B is cheaper by about $20.')
  expect(told(build('A', 47_000, 47_000, undefined, 46_000), build('B', 50_000, 50_000, undefined, 46_040))[0]).toContain('about the same')
})

it('every other build is held against the cheapest of today; one without a total against none', () => {
  const none = { ...build('C', 0, 0), cost: { ...build('C', 0, 0).cost, today: { complete: false as const, missing: [] } } }
  const compared = compareTotals([build('A', 50_000, 50_000), build('B', 47_000, 47_000), none, build('D', 48_000, 48_000)], said)
  expect(compared.map(({ letter }) => letter)).toEqual(['A', 'D'])
  expect(compareTotals([build('A', 50_000, 50_000), none], said)).toEqual([])
})

it('the suggested build is held against those that the cheapest is not', () => {
  const [a, b, c] = [build('A', 50_000, 50_000), build('B', 47_000, 47_000), build('C', 52_000, 52_000)]
  const suggest = (letter: BuildLetter) =>
    compareSuggested(
      [a, b, c].map((one) => ({ ...one, suggested: one.letter === letter })),
      said,
    )
  expect(suggest('A')).toEqual([{ letter: 'C', words: 'A is cheaper by $20.00 today. So it is at full price.' }])
  expect(suggest('C')).toEqual([{ letter: 'A', words: 'A is cheaper by $20.00 today. So it is at full price.' }])
  expect(suggest('B'), 'the cheapest itself').toEqual([])
})

describe('builds that are not alike', () => {
  const row = (slot: Slot, answer: SlotRow['answer']): SlotRow => ({
    slot, answer, lineId: answer === 'missing' ? null : slot, kind: null, text: '', productId: null, quantity: 1, required: true, needs: null,
  }) // prettier-ignore
  const tankAlone = { ...build('C', 14_000, 14_000), rows: [row('hold_water', 'buy'), row('cover', 'missing'), row('light', 'missing'), row('heat', 'not_needed')] } // prettier-ignore
  const whole = { ...build('A', 44_000, 44_000), rows: [row('hold_water', 'buy'), row('cover', 'in_kit'), row('light', 'owned'), row('heat', 'buy')] } // prettier-ignore

  it('the cheaper one is told with what it is without, where the other has it; what nobody needs is no lack', () => {
    expect(told(tankAlone, whole)).toEqual([
      'C is cheaper by $300.00 today. So it is at full price. They are not alike: C is without lid and light.',
    ])
    expect(sayCheapest(tankAlone, [tankAlone, whole])).toBe('the cheapest today, without lid and light')
  })
  it('nothing is said of builds that have the same', () => {
    expect(sayCheapest(whole, [whole, { ...whole, letter: 'B' }])).toBe('the cheapest today')
    expect(told(whole, { ...whole, ...build('B', 50_000, 50_000) })).toEqual(['A is cheaper by $60.00 today. So it is at full price.'])
  })
})
