import { describe, expect, it } from 'vitest'
import type { KindLearned } from '../../../../core/pricing/outlook/learned.ts'
import { gridPoint } from '../../../../core/pricing/outlook/sale-grid.ts'
import { outlookOf, waitingDraws, type Ask, type Learned, type MarketRecord } from '../../../../core/pricing/outlook/outlook.ts'
import { aSighting } from '../a-sighting.ts'
import { ASOF, certain, POINT } from './a-certain-belief.ts'

const DRAWS = 4000
const seen = (productId: string, storeId: string) => aSighting({ productId, storeId, priceMinor: 10000, seenOn: ASOF })
const record = (windows: MarketRecord['windows'] = []): MarketRecord => ({
  sightings: [seen('a', 'here'), seen('b', 'here'), seen('b', 'there')],
  products: [
    { id: 'a', kind: 'filter' },
    { id: 'b', kind: 'filter' },
  ],
  windows,
  asOf: ASOF,
})
const ask = (lines: Ask['lines'], until: string): Ask => ({ lines, until, waitingCostPerDayMinor: 0, draws: DRAWS, seed: 3 })
const meanOf = (values: Float64Array): number => values.reduce((a, b) => a + b, 0) / values.length

describe('futures of a known market', () => {
  const { startChance } = gridPoint(POINT)

  it.each([
    ['2026-03-31', 30],
    ['2026-06-29', 120],
  ])('cost on average R − R d (1 − (1 − h)ⁿ) until %s (closed form), within four standard errors', (until, days) => {
    const { lines, chanceOfSale } = waitingDraws(certain(), record(), ask([{ productId: 'a', quantity: 1, storeIds: ['here'] }], until))
    const chance = 1 - (1 - startChance) ** days
    const error = Math.sqrt((chance * (1 - chance)) / DRAWS)
    expect(Math.abs((chanceOfSale[0] as number) - chance)).toBeLessThan(4 * error)
    expect(Math.abs(meanOf(lines[0] as Float64Array) - (10000 - 2500 * chance))).toBeLessThan(4 * 2500 * error)
  })

  it('of two stores see a sale at either: 1 − (1 − h)²ⁿ (closed form)', () => {
    const line = { productId: 'b', quantity: 2, storeIds: ['here', 'there'] }
    const { lines, chanceOfSale } = waitingDraws(certain(), record(), ask([line], '2026-04-30'))
    const chance = 1 - (1 - startChance) ** 120
    const error = Math.sqrt((chance * (1 - chance)) / DRAWS)
    expect(Math.abs((chanceOfSale[0] as number) - chance)).toBeLessThan(4 * error)
    expect(Math.abs(meanOf(lines[0] as Float64Array) - (20000 - 5000 * chance))).toBeLessThan(4 * 5000 * error)
  })

  it('are the mean, tenth and nine tenths that the outlook tells', () => {
    const asked = ask([{ productId: 'a', quantity: 1, storeIds: ['here'] }], '2026-06-29')
    const [line] = outlookOf(certain(), record(), asked).lines
    expect(line?.advice).toBe('wait')
    expect(line?.expectedPaidMinor).toBe(Math.round(meanOf(waitingDraws(certain(), record(), asked).total)))
    expect([line?.paid10Minor, line?.paid90Minor]).toEqual([7500, 10000])
  })
})

