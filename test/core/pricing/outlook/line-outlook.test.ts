import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { addDays } from '../../../../core/dates.ts'
import { learn, outlookOf, sayAdvice, type Ask } from '../../../../core/pricing/outlook/outlook.ts'
import type { LineOutlook } from '../../../../core/pricing/outlook/line-outlook.ts'
import type { Sighting } from '../../../../core/pricing/sighting.ts'
import { aSighting } from '../a-sighting.ts'
import { ASOF, certain } from './a-certain-belief.ts'

const shelf = (storeId: string, priceMinor: number, seenOn = '2026-02-01') => aSighting({ productId: 'a', storeId, priceMinor, seenOn })
const sale = (storeId: string, priceMinor: number, lastDay: string | null, seenOn = ASOF) =>
  aSighting({ productId: 'a', storeId, priceMinor, seenOn, condition: 'sale', lastDay })

describe('the least saving', () => {
  it('below which nobody waits is 3 % of the price, and what the manager set', () => {
    const free = outlook([shelf('here', 10000)])
    const saved = free.line.payTodayMinor - free.line.expectedPaidMinor
    expect(free.line.advice).toBe('wait')
    expect(saved).toBeGreaterThanOrEqual(300)
    const more = outlook([shelf('here', 10000)], { leastSavingMinor: 10000 })
    expect(more.line).toMatchObject({ advice: 'buy_when_convenient', expectedPaidMinor: 10000 })
    // A day in which next to nothing can happen saves next to nothing.
    const soon = outlook([shelf('here', 10000)], { until: addDays(ASOF, 1) })
    expect(soon.line).toMatchObject({ advice: 'buy_when_convenient', expectedPaidMinor: 10000 })
  })
})

describe('the price on the tag', () => {
  it('is of one unit and before tax, so that the line comes to no more than the price to buy at', () => {
    const lines = [{ productId: 'a', quantity: 3, storeIds: ['here'], priceOf: (_: string, unitMinor: number) => unitMinor * 1.07 }]
    const { line } = outlook([shelf('here', 10000)], { lines })
    expect(line.buyAtTagMinor * 3 * 1.07).toBeLessThanOrEqual(line.priceToBuyAtMinor)
    expect((line.buyAtTagMinor + 1) * 3 * 1.07).toBeGreaterThan(line.priceToBuyAtMinor)
  })
})

/** Sales of 5 to 45 % off: a shallow one is bought at late, and was none to buy at on the first day. */
const SALES_THAT_DIFFER = [-0.2, -0.15, -0.1, -0.05, 0, 0.05, 0.1, 0.15, 0.2]

describe('the chance that is told', () => {
  it('is of a price at or under the one to buy at, of the whole line and on the tag', () => {
    const told = { chance: 0, none: 0 }
    const asked = fc.record({
      regular: fc.integer({ min: 500, max: 40_000 }),
      there: fc.integer({ min: 500, max: 40_000 }),
      quantity: fc.integer({ min: 1, max: 4 }),
      tax: fc.constantFrom(1, 1.07, 1.19),
      days: fc.integer({ min: 5, max: 90 }),
      waitingCostPerDayMinor: fc.integer({ min: 0, max: 60 }),
      seed: fc.integer({ min: 1, max: 1000 }),
    })
    fc.assert(
      fc.property(asked, ({ regular, there, quantity, tax, days, waitingCostPerDayMinor, seed }) => {
        const priceOf = (_: string, unitMinor: number): number => unitMinor * quantity * tax
        const lines = [{ productId: 'a', quantity, storeIds: ['here', 'there'], priceOf }]
        const { line } = outlook([shelf('here', regular), shelf('there', there)], {
          lines,
          until: addDays(ASOF, days),
          waitingCostPerDayMinor,
          seed,
          draws: 60,
          residuals: SALES_THAT_DIFFER,
        })
        if (line.advice !== 'wait') return
        told[line.likely ? 'chance' : 'none'] += 1
        expect(line.likely?.paidMinor ?? 0).toBeLessThanOrEqual(line.priceToBuyAtMinor)
        expect(line.likelyTagMinor ?? 0).toBeLessThanOrEqual(line.buyAtTagMinor)
      }),
      { numRuns: 80, seed: 7 },
    )
    expect(told.chance).toBeGreaterThan(5)
  })
})

interface Asked extends Partial<Ask> {
  saleDays?: number
  residuals?: number[]
}
function outlook(sightings: Sighting[], { saleDays = 50, residuals = [0], ...fields }: Asked = {}) {
  const record = { sightings, products: [{ id: 'a', kind: 'filter' as const }], windows: [], asOf: ASOF }
  const lines = [{ productId: 'a', quantity: 1, storeIds: ['here', 'there'] }]
  const ask: Ask = { lines, until: '2026-04-30', waitingCostPerDayMinor: 0, draws: 200, seed: 3, ...fields }
  const learned = certain({ saleDays, residuals })
  const { lines: found, total } = outlookOf(learned, record, ask)
  return { line: found[0] as LineOutlook, total }
}

