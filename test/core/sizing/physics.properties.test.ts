import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { VERDICTS, type Check, type Finding } from '../../../core/sizing/finding.ts'
import { heatingOf } from '../../../core/sizing/heating.ts'
import { lossW } from '../../../core/sizing/heat-loss.ts'
import type { SizingSubject } from '../../../core/sizing/report.ts'
import { GearSchema, NeedExactSchema } from '../../../core/sizing/schema.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { METRIC, sayPhrase, sayQuantity, US } from '../../../core/units/say.ts'
import { anyGear, anyRoom } from './any-subject.ts'
import { conditions, gear, one } from './sample-build.ts'

const find = (subject: SizingSubject, check: Check): Finding | undefined =>
  sizingReport(subject).findings.find((finding) => finding.check === check)
const rank = (finding: Finding | undefined): number => (finding ? VERDICTS.indexOf(finding.verdict) : NaN)

describe('scaling', () => {
  it('a tank k times as large in every length holds k³ as much and weighs k³ as much', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.5, max: 2, noNaN: true }), (k) => {
        const figures = (scale: number) => {
          const tank = one('Box', { lengthMm: 800 * scale, widthMm: 400 * scale, heightMm: 400 * scale, glassMm: 8 * scale, bottomMm: 8 * scale, material: 'glass' as const, style: 'rimless' as const }) // prettier-ignore
          return sizingReport({
            gear: gear({ tank, substrates: [one('Bag', { type: 'gravel' as const, packMassKg: 30 * scale ** 3 })] }),
            conditions: conditions({ waterBelowRimMm: 40 * scale, substrateDepthMm: 50 * scale }),
          }).figures
        }
        const [small, large] = [figures(1), figures(k)]
        for (const key of ['grossVolumeL', 'waterVolumeL', 'emptyMassKg', 'runningMassKg'] as const)
          expect(Math.abs(large[key]! / (small[key]! * k ** 3) - 1)).toBeLessThan(2e-3)
      }),
      { numRuns: 40 },
    )
  })
})

describe('one way', () => {
  it('more on the circuit is never judged better', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, fc.double({ min: 0, max: 5000, noNaN: true }), (someGear, room, more) => {
        const less = find({ gear: someGear, conditions: room }, 'electrical_load')
        const full = find(
          { gear: someGear, conditions: { ...room, otherLoadW: Math.min(20_000, room.otherLoadW + more) } },
          'electrical_load',
        )
        if (less && full && less.verdict !== 'not_known' && full.verdict !== 'not_known') expect(rank(full)).toBeLessThanOrEqual(rank(less))
      }),
      { numRuns: 150 },
    )
  })

  it('a warmer summer never makes a stuck heater milder, a colder winter never holds better', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, fc.double({ min: 0.5, max: 10, noNaN: true }), (someGear, room, by) => {
        const base = { gear: someGear, conditions: room }
        const hotter = { gear: someGear, conditions: { ...room, warmestRoomC: room.warmestRoomC + by } }
        const colder = { gear: someGear, conditions: { ...room, coldestRoomC: room.coldestRoomC - by } }
        for (const [check, harder] of [['heater_stuck', hotter], ['heater_holds', colder]] as const) {
          const [before, after] = [find(base, check), find(harder, check)]
          if (!before || !after || before.verdict === 'not_known' || after.verdict === 'not_known') continue
          expect([check, rank(after) <= rank(before)]).toEqual([check, true])
        }
      }),
      { numRuns: 150 },
    ) // prettier-ignore
  })

  it('a heavier rating of a stand is never judged worse', () => {
    fc.assert(
      fc.property(fc.double({ min: 20, max: 2000, noNaN: true }), fc.double({ min: 1, max: 500, noNaN: true }), (rated, more) => {
        const judged = (ratedLoadKg: number) =>
          rank(
            find(
              { gear: gear({ stand: one('Bench', { topLengthMm: 1220, topWidthMm: 460, ratedLoadKg }) }), conditions: conditions() },
              'stand_load',
            ),
          )
        expect(judged(rated + more)).toBeGreaterThanOrEqual(judged(rated))
      }),
      { numRuns: 60 },
    )
  })

  it('the high-loss end never loses less than the low-loss end at the same room', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        // One room for both ends, cold enough that the water loses heat to it.
        const roomC = Math.min(room.livestock.targetC, room.coldestRoomC) - 1
        const found = situationOf({ gear: someGear, conditions: { ...room, coldestRoomC: roomC, warmestRoomC: roomC } })
        if (!found.ok) return
        const { cold, warmAsBuilt } = heatingOf(found.value)
        const { targetC } = room.livestock
        // A sump of unstated sides is reckoned in several forms at the high-loss end, beside the one tank and lid at the other.
        const forms = cold.length / warmAsBuilt.length
        for (const [index, { loss }] of cold.entries())
          expect(lossW(loss, targetC)).toBeGreaterThanOrEqual(lossW(warmAsBuilt[Math.floor(index / forms)]!.loss, targetC) - 1e-9)
      }),
      { numRuns: 200 },
    )
  })
})