describe('regular prices that keep rising', () => {
  /** Prices rise by so much at every change, and change on so many of a hundred days; there are no sales to speak of. */
  const rising = (changesIn100: number, sizeLog: number): Learned => {
    const learned = certain()
    const kind = learned.kinds['filter'] as KindLearned
    const changes = { ...kind.changes, shape: 1e6 * changesIn100, days: 1e8, sizesLog: [sizeLog] }
    return { ...learned, kinds: { any: { ...kind, changes }, filter: { ...kind, changes } } }
  }
  const line = { productId: 'a', quantity: 1, storeIds: ['here'] }
  const few = (until: string): Ask => ({ ...ask([line], until), draws: 200 })

  it('are told of a year ahead at most: a later date is as far as that', () => {
    // A rise of 5 % on one day in a hundred is 1.05 ^ 3.66, a fifth, in a year, and six times as much in ten years.
    const year = waitingDraws(rising(1, 0.05), record(), few('2027-03-02'))
    expect(waitingDraws(rising(1, 0.05), record(), few('2036-03-01'))).toEqual(year)
    expect(waitingDraws(rising(1, 0.05), record(), few('2026-09-01')).total).not.toEqual(year.total)
    expect(outlookOf(rising(1, 0.05), record(), few('2036-03-01')).total.paid90Minor).toBeLessThan(15000)
  })

  it('never come to more than four times, or less than a quarter, of today’s', () => {
    // 0.2 a day of 10 % each is e ^ 7.3, fifteen hundred times, in a year.
    const { total } = waitingDraws(rising(20, 0.1), record(), few('2027-03-01'))
    expect(Math.max(...total)).toBeLessThanOrEqual(40000)
    const fallen = waitingDraws(rising(20, -0.1), record(), few('2027-03-01')).total
    // A sale takes a quarter off the least regular price.
    expect(Math.min(...fallen)).toBeGreaterThanOrEqual(2500 * 0.75)
  })
})

describe('sale times', () => {
  const window = (storeId: string) => ({ saleTimeId: 'spring', storeId, first: '2026-03-02', last: '2026-03-04' })
  const both = (storeOfB: string): number => {
    const learned = certain({ runs: [3000, 7000], part: [1, 1e-6] })
    const lines = [
      { productId: 'a', quantity: 1, storeIds: ['here'] },
      { productId: 'b', quantity: 1, storeIds: [storeOfB] },
    ]
    const { total } = waitingDraws(learned, record([window('here'), window('there')]), ask(lines, '2026-03-03'))
    return total.filter((sum) => sum === 15000).length / DRAWS
  }
  // Two days hardly see an ordinary sale: 3 in a hundred that either begins, which is the allowance beside four standard errors of 0.007.

  it('of one store are run for all its lines or for none', () => {
    expect(Math.abs(both('here') - 0.3)).toBeLessThan(4 * 0.0072 + 0.02)
  })

  it('of two stores have nothing to do with each other', () => {
    expect(Math.abs(both('there') - 0.09)).toBeLessThan(4 * 0.0045 + 0.02)
  })
})

describe('a sale that runs today', () => {
  const running = (lastDay: string | null): MarketRecord => ({
    ...record(),
    sightings: [
      aSighting({ productId: 'a', storeId: 'here', priceMinor: 10000, seenOn: '2026-02-20' }),
      aSighting({ productId: 'a', storeId: 'here', priceMinor: 7000, seenOn: ASOF, condition: 'sale', lastDay }),
    ],
  })
  const asked = ask([{ productId: 'a', quantity: 1, storeIds: ['here'] }], '2026-05-30')

  it('is had tomorrow too if its last day is printed, and leaves no hurry until then', () => {
    const { lines } = waitingDraws(certain(), running('2026-03-08'), asked)
    expect(new Set(lines[0])).toEqual(new Set([7000]))
    const [line] = outlookOf(certain(), running('2026-03-08'), asked).lines
    expect(line).toMatchObject({ advice: 'no_hurry', noHurryUntil: '2026-03-08', payTodayMinor: 7000, expectedPaidMinor: 7000 })
  })

  it('is gone tomorrow if today was the last, and may be either if nothing is printed', () => {
    const share = (lastDay: string | null): number => {
      const { lines } = waitingDraws(certain(), running(lastDay), asked)
      return (lines[0] as Float64Array).filter((paid) => paid === 7000).length / DRAWS
    }
    expect(share(ASOF)).toBe(0)
    expect(share(null)).toBeGreaterThan(0.6)
    expect(share(null)).toBeLessThan(1)
    expect(outlookOf(certain(), running(null), asked).lines[0]?.advice).toBe('buy_now')
  })
})
