import { describe, expect, it } from 'vitest'
import { learn, learnFrom, outlookOf, planOf, waitingDraws, type Ask } from '../../../../core/pricing/outlook/outlook.ts'
import { dayNumber } from '../../../../core/pricing/outlook/civil-day.ts'
import { taughtBy } from '../../../../core/pricing/outlook/taught.ts'
import { timelines } from '../../../../core/pricing/outlook/timeline.ts'
import { newcomerTrust } from '../../../../core/pricing/trust.ts'
import { stopping } from '../../../../core/pricing/outlook/stopping.ts'
import { aPriceWorld, USUAL_WORLD, worldDay } from './a-price-world.ts'

const world = aPriceWorld({ ...USUAL_WORLD, kinds: 2, productsPerKind: 4, stores: 2 }, 11)
const learned = learn(world.record)
const ask: Ask = {
  lines: ['k0-p0', 'k0-p1', 'k1-p0'].map((productId) => ({ productId, quantity: 1, storeIds: ['s0', 's1'] })),
  until: worldDay(world.recordDays + 59),
  waitingCostPerDayMinor: 0,
  draws: 200,
  seed: 5,
}

describe('what a record teaches', () => {
  it('is plain data, the same bytes in whatever order the record lies', () => {
    const { sightings, products, windows, asOf } = world.record
    const turned = learn({
      sightings: sightings.toReversed(),
      products: products.toReversed(),
      windows: windows.toReversed(),
      asOf,
    })
    expect(JSON.stringify(turned)).toBe(JSON.stringify(learned))
    expect(JSON.parse(JSON.stringify(learned))).toEqual(learned)
  })

  it('is the same bytes where the record is told some products at a time', () => {
    const { sightings, asOf, ...rest } = world.record
    const ids = world.record.products.map(({ id }) => id).toSorted()
    const some = [ids.slice(0, 3), ids.slice(3)].map((few) => sightings.filter(({ productId }) => few.includes(productId)))
    const taught = some.flatMap((few) => taughtBy(timelines(few, dayNumber(asOf), newcomerTrust)))
    expect(JSON.stringify(learnFrom(taught, { ...rest, asOf }, {}))).toBe(JSON.stringify(learned))
    expect(some.map(({ length }) => length > 0)).toEqual([true, true])
  })

  it('takes nothing from days to come, withdrawn sightings and used goods', () => {
    const first = world.record.sightings.slice(0, 3)
    const more = [
      ...first.map((sighting) => ({ ...sighting, id: `${sighting.id}-later`, seenOn: worldDay(world.recordDays + 3), priceMinor: 1 })),
      ...first.map((sighting) => ({ ...sighting, id: `${sighting.id}-gone`, withdrawn: true, priceMinor: 1 })),
      ...first.map((sighting) => ({ ...sighting, id: `${sighting.id}-used`, condition: 'used' as const, priceMinor: 1 })),
    ]
    expect(learn({ ...world.record, sightings: [...world.record.sightings, ...more] })).toEqual(learned)
  })

  it('says something of a market without a single sighting', () => {
    const none = learn({ sightings: [], products: world.record.products, windows: [], asOf: worldDay(700) })
    expect(none.products).toEqual({})
    expect(Math.exp(none.kinds['any']?.logRate.mean ?? NaN)).toBeCloseTo(3, 6)
  })
})

describe('futures', () => {
  it('are the same for the same seed, and others for another', () => {
    const again = waitingDraws(learned, world.record, ask)
    expect(waitingDraws(learned, world.record, ask)).toEqual(again)
    expect(waitingDraws(learned, world.record, { ...ask, seed: 6 }).total).not.toEqual(again.total)
  })

  it('of a line do not shift when another line is added', () => {
    const alone = waitingDraws(learned, world.record, { ...ask, lines: ask.lines.slice(0, 1) })
    expect(waitingDraws(learned, world.record, ask).lines[0]).toEqual(alone.lines[0])
  })

  it('add up, future by future', () => {
    const { lines, total } = waitingDraws(learned, world.record, ask)
    total.forEach((sum, draw) =>
      expect(sum).toBeCloseTo(
        lines.reduce((all, line) => all + (line[draw] as number), 0),
        6,
      ),
    )
  })

  it('leave a line without a known price out of the total, and say so', () => {
    const unknown = { productId: 'nobody-saw-it', quantity: 1, storeIds: ['s0'] }
    const outlook = outlookOf(learned, world.record, { ...ask, lines: [unknown, ...ask.lines] })
    expect(outlook.lines[0]?.payTodayMinor).toBeNaN()
    expect(outlook.lines[0]?.basis).toBe('too_little')
    expect(outlook.total.expectedPaidMinor).toBe(outlookOf(learned, world.record, ask).total.expectedPaidMinor)
  })
})

describe('prices to buy at', () => {
  it('never lie above the regular price before the date where waiting is free, and rise to it', () => {
    for (const { buyAtShare } of planOf(learned, world.record, ask).lines) {
      const before = buyAtShare.subarray(1, -1)
      before.forEach((share) => expect(share).toBeLessThan(1))
      expect(before.at(-1)).toBeGreaterThan(before[0] as number)
      expect(buyAtShare.at(-1)).toBe(Infinity)
    }
  })

  it('are what waiting comes to and no more, where it costs: a small gain is waited for too', () => {
    const waitingCostPerDayMinor = 50
    const [line] = planOf(learned, world.record, { ...ask, lines: ask.lines.slice(0, 1), waitingCostPerDayMinor }).lines
    const { buyAt } = stopping(line?.days ?? [], waitingCostPerDayMinor)
    const shares = line?.days.slice(0, -1).map(({ regular }, day) => (buyAt[day] as number) / regular)
    expect([...(line?.buyAtShare.subarray(1, -1) ?? [])]).toEqual(shares)
    expect(shares).toHaveLength(59)
  })

  it('are the higher on every day the more a day of waiting costs, and by a tenth of the price where sixty days are left', () => {
    const costs = [0, 5, 20, 50]
    const plans = costs.map((waitingCostPerDayMinor) => planOf(learned, world.record, { ...ask, waitingCostPerDayMinor }).lines)
    ask.lines.forEach((_, index) => {
      const shares = plans.map((lines) => [...(lines[index]?.buyAtShare.subarray(1, -1) ?? [])])
      expect(shares.map(({ length }) => length)).toEqual(costs.map(() => 59))
      for (const [step, dearer] of shares.slice(1).entries())
        expect(dearer.map((share, day) => share > (shares[step]?.[day] ?? Infinity))).toEqual(dearer.map(() => true))
      expect((shares.at(-1)?.[0] ?? 0) - (shares[0]?.[0] ?? 1)).toBeGreaterThan(0.1)
    })
  })
})
