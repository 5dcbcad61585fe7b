import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { currencyExponent } from '../../../core/money.ts'
import { homeMinor, isFineRate, isOldRate, sayRate } from '../../../core/pricing/currency-rate.ts'
import { buildCost } from '../../../core/pricing/build-cost.ts'
import { inHomeCurrency } from '../../../core/pricing/foreign-stores.ts'
import { asOf, lineOf, viewOf } from './a-market.ts'
import { aStore } from './a-sighting.ts'

const CODES = ['USD', 'EUR', 'JPY', 'KRW', 'KWD', 'BHD'] as const
const rate = { currency: 'CAD', rate: 0.7312, seenOn: '2026-10-12', source: 'noon rate' }

describe('an amount in another currency', () => {
  // By hand; the decimals of ISO 4217 are 0 for JPY, 3 for KWD.
  it.each([
    [10_000, 'CAD', 0.7312, 'USD', 7312],
    [10_000, 'JPY', 0.0067, 'USD', 6700],
    [1_000, 'USD', 149.55, 'JPY', 1496],
    [12_500, 'KWD', 3.25, 'USD', 4063],
    [4_063, 'USD', 0.30769231, 'KWD', 12_502],
    [1, 'VND', 0.00003941, 'USD', 0],
  ])('turns %i %s at %d into %s', (minor, currency, per, home, expected) => {
    expect(homeMinor(minor, { currency, rate: per }, home)).toBe(expected)
  })

  test.prop([fc.nat(1_000_000_000), fc.integer({ min: 1, max: 100_000_000_000 }), fc.constantFrom(...CODES), fc.constantFrom(...CODES)])(
    'is within half a unit of the exact amount, whatever the decimals',
    (minor, steps, currency, home) => {
      const per = steps / 1e8
      fc.pre(isFineRate(per))
      const whole = 100_000_000n * 10n ** BigInt(currencyExponent(currency))
      const exact = BigInt(minor) * BigInt(steps) * 10n ** BigInt(currencyExponent(home))
      const off = BigInt(homeMinor(minor, { currency, rate: per }, home)) * whole - exact
      expect(2n * (off < 0n ? -off : off) <= whole).toBe(true)
    },
  )

  it('has a rate of at most eight decimals', () => {
    expect(isFineRate(0.00003941)).toBe(true)
    expect(isFineRate(0.123456789)).toBe(false)
  })

  it('says the rate with its day and source, and when it is old', () => {
    expect(sayRate(rate, 'USD', '2026-10-20')).toBe('1 CAD = 0.7312 USD, rate of Oct 12, 2026 (noon rate)')
    expect(sayRate(rate, 'USD', '2026-11-26')).toContain('which is 45 days old')
    expect(isOldRate(rate, '2026-11-11')).toBe(false)
    expect(isOldRate(rate, '2026-11-12')).toBe(true)
  })
})

describe('stores of another currency', () => {
  const home = aStore({ id: 'kettle' })
  const foreign = aStore({
    id: 'upriver',
    currency: 'CAD',
    delivery: { kind: 'free_over', feeMinor: 1000, freeOverMinor: 20_000, oversizeMinor: 500 },
  })
  const prices = [viewOf('heater', 'upriver', 10_000)]
  const cost = (rates: Parameters<typeof inHomeCurrency>[2]) => {
    const market = inHomeCurrency([home, foreign], prices, rates, 'USD')
    return buildCost({ lines: [lineOf('heater')], ...market, storeIds: ['kettle', 'upriver'], asOf })
  }

  it('are reckoned at the rate, their fees and thresholds too', () => {
    expect(cost([rate]).today).toMatchObject({ complete: true, goodsMinor: 7312, deliveryMinor: 731, totalMinor: 8043 })
    expect(inHomeCurrency([foreign], [], [rate], 'USD').stores[0]?.delivery).toEqual({
      kind: 'free_over',
      feeMinor: 731,
      freeOverMinor: 14_624,
      oversizeMinor: 366,
    })
  })

  it('enter no tier without a rate, and the line says why', () => {
    const { today, full, bestSeen } = cost([{ ...rate, currency: 'EUR' }])
    const none = { complete: false, missing: [{ lineId: 'line-heater', name: 'heater', why: 'no_rate' }] }
    expect([today, full, bestSeen]).toEqual([none, none, none])
  })

  it('leave the price at home to stand where there is one', () => {
    const both = [...prices, viewOf('heater', 'kettle', 12_000)]
    const market = inHomeCurrency([home, foreign], both, [], 'USD')
    const { today } = buildCost({ lines: [lineOf('heater')], ...market, storeIds: ['kettle', 'upriver'], asOf })
    expect(today).toMatchObject({ complete: true, totalMinor: 12_000 })
  })

  it('never come to a price of nothing', () => {
    const tiny = inHomeCurrency([foreign], [viewOf('clip', 'upriver', 1)], [{ ...rate, rate: 0.0001 }], 'USD')
    expect(tiny.prices[0]?.today?.priceMinor).toBe(1)
  })
})
