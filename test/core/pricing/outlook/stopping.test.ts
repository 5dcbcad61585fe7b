import { fc, test } from '@fast-check/vitest'
import { describe, expect, it } from 'vitest'
import { chanceOfSale, stopping, type Offer, type StoppingDay } from '../../../../core/pricing/outlook/stopping.ts'
import { startChance } from '../../../../core/pricing/outlook/sale-grid.ts'

const depths = (regular: number, parts: Array<[depth: number, weight: number]>): Offer[] =>
  parts.map(([depth, weight]) => ({ price: regular * (1 - depth), weight }))
const alike = (days: number, day: StoppingDay): StoppingDay[] => Array.from({ length: days }, () => day)

describe('wait or buy', () => {
  it.each([
    [1, 0.5],
    [2, 0.625],
    [3, 0.6953],
    [4, 0.7417],
    [5, 0.7751],
  ])('meets the published value of %i uniform offers: Moser (1956), Gilbert & Mosteller (1966)', (days, published) => {
    const offers = Array.from({ length: 2000 }, (_, index) => ({ price: (index + 0.5) / 2000, weight: 1 / 2000 }))
    expect(1 - stopping(alike(days, { regular: 1, chance: 1, offers }), 0).value).toBeCloseTo(published, 3)
  })

  it('is the chance of a sale times its depth where there is one depth and waiting is free (own, R − R d (1 − (1 − h)ⁿ))', () => {
    for (const [regular, depth, rate, days, chance, value] of [
      [200, 0.5, 3, 60, 0.3893, 161.0699],
      [90, 0.25, 2, 120, 0.4819, 79.1579],
    ] as const) {
      const plan = alike(days, { regular, chance: startChance(rate), offers: depths(regular, [[depth, 1]]) })
      expect(Math.abs(chanceOfSale(plan) - chance)).toBeLessThan(1e-4)
      expect(Math.abs(stopping(plan, 0).value - value)).toBeLessThan(1e-4)
      expect(stopping(plan, 0).value).toBeCloseTo(regular - regular * depth * (1 - (1 - startChance(rate)) ** days), 9)
    }
    expect(startChance(3)).toBeCloseTo(0.00818549, 7)
  })

  it('gives the prices to buy at of two depths (own)', () => {
    const offers = depths(120, [
      [0.2, 0.7],
      [0.5, 0.3],
    ])
    const plan = alike(90, { regular: 120, chance: startChance(4), offers })
    const { value, buyAt } = stopping(plan, 0)
    expect(Math.abs(chanceOfSale(plan) - 0.627)).toBeLessThan(1e-3)
    expect(Math.abs(value - 98.1788)).toBeLessThan(1e-3)
    expect(Math.abs((buyAt[0] as number) - 98.3218)).toBeLessThan(1e-3)
    expect(Math.abs((buyAt[44] as number) - 106.4523)).toBeLessThan(1e-3)
    expect(buyAt[89]).toBe(120)
  })

  it('takes today’s 285 where waiting costs half a unit a day (own)', () => {
    const offers = depths(300, [
      [0.1, 0.5],
      [0.3, 0.5],
    ])
    const { value, waiting } = stopping(alike(45, { regular: 300, chance: startChance(2), offers }), 0.5)
    expect(Math.abs(value - 299.6721)).toBeLessThan(1e-3)
    expect(Math.abs(waiting - 300.1721)).toBeLessThan(1e-3)
  })

  it('follows a regular price that rises by 6 % a year (own)', () => {
    const days = Array.from({ length: 150 }, (_, index) => {
      const regular = 400 * 1.06 ** ((index + 1) / 365)
      return { regular, chance: startChance(2), offers: depths(regular, [[0.3, 1]]) }
    })
    expect(Math.abs((days[149] as StoppingDay).regular - 409.6941)).toBeLessThan(1e-2)
    expect(Math.abs(stopping(days, 0).value - 338.6609)).toBeLessThan(1e-2)
  })

  it('takes a sale time’s chance on its day in place of the ordinary one (own, R − R d P)', () => {
    const days = Array.from({ length: 40 }, (_, index) => ({
      regular: 150,
      chance: index === 24 ? 0.6 : startChance(1),
      offers: depths(150, [[0.35, 1]]),
    }))
    expect(Math.abs(chanceOfSale(days) - 0.6405)).toBeLessThan(1e-3)
    expect(Math.abs(stopping(days, 0).value - 116.3719)).toBeLessThan(1e-3)
    expect(stopping(days, 0).value).toBeCloseTo(150 - 150 * 0.35 * chanceOfSale(days), 9)
  })

  it('refuses a plan without a day', () => {
    expect(() => stopping([], 0)).toThrow(RangeError)
  })
})

const days = fc.array(
  fc.record({
    regular: fc.double({ min: 50, max: 200, noNaN: true }),
    chance: fc.double({ min: 0, max: 1, noNaN: true }),
    depth: fc.double({ min: 0, max: 0.8, noNaN: true }),
  }),
  { minLength: 1, maxLength: 40 },
)
const planOf = (drawn: Array<{ regular: number; chance: number; depth: number }>): StoppingDay[] =>
  drawn.map(({ regular, chance, depth }) => ({ regular, chance, offers: depths(regular, [[depth, 1]]) }))

describe('whatever may come', () => {
  test.prop([days, fc.double({ min: 0, max: 5, noNaN: true })])('waiting is worth less the more a day of it costs', (drawn, cost) => {
    expect(stopping(planOf(drawn), cost).value).toBeGreaterThanOrEqual(stopping(planOf(drawn), 0).value - 1e-9)
  })

  test.prop([days, fc.double({ min: 0.1, max: 10, noNaN: true })])('all prices times a factor is all answers times it', (drawn, factor) => {
    const scaled = planOf(drawn.map(({ regular, ...rest }) => ({ ...rest, regular: regular * factor })))
    expect(stopping(scaled, factor).value).toBeCloseTo(factor * stopping(planOf(drawn), 1).value, 6)
  })

  test.prop([days])('a free wait never costs more than the last regular price and never less than the deepest sale', (drawn) => {
    const { value } = stopping(planOf(drawn), 0)
    expect(value).toBeLessThanOrEqual((drawn.at(-1)?.regular ?? NaN) + 1e-9)
    expect(value).toBeGreaterThanOrEqual(Math.min(...drawn.map(({ regular, depth }) => regular * (1 - depth))) - 1e-9)
  })

  test.prop([days, fc.double({ min: 0, max: 3, noNaN: true })])(
    'the price to buy at is what waiting on from there comes to',
    (drawn, cost) => {
      const plan = planOf(drawn)
      const { buyAt } = stopping(plan, cost)
      plan.slice(1).forEach((_, index) => expect(buyAt[index]).toBeCloseTo(stopping(plan.slice(index + 1), cost).waiting, 9))
    },
  )
})
