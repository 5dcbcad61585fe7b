import psychrolib from 'psychrolib'
import { describe, expect, it } from 'vitest'
import type { SumpSpec } from '../../../core/catalog/appliance-spec.ts'
import { SpecSchema } from '../../../core/catalog/schema.ts'
import { deliveryOf } from '../../../core/sizing/filter-delivery.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { sumpSides, wantsSump } from '../../../core/sizing/sump.ts'
import { situationOf } from '../../../core/sizing/situation.ts'
import { METRIC, sayPhrase } from '../../../core/units/say.ts'
import { operatingFlowByNewton } from '../../reference/pipe-network.ts'
import { isNear } from './reference-tanks.ts'
import { conditions, findingOf, gear, group, one, reportOf } from './sample-build.ts'

/** 588 × 368 × 394 mm inside: 85.255 L, of which half stands in it while the pump runs. */
const BOX: SumpSpec = { lengthMm: 600, widthMm: 380, heightMm: 400, wallMm: 6, material: 'glass', operatingVolumeL: 42.6275 }
const sump = (spec: SumpSpec = BOX): Gear['sump'] => one('Osmere Sump', spec)

function situation(changes: Partial<Gear>, room: Partial<Conditions> = {}) {
  const made = situationOf({ gear: gear(changes), conditions: conditions(room) })
  if (!made.ok) throw new Error(made.refusal.code)
  return made.value
}
const sumpOfBuild = (spec: SumpSpec) => situation({ sump: sump(spec) }).sump!

describe('what a sump holds', () => {
  /** Geometry, by hand: 588 × 368 × 394 mm. */
  it('follows from its sides and walls', () => {
    const { totalL, runningL, freeL, unstated } = sumpOfBuild(BOX)
    isNear(totalL.low, 85.255_296, 1e-9)
    expect(totalL.high).toBe(totalL.low)
    expect(runningL).toEqual({ low: 42.6275, high: 42.6275 })
    isNear(freeL.low, 42.627_796, 1e-6)
    expect(unstated).toEqual([])
  })

  it('is what its maker states before what its sides say', () =>
    expect(sumpOfBuild({ ...BOX, totalVolumeL: 80 })).toMatchObject({ totalL: { low: 80, high: 80 }, unstated: [] }))

  /** Common practice: two fifths to three quarters of it run, and it holds a tenth to a half of the tank's outside (297.327 L). */
  it('runs over what is usual where nobody stated it', () => {
    const { runningL, freeL, unstated } = sumpOfBuild({ totalVolumeL: 100 })
    expect([runningL, freeL, unstated]).toEqual([{ low: 40, high: 75 }, { low: 25, high: 60 }, ['water in the sump']])
    const bare = sumpOfBuild({})
    isNear(bare.totalL.low, 29.7327, 1e-5)
    isNear(bare.totalL.high, 148.6634, 1e-5)
    expect(bare.unstated).toEqual(['volume of the sump', 'water in the sump'])
    const { wallMm: _wall, ...open } = BOX
    const walls = sumpOfBuild(open)
    // Walls of 4 to 8 mm, which is what tanks of its size commonly have.
    isNear(walls.totalL.high, (592 * 372 * 396) / 1e6, 1e-9)
    isNear(walls.totalL.low, (584 * 364 * 392) / 1e6, 1e-9)
  })

  it('asks for its volume and its sides where one of them is not stated, whichever', () => {
    for (const side of ['lengthMm', 'widthMm', 'heightMm'] as const) {
      const { unstated, sidesUnstated, totalL } = sumpOfBuild({ ...BOX, [side]: undefined })
      expect([side, unstated, sidesUnstated]).toEqual([side, ['volume of the sump'], ['sides of the sump']])
      isNear(totalL.high, 148.6634, 1e-5)
    }
    expect(sumpOfBuild(BOX).sidesUnstated).toEqual([])
  })

  /** By hand, of walls of 6 mm: (length − 12)·(width − 12)·(height − 6) is what it holds, as a cube and as 2.5 : 1.25 : 1. */
  it.each([
    ['compact', 1, 1],
    ['flat', 2.5, 1.25],
  ] as const)('has the outer sides of a %s form where it holds 64 L', (form, length, width) => {
    const { lengthMm, widthMm, heightMm } = sumpSides(64, form, 6)
    isNear((lengthMm - 12) * (widthMm - 12) * (heightMm - 6), 64e6, 1e-12)
    isNear((lengthMm - 12) / (heightMm - 6), length, 1e-12)
    isNear((widthMm - 12) / (heightMm - 6), width, 1e-12)
  })

  it('of two whose volume nobody stated is as much together as one alone would hold', () => {
    const two = situation({ sump: { ...one('Osmere Sump', {}), quantity: 2 } }).sump
    isNear(two?.totalL.high ?? NaN, 148.6634, 1e-5)
    // Each runs with its half: 0.75 of 74.33 L in the flat one.
    isNear(two?.boxes[1]?.geometry.waterVolumeL ?? NaN, 0.75 * 74.3317, 2e-2)
  })

  /** EOS-80: sea water of 35 g/kg at 25 °C weighs 1.023343 kg a litre. */
  it('weighs what its water weighs', () => {
    const sea = situation({ sump: sump() }, { livestock: { ...group('small-tropical'), water: 'salt' } }).sump
    isNear(sea?.runningKg ?? NaN, 42.6275 * 1.023_343, 1e-5)
  })

  it('is wanted by a return pump beside another filter', () => {
    const canister = one('Pellick', { type: 'canister' as const, ratedFlowLph: 1000 })
    const pump = one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 3000 })
    expect(wantsSump(gear({ filters: [canister, pump] }))).toBe(true)
    expect(wantsSump(gear({ filters: [canister] }))).toBe(false)
  })

  it('is never less than nothing, however thick its walls or full its chambers', () => {
    for (const spec of [
      { ...BOX, wallMm: 40, widthMm: 80 },
      { totalVolumeL: 30, operatingVolumeL: 40 },
    ]) {
      const { freeL, runningL, totalL, runningKg, fullKg } = sumpOfBuild(spec)
      for (const value of [freeL.low, freeL.high, runningL.low, totalL.low, runningKg, fullKg]) {
        expect(Number.isFinite(value)).toBe(true)
        expect(value).toBeGreaterThanOrEqual(0)
      }
    }
  })

  it('refuses more running water than it holds, at the field to mend', () => {
    const { error } = SpecSchema.sump.safeParse({ totalVolumeL: 40, operatingVolumeL: 45 })
    expect(error?.issues.map(({ path, message }) => [path, message])).toEqual([
      [['operatingVolumeL'], 'Water while the pump runs is more than the volume to the rim: 45 and 40 L. Swap them, or correct one.'],
    ])
  })
})

