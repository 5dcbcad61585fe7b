import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { mixPacks, type Pack } from '../../../core/quote/pack-mix.ts'

const pack = (holds: number, priceMinor: number): Pack => ({ id: String(holds), holds, priceMinor })
const chosen = (need: number, packs: Pack[], aim?: 'least_cost' | 'least_waste') => mixPacks(need, packs, aim)?.packs

/** Every count of every pack up to what would do alone: slow, plain, and not the way the rule goes about it. */
function allWays(need: number, packs: readonly Pack[]): Array<{ holds: number; priceMinor: number }> {
  const [first, ...rest] = packs
  if (first === undefined) return [{ holds: 0, priceMinor: 0 }]
  const most = Math.ceil(need / first.holds)
  return Array.from({ length: most + 1 }, (_, count) => count).flatMap((count) =>
    allWays(need, rest).map((way) => ({ holds: way.holds + count * first.holds, priceMinor: way.priceMinor + count * first.priceMinor })),
  )
}

describe('packs that mix', () => {
  it('are the cheapest that hold enough, not the largest and not the cheapest by content', () => {
    // 20 L: two bags of 15 are 36.00, one of 15 and one of 5 are 25.00, four of 5 are 28.00.
    expect(chosen(20, [pack(5, 700), pack(15, 1800)])).toEqual([
      { id: '15', count: 1 },
      { id: '5', count: 1 },
    ])
    // 3 L: the small bag does, though a litre in it costs more.
    expect(chosen(3, [pack(5, 700), pack(15, 1800)])).toEqual([{ id: '5', count: 1 }])
  })
  it('may instead be what leaves the least over, whatever it costs', () => {
    expect(chosen(18, [pack(9, 5000), pack(20, 2000)])).toEqual([{ id: '20', count: 1 }])
    expect(chosen(18, [pack(9, 5000), pack(20, 2000)], 'least_waste')).toEqual([{ id: '9', count: 2 }])
  })
  it('are exactly enough where exactly enough is asked', () => {
    expect(mixPacks(0.3, [pack(0.1, 100)])).toMatchObject({ packs: [{ count: 3 }], exact: true })
  })
  it.each([
    [0, [pack(5, 700)]],
    [-1, [pack(5, 700)]],
    [Number.NaN, [pack(5, 700)]],
    [5, []],
    [5, [pack(0, 100)]],
  ])('are none for a need of %s of %j', (need, packs) => {
    expect(mixPacks(need, packs)).toBeNull()
  })

  const packs = fc.uniqueArray(fc.record({ holds: fc.integer({ min: 2, max: 30 }), priceMinor: fc.integer({ min: 1, max: 5000 }) }), {
    minLength: 1, maxLength: 3, selector: ({ holds }) => holds,
  }) // prettier-ignore

  it('cost no more than any other way of buying enough, and leave no more over than any other', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), packs, (need, sizes) => {
        const offered = sizes.map(({ holds, priceMinor }) => pack(holds, priceMinor))
        const ways = allWays(need, offered).filter(({ holds }) => holds >= need)
        expect(mixPacks(need, offered)?.priceMinor).toBe(Math.min(...ways.map(({ priceMinor }) => priceMinor)))
        expect(mixPacks(need, offered, 'least_waste')?.holds).toBe(Math.min(...ways.map(({ holds }) => holds)))
      }),
      { numRuns: 300 },
    )
  })
  it('add up to what they say, whatever is offered and in whatever order', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 500, noNaN: true }), packs, (need, sizes) => {
        const offered = sizes.map(({ holds, priceMinor }) => pack(holds / 7, priceMinor))
        const mix = mixPacks(need, offered)
        const sum = mix?.packs.reduce((so, { id, count }) => so + count * (offered.find((one) => one.id === id)?.priceMinor ?? NaN), 0)
        expect(mix?.priceMinor).toBe(sum)
        expect(mix?.holds).toBeGreaterThan(need - 1e-6)
        expect(mixPacks(need, offered.toReversed())?.priceMinor).toBe(mix?.priceMinor)
      }),
      { numRuns: 200 },
    )
  })
})