describe('the sale of today', () => {
  it('is not one that is past, even where its store is as cheap again', () => {
    const { line } = outlook(
      [shelf('here', 10000), sale('here', 9000, '2026-02-26', '2026-02-20'), shelf('there', 14000), sale('there', 10000, '2026-03-04')],
      { leastSavingMinor: 1e9 },
    )
    expect(line).toMatchObject({ payTodayMinor: 10000, advice: 'no_hurry', noHurryUntil: '2026-03-04', saleLastDay: '2026-03-04' })
  })

  it.each([
    ['2026-03-03', '2026-03-08'],
    ['2026-03-08', '2026-03-03'],
    [null, '2026-03-08'],
  ])('is, of two alike that end on %s and %s, the one that lasts longer', (here, there) => {
    const { line } = outlook([shelf('here', 10000), sale('here', 7000, here), shelf('there', 10000), sale('there', 7000, there)])
    expect(line).toMatchObject({ payTodayMinor: 7000, advice: 'no_hurry', noHurryUntil: '2026-03-08' })
  })

  it('leaves no hurry beyond the date by which it is to be bought', () => {
    const { line } = outlook([shelf('here', 10000), sale('here', 7000, '2026-05-20')])
    expect(line).toMatchObject({ advice: 'no_hurry', noHurryUntil: '2026-04-30', saleLastDay: '2026-05-20' })
  })

  it('is told as one of today only where it ends today', () => {
    const { line } = outlook([shelf('here', 10000), sale('here', 7000, ASOF)])
    expect(line).toMatchObject({ advice: 'buy_now', noHurryUntil: null, saleLastDay: ASOF })
    const reader = { currency: 'USD', asOf: ASOF, until: '2026-04-30', weekWaitMinor: 0, withTax: false }
    expect(sayAdvice(line, reader).words).toContain('on sale for today only')
  })
})

describe('on the date itself', () => {
  it.each([
    ['a sale that runs', [shelf('here', 10000), sale('here', 7000, '2026-03-08')]],
    ['a regular price', [shelf('here', 10000)]],
  ])('%s is to be bought now', (_, sightings) => {
    expect(outlook(sightings, { until: ASOF }).line.advice).toBe('buy_now')
  })
})

describe('where too little is recorded', () => {
  it('today’s price stands, in the line and in the total, and no range is told', () => {
    const known = outlook([shelf('here', 10000)])
    expect(known.line.advice).toBe('wait')
    expect(known.total.paid10Minor).toBeLessThan(10000)
    const { line, total } = outlook([shelf('here', 10000)], { saleDays: 2 })
    const todays = { expectedPaidMinor: 10000, paid10Minor: 10000, paid90Minor: 10000 }
    expect(line).toMatchObject({ basis: 'too_little', advice: 'buy_when_convenient', likely: null, ...todays })
    expect(total).toMatchObject({ payTodayMinor: 10000, ...todays })
  })

  it('a product of a market that nobody watched is not waited for', () => {
    const record = { sightings: [shelf('here', 10000)], products: [{ id: 'a', kind: 'filter' as const }], windows: [], asOf: ASOF }
    const lines = [{ productId: 'a', quantity: 1, storeIds: ['here'] }]
    const ask = { lines, until: '2026-08-30', waitingCostPerDayMinor: 0, draws: 200, seed: 3 }
    const { total } = outlookOf(learn(record), record, ask)
    expect([total.paid10Minor, total.expectedPaidMinor, total.paid90Minor]).toEqual([10000, 10000, 10000])
  })

  it('a sale that runs is said all the same', () => {
    const { line } = outlook([shelf('here', 10000), sale('here', 7000, '2026-03-08')], { saleDays: 2 })
    expect(line).toMatchObject({ advice: 'no_hurry', noHurryUntil: '2026-03-08' })
  })
})

describe('the price to buy at today', () => {
  it('is at least today’s wherever the advice is not to wait, with the fraction of a cent of its tax', () => {
    const priceOf = (_: string, unitMinor: number): number => unitMinor * 1.06
    const lines = [{ productId: 'a', quantity: 1, storeIds: ['here'], priceOf }]
    const { line } = outlook([shelf('here', 1999)], { lines, leastSavingMinor: 10000 })
    expect(line).toMatchObject({
      advice: 'buy_when_convenient',
      payTodayMinor: 1999 * 1.06,
      priceToBuyAtMinor: 1999 * 1.06,
      buyAtTagMinor: 1999,
    })
    const onSale = outlook([shelf('here', 10000), sale('here', 7000, '2026-03-08')], { saleDays: 2 })
    expect(onSale.line).toMatchObject({ advice: 'no_hurry', payTodayMinor: 7000 })
    expect(onSale.line.priceToBuyAtMinor).toBeGreaterThanOrEqual(7000)
  })

  it.each([0, 20, 100])('lies below today’s where a sale may still run unreported and waiting costs %i a day', (waitingCostPerDayMinor) => {
    const { line } = outlook([shelf('here', 10000), sale('here', 7000, null, '2026-02-21')], { waitingCostPerDayMinor })
    expect(line).toMatchObject({ advice: 'wait', payTodayMinor: 10000 })
    expect(line.priceToBuyAtMinor).toBeLessThan(9900)
    expect(line.priceToBuyAt(ASOF)).toBe(line.priceToBuyAtMinor)
  })
})