describe('water in a sump counts', () => {
  const [plain, over] = [reportOf(), reportOf({ sump: sump() })]

  it('in the water that is dosed, changed and filtered, not in what a return stirs', () => {
    isNear((over.figures.waterVolumeL ?? NaN) - (plain.figures.waterVolumeL ?? NaN), 42.63, 1e-3)
    isNear((over.figures.turnoverPerHour ?? NaN) / (plain.figures.turnoverPerHour ?? NaN), 237.713 / 280.341, 5e-3)
    const reef = { livestock: group('soft-coral-reef') }
    const pumps: Partial<Gear> = { appliances: [{ ...one('Orrin', { ratedFlowLph: 3000 }), kind: 'circulation_pump' }] }
    expect(findingOf('circulation', { ...pumps, sump: sump() }, reef).value).toEqual(findingOf('circulation', pumps, reef).value)
  })

  /** By hand: 85.255 L of water of 997.05 kg/m³ and 5.945 L of glass of 2500 kg/m³ (EN 572-1). */
  it('in what the floor carries, filled to its rim', () => {
    isNear((over.figures.brimMassKg ?? NaN) - (plain.figures.brimMassKg ?? NaN), 85.003 + 14.862, 1e-3)
    const weighs = (gear: Partial<Gear>) =>
      /the tank( with its sump)? weighs (\d+) kg/.exec(sayPhrase(findingOf('floor_load', gear).reason, METRIC))
    const [alone, both] = [weighs({}), weighs({ sump: sump() })]
    expect([alone?.[1], both?.[1]]).toEqual([undefined, ' with its sump'])
    // Each told in whole kilograms.
    expect(Math.abs(Number(both?.[2]) - Number(alone?.[2]) - 99.865)).toBeLessThanOrEqual(1)
  })

  /**
   * By hand, of 197 mm of water: sides 1.96 m × 0.203 m at 7.3529 W/(m² K) (6 mm glass, ISO 6946), bottom 0.228 m² at 1/(0.17 + 0.006 + 0.018/0.13), open top
   * 0.216 384 m² at 10; vapour by the ASHRAE form at F 0.74 and 25 % humidity, pressures by psychrolib. Tolerance 2e-3.
   */
  it('in the heat that the coldest room takes, open in its cupboard', () => {
    psychrolib.SetUnitSystem(psychrolib.SI)
    const dryWPerK = 1.96 * 0.203 * 7.3529 + 0.228 / (0.17 + 0.006 + 0.018 / 0.13) + 0.216_384 * 10
    const vapourW = 0.089 * 0.74 * 0.216_384 * (psychrolib.GetSatVapPres(25) - 0.25 * psychrolib.GetSatVapPres(18))
    isNear((over.figures.coldLossW ?? NaN) - (plain.figures.coldLossW ?? NaN), dryWPerK * 7 + vapourW, 2e-3)
  })

  /**
   * By hand, a cube and a box 2.5 : 1.25 : 1 of 85 L: 0.1933 and 0.2829 m² of open water, three and a half quarters full. The stated one of 0.2164 m² lies between.
   */
  it('as a range where its sides are not stated, named, and its high end no less than the stated one’s', () => {
    const loss = (spec: SumpSpec) => findingOf('heater_holds', { sump: sump(spec) }, { coldestRoomC: 18 })
    const stated = loss(BOX)
    const open = loss({ totalVolumeL: 85.255, operatingVolumeL: 42.6275 })
    const [boxes, sides] = [sumpOfBuild({ totalVolumeL: 85, operatingVolumeL: 42 }).boxes, [...stated.missing, ...stated.assumed]]
    // The cube’s walls are as thick as is usual, so that it holds a little less.
    isNear(boxes[0]!.geometry.insidePlanMm2 / 1e6, 0.1933, 1e-1)
    isNear(boxes[1]!.geometry.insidePlanMm2 / 1e6, 0.2829, 1e-2)
    expect(open.limit?.kind === 'at_least' && open.limit.low.value).toBeGreaterThan(
      stated.limit?.kind === 'at_least' ? stated.limit.low.value : NaN,
    )
    expect(sides).not.toContain('sides of the sump')
    expect([...open.missing, ...open.assumed]).toContain('sides of the sump')
  })

  it('of several as often as there are', () => {
    const two = situation({ sump: { ...one('Osmere Sump', BOX), quantity: 2 } })
    const single = sumpOfBuild(BOX)
    isNear(two.sump!.totalL.low, 2 * 85.255_296, 1e-9)
    isNear(two.sump!.freeL.low, 2 * single.freeL.low, 1e-9)
    isNear(two.sump!.fullKg, 2 * single.fullKg, 1e-9)
    const lossOf = (count: number) => reportOf({ sump: { ...one('Osmere Sump', BOX), quantity: count } }).figures.coldLossW ?? NaN
    isNear(lossOf(2) - lossOf(1), lossOf(1) - (plain.figures.coldLossW ?? NaN), 1e-2)
  })

  it('in how slowly all of it warms and cools, and not in the loss of a heater stuck on', () => {
    expect(over.figures.stuckTemperatureC).toBe(plain.figures.stuckTemperatureC)
    expect(over.figures.stuckHours ?? Infinity).toBeGreaterThanOrEqual(plain.figures.stuckHours ?? Infinity)
  })

  it('in how far salinity drifts in a day', () => {
    const reef = { livestock: group('soft-coral-reef') }
    // The open sump evaporates too: one whose sides nobody stated as much as a flat one of its litres.
    const drift = (gearOf: Partial<Gear>) => findingOf('salinity_drift', gearOf, reef).value?.value ?? NaN
    const closed = drift({ sump: sump({ ...BOX, lengthMm: 380, heightMm: 640, operatingVolumeL: 43 }) })
    expect(drift({ sump: sump() })).toBeGreaterThan(closed)
    expect(drift({ sump: sump({ totalVolumeL: 85, operatingVolumeL: 43 }) })).toBeGreaterThan(drift({ sump: sump() }))
  })
})

