import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { costOf, leastOfAll, lineOf, markets, soldAt, totalAt, totalOf, type Market } from './a-market.ts'

const any = markets({ stores: 5, lines: 7, thresholds: true, rates: true })
const many = markets({ stores: 12, lines: 8, thresholds: true, rates: true })
const cheapestEach = (market: Market): string[] => market.lines.map((line) => soldAt(market, line)[0] ?? '')
const chosen = (market: Market): string[] => costOf(market).lines.map(({ storeId }) => storeId ?? '')

describe('the stores chosen for a build', () => {
  test.prop([any], { numRuns: 300 })('never cost more than each line at its own cheapest store', (market) => {
    expect(totalOf(market)).toBeLessThanOrEqual(totalAt(market, cheapestEach(market)))
  })

  test.prop([many], { numRuns: 150 })('nor where there are more stores than are tried in every combination', (market) => {
    expect(totalOf(market)).toBeLessThanOrEqual(totalAt(market, cheapestEach(market)))
  })

  test.prop([markets({ stores: 3, lines: 4, thresholds: false, wholeTax: true, rates: true })], { numRuns: 300 })(
    'cost the least of all ways where no store delivers free over an amount',
    (market) => {
      expect(totalOf(market)).toBe(leastOfAll(market))
    },
  )

  test.prop([markets({ stores: 3, lines: 4, thresholds: false, rates: true })], { numRuns: 150 })(
    'and where tax is rounded, within a minor unit of it a store and rate',
    (market) => {
      const rates = market.stores.reduce((sum, { otherRates = [] }) => sum + 1 + otherRates.length, 0)
      expect(totalOf(market) - leastOfAll(market)).toBeLessThanOrEqual(rates)
    },
  )

  test.prop([any], { numRuns: 150 })('never cost more than any set of stores with each line at its cheapest in the set', (market) => {
    const total = totalOf(market)
    const ids = market.stores.map(({ id }) => id)
    for (let set = 1; set < 1 << ids.length; set += 1) {
      const within = market.lines.map((line) => soldAt(market, line).find((id) => ((set >> ids.indexOf(id)) & 1) === 1))
      if (within.every((id) => id !== undefined)) expect(total).toBeLessThanOrEqual(totalAt(market, within))
    }
  })

  test.prop([fc.oneof(any, many)], { numRuns: 150 })('cannot be bettered by one line at another store', (market) => {
    const [total, at] = [totalOf(market), chosen(market)]
    market.lines.forEach((line, index) => {
      for (const other of soldAt(market, line)) expect(total).toBeLessThanOrEqual(totalAt(market, at.with(index, other)))
    })
  })

  test.prop([fc.oneof(any, many), fc.nat()], { numRuns: 150 })('do not depend on the order of lines, stores or prices', (market, turn) => {
    const turned = <T>(list: readonly T[]): T[] => [...list.slice(turn % list.length), ...list.slice(0, turn % list.length)].reverse()
    const byLine = (of: Market) => costOf(of).lines.toSorted((a, b) => (a.lineId < b.lineId ? -1 : 1))
    const other = { stores: turned(market.stores), prices: turned(market.prices), lines: turned(market.lines) }
    expect(byLine(other)).toEqual(byLine(market))
    expect(costOf(other).receipts).toEqual(costOf(market).receipts)
  })

  test.prop([any, fc.nat()], { numRuns: 150 })('leave a line at the store it names, and place the others around it', (market, which) => {
    const index = which % market.lines.length
    const line = market.lines[index] ?? lineOf('none')
    const named = soldAt(market, line).at(-1) ?? ''
    const lines = market.lines.with(index, { ...line, storeId: named })
    expect(chosen({ ...market, lines })[index]).toBe(named)
    expect(totalOf({ ...market, lines })).toBeLessThanOrEqual(totalAt(market, cheapestEach(market).with(index, named)))
  })

  test.prop([any], { numRuns: 100 })('are the same beside a line that nobody sells, which alone is missing', (market) => {
    const { lines, today } = costOf({ ...market, lines: [lineOf('unsold'), ...market.lines] })
    expect(lines.slice(1).map(({ storeId }) => storeId)).toEqual(chosen(market))
    expect(today).toEqual({ complete: false, missing: [{ lineId: 'line-unsold', name: 'unsold', why: 'no_price' }] })
  })

  test.prop([any], { numRuns: 150 })('are charged the same delivery in every tier', (market) => {
    const { full, today, bestSeen } = costOf(market)
    const delivery = [full, today, bestSeen].map((tier) => (tier.complete ? tier.deliveryMinor : null))
    expect(delivery).toEqual([delivery[1], delivery[1], delivery[1]])
    expect(delivery[1]).not.toBeNull()
  })

  it('is tried on markets in which delivery often changes the choice', () => {
    const tried = fc.sample(any, { numRuns: 200, seed: 11 })
    expect(tried.filter((market) => totalOf(market) < totalAt(market, cheapestEach(market))).length).toBeGreaterThan(50)
  })
})
