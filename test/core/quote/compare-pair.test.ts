import { describe, expect, it } from 'vitest'
import { comparePair, comparePairs } from '../../../core/quote/compare-pair.ts'
import type { BuildLetter } from '../../../core/quote/draft.ts'
import type { Tier } from '../../../core/pricing/tiers.ts'
import { aLineCost } from '../pricing/a-line-cost.ts'

const sum = (totalMinor: number): Tier => ({
  complete: true,
  goodsMinor: totalMinor,
  discountMinor: 0,
  deliveryMinor: 0,
  taxMinor: 0,
  totalMinor,
})
const NONE: Tier = { complete: false, missing: [] }

interface Sums {
  full: Tier
  today: Tier
  bestSeen: Tier
}
const build = (letter: BuildLetter, { full, today, bestSeen }: Sums, saleTo: string | null = null, expectedMinor?: number) => ({
  letter,
  cost: {
    lines: [
      aLineCost(
        saleTo === null ? {} : { todayMinor: 10_000, fullMinor: 13_000, condition: 'sale', holdsUntil: saleTo, lastDayStated: true },
      ),
    ],
    receipts: [],
    full,
    today,
    bestSeen,
  },
  ...(expectedMinor !== undefined && {
    byDate: {
      until: '2026-12-20',
      learnedOn: '2026-11-26',
      expectedMinor,
      low10Minor: expectedMinor,
      high90Minor: expectedMinor,
      waits: 1,
    },
  }),
})
const said = { currency: 'USD', thisYear: 2026, mode: 'club' } as const

// Worked by hand: B is on sale. At full price 530 against 500, today 500 against 500, expected 480 against 492.40, best seen 470 against 445.
const onSale = build('B', { full: sum(53_000), today: sum(50_000), bestSeen: sum(47_000) }, '2026-11-30', 48_000)
const plain = build('C', { full: sum(50_000), today: sum(50_000), bestSeen: sum(44_500) }, null, 49_240)

describe('two builds tier by tier', () => {
  it('tell which is how much less at each level, and what of it is a sale', () => {
    const { letters, tiers, words } = comparePair(onSale, plain, said)
    expect(letters).toEqual(['B', 'C'])
    expect(tiers.map(({ label, words: told }) => `${label}: ${told}`)).toEqual([
      'Full price: C is $30.00 less',
      'Today: the same',
      'By Dec 20: B is about $12 less',
      'Best seen: C is $25.00 less',
    ])
    expect(words).toContain('sale that ends Nov 30')
    expect(words).toContain('at full price C is cheaper by $30.00')
  })

  it('say the same whichever is named first', () => {
    const told = (pair: ReturnType<typeof comparePair>) => pair.tiers
    expect(told(comparePair(plain, onSale, said))).toEqual(told(comparePair(onSale, plain, said)))
  })

  it('never tell a difference from a total with a hole in it', () => {
    const lacking = build('D', { full: NONE, today: NONE, bestSeen: sum(1) })
    const { tiers, words } = comparePair(onSale, lacking, said)
    expect(tiers.map((tier) => tier.words)).toEqual(['no total of D', 'no total of D', 'not known of D', 'D is $469.99 less'])
    expect(words).toBe('')
  })

  it('tell of no price elsewhere in a store’s own quote', () => {
    expect(comparePair(onSale, plain, { ...said, mode: 'store' }).tiers.map(({ tier }) => tier)).toEqual(['full', 'today', 'byDate'])
  })
})

it('any two of three builds or more with a total are told; of two nothing is, since the cheapest says it', () => {
  const lacking = build('D', { full: NONE, today: NONE, bestSeen: NONE })
  const third = build('A', { full: sum(1), today: sum(1), bestSeen: sum(1) })
  expect(comparePairs([third, onSale, plain, lacking], said).map(({ letters }) => letters.join(''))).toEqual(['AB', 'AC', 'BC'])
  expect(comparePairs([onSale, plain, lacking], said)).toEqual([])
})