describe('what must not matter', () => {
  it('the order of gear', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const turned = { ...someGear }
        for (const kind of ['filters', 'heaters', 'lights', 'substrates', 'conditioners', 'testKits', 'power'] as const)
          Object.assign(turned, { [kind]: someGear[kind].toReversed() })
        const verdicts = (of: typeof someGear) =>
          sizingReport({ gear: of, conditions: room })
            .findings.map(({ check, verdict, value }) => `${check} ${verdict} ${value?.value.toFixed(Math.max(0, value.digits - 1)) ?? ''}`)
            .sort()
        expect(verdicts(turned).map((each) => each.split(' ').slice(0, 2))).toEqual(
          verdicts(someGear).map((each) => each.split(' ').slice(0, 2)),
        )
      }),
      { numRuns: 150 },
    )
  })

  it('the units somebody reads in: the report knows none, and both readers are told all of it', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const { findings } = sizingReport({ gear: someGear, conditions: room })
        for (const { reason, value } of findings) {
          const spans = [METRIC, US].map(
            (reader) => reason.filter((part) => typeof part !== 'string').map((part) => sayQuantity(part, reader)).length,
          )
          expect(spans[0]).toBe(spans[1])
          expect(sayPhrase(reason, US).length).toBeGreaterThan(0)
          if (value) expect(sayQuantity(value, US)).toMatch(/\d/)
        }
      }),
      { numRuns: 60 },
    )
  })
})

describe('balances', () => {
  it('mass: what runs is the empty tank, its water and its substrate', () => {
    fc.assert(
      fc.property(anyGear, anyRoom, (someGear, room) => {
        const {
          runningMassKg,
          brimMassKg,
          waterVolumeL,
          tankWaterL = waterVolumeL,
          grossVolumeL,
        } = sizingReport({
          gear: someGear,
          conditions: room,
        }).figures
        if (runningMassKg === undefined) return
        const situation = situationOf({ gear: someGear, conditions: room })
        for (const { mass, laden } of situation.ok ? situation.value.corners : []) {
          expect(laden.waterVolumeL).toBeGreaterThan(0)
          expect(mass.runningKg).toBeGreaterThan(mass.emptyKg + mass.substrateKg)
          expect(mass.brimKg).toBeGreaterThanOrEqual(mass.runningKg)
        }
        expect(brimMassKg!).toBeGreaterThanOrEqual(runningMassKg - 0.02)
        // What a sump holds is in use too, and lies outside the tank.
        expect(tankWaterL!).toBeLessThanOrEqual(Math.min(grossVolumeL!, waterVolumeL!) + 0.01)
      }),
      { numRuns: 200 },
    )
  })
})

describe('what is no valid input', () => {
  it.each([
    ['coldestRoomC', -40],
    ['warmestRoomC', 99],
    ['waterBelowRimMm', -1],
    ['substrateDepthMm', NaN],
    ['outletDistanceMm', Infinity],
    ['lightHoursPerDay', 25],
    ['circuitVoltageV', 12],
    ['joistSpanMm', 1],
    ['plants', 'jungle'],
    ['floor', 'sky'],
  ] as const)('is refused by its field: %s of %s', (field, value) => {
    const refused = NeedExactSchema.safeParse({ [field]: value })
    expect(refused.error?.issues.map(({ path }) => path.join('.'))).toEqual([field])
    expect(refused.error?.issues[0]?.message).not.toBe('')
  })

  it('is refused by its path in the gear, for any figure out of any range', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('lengthMm', 'widthMm', 'heightMm', 'glassMm', 'bottomMm'),
        fc.constantFrom(-1, 0, 1e6, NaN, Infinity, '1'),
        (field, value) => {
          const spec = { lengthMm: 600, widthMm: 300, heightMm: 360, [field]: value }
          const refused = GearSchema.safeParse({ tank: { name: 'Box', quantity: 1, spec } })
          expect(refused.error?.issues.map(({ path }) => path.join('.'))).toEqual([`tank.spec.${field}`])
        },
      ),
      { numRuns: 60 },
    )
  })
})