describe('a return pump', () => {
  const pump = { type: 'return_pump', ratedFlowLph: 3000, maxHeadM: 3, midHeadM: 2, midFlowLph: 1500, hoseMm: 20, hoseLengthMm: 1500, fittings: 'usual', powerW: 22 } as const // prettier-ignore
  const flowOf = (changes: Partial<Gear> = {}) =>
    deliveryOf(situation({ filters: [one('Pellick Return', pump)], sump: sump(), ...changes }))!

  /**
   * Half of the sump's 400 mm is its level, so that the pump lifts 760 + 533.4 − 200 = 1093.4 mm to the rim. Against another solver, Newton's on Colebrook's
   * friction (test/reference/pipe-network.ts); tolerance 2 %, the difference between the two formulas of friction.
   */
  it('gives what its curve has left at the rise from the sump to the rim', () => {
    const curve = { maxHeadM: 3, maxFlowLph: 3000, bend: Math.log(1 - 2 / 3) / Math.log(0.5) }
    const system = { staticHeadM: 1.0934, boreMm: 20, lengthMm: 1500, fittings: 6, mediaLoss: 0, viscosityM2S: 8.93e-7 }
    const { flowLph } = operatingFlowByNewton(curve, system)
    const { clean, loaded, unstated, defaults } = flowOf()
    isNear(clean.low, flowLph, 2e-2)
    expect(loaded).toEqual(clean)
    expect([unstated, defaults]).toEqual([[], []])
  })

  it('gives less from a taller stand, and nothing where it cannot lift so high', () => {
    const on = (heightMm: number) => flowOf({ stand: one('Tall', { heightMm }) }).clean.low
    expect(on(1000)).toBeLessThan(on(760))
    expect(on(2700)).toBe(0)
  })

  it('names what its rise rests on where nobody stated it', () => {
    const { unstated, clean } = flowOf({ stand: one('Bench', {}), sump: sump({ totalVolumeL: 80 }) })
    expect(unstated).toEqual(['height of the stand', 'height of the sump', 'water in the sump'])
    expect(clean.low).toBeLessThan(clean.high)
    // Without a sump its level is as open, and it is named.
    const none = flowOf({ sump: undefined })
    expect(none.unstated).toEqual(['the sump'])
    expect(none.clean.low).toBeLessThan(none.clean.high)
    // A height that is stated leaves the share of it that runs; one that is not is a range, even where the litres are stated.
    const noHeight = flowOf({ sump: sump({ totalVolumeL: 80, operatingVolumeL: 40 }) })
    expect(noHeight.unstated).toEqual(['height of the sump'])
    expect(noHeight.clean.low).toBeLessThan(noHeight.clean.high)
  })

  it('lifts from where the running water stands in a sump of stated sides, never from above its rim', () => {
    // Sides and walls tell the litres as well as the maker does.
    isNear(flowOf({ sump: sump({ ...BOX, totalVolumeL: 85.255 }) }).clean.low, flowOf().clean.low, 1e-5)
    const full = flowOf({ sump: sump({ ...BOX, operatingVolumeL: 85.3 }) })
    expect(flowOf({ sump: sump({ ...BOX, operatingVolumeL: 500 }) }).clean).toEqual(full.clean)
    expect(full.clean.low).toBeGreaterThan(flowOf().clean.low)
  })

  /** Common practice: without a curve, the rise leaves 0.3 to 0.7 of what is printed. */
  it('without a curve gives the usual share, in words of its own', () => {
    const bare = { filters: [one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 3000 })], sump: sump() }
    expect(deliveryOf(situation(bare))).toMatchObject({ loaded: { low: 900 }, clean: { high: 2100 } })
    expect(sayPhrase(findingOf('filter_flow', bare).reason, METRIC)).toContain(
      'the rise to the tank leaves 900 L/h to 2,100 L/h: the water goes through 7.5 times an hour at best and 3.2 times an hour at worst;',
    )
  })

  it('says both ends once where best and worst come to the same', () => {
    const curve = { maxHeadM: 3, midHeadM: 2, midFlowLph: 1500, hoseMm: 20, hoseLengthMm: 1500, fittings: 'usual' as const }
    const filters = [one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 3000, ...curve })]
    const words = sayPhrase(findingOf('filter_flow', { filters, sump: sump() }).reason, METRIC)
    expect(words).toMatch(/the water goes through [^;]* at best and at worst alike;/)
  })

  /** By hand: 4 × (237.713 + 42.628) L ÷ 0.3 is 3738 L/h. A pump has no media to rinse. */
  it('is asked for by the share that its rise leaves, not by what media take', () => {
    const said = (ratedFlowLph: number) =>
      findingOf('filter_flow', { filters: [one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph })], sump: sump() })
    expect(said(1000)).toMatchObject({ verdict: 'does_not_fit', action: { want: { minimum: { ratedFlowLph: 3740 } } } })
    expect(said(3740).verdict).toBe('fits')
    const between = said(3000)
    expect(between.verdict).toBe('marginal')
    expect(between.action && sayPhrase(between.action.text, METRIC)).toBe(
      'Measure the flow at the return, or choose a filter printed at 3,740 L/h or more.',
    )
    const gentle = { livestock: group('labyrinth') }
    const ceiling = findingOf(
      'flow_ceiling',
      { filters: [one('Pellick Return', { type: 'return_pump' as const, ratedFlowLph: 9000 })] },
      gentle,
    )
    expect(sayPhrase(ceiling.reason, METRIC)).toContain('at best. Above')
    expect(sayPhrase(ceiling.reason, METRIC)).not.toContain('media')
  })

  it('hangs its cord inside the stand, as low as a canister, and needs its loop all the same', () => {
    const said = findingOf('cord_length', {
      filters: [one('Pellick Return', { ...pump, cordMm: 900 })],
      heaters: [],
      lights: [],
      sump: sump(),
    })
    // 400 mm of it climb out of the sump, and 100 over its rim.
    expect(said.value).toEqual({ value: 400, unit: 'mm', digits: 0 })
  })
})
