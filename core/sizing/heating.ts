import { appliancesHeatW, unstatedAppliances } from './appliances.ts'
import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS, isLoose, withLidOn, type HeatEnd } from './heat-ends.ts'
import type { Gear } from './gear.ts'
import { heatCapacity, waterCapacity } from './heat-capacity.ts'
import { heatLoss, type HeatLoss } from './heat-loss.ts'
import type { Cover } from './heat-transmission.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span, sumOf, times } from './span.ts'
import { FILTER_POWER_W, HEATER_W_PER_L, LIGHT_W_PER_M } from './typical-ranges.ts'

/** One heater of a build, taken out of its count. */
export interface OneHeater {
  name: string
  powerW: Span
  externalController: boolean
}

/** A loss together with the heat that the same tank stores. */
export interface ThermalCase {
  loss: HeatLoss
  capacityJPerK: number
}

/** All that the heater checks and the running cost ask for, reckoned once. */
export interface Heating {
  heaters: OneHeater[]
  /** Heaters together, W. */
  installedW: Span
  /** What reaches the water from pumps and lamps, all on. */
  applianceHeatW: Span
  cold: ThermalCase[]
  usual: ThermalCase[]
  /** The warmest room at the low-loss end, a lid on whether or not the build has one. */
  warm: ThermalCase[]
  /** The same with the build's own cover: what evaporates. */
  warmAsBuilt: ThermalCase[]
  /** The lid of `warm` is none of the build's. */
  lidLaidOn: boolean
  /** The warmest room at usual losses: every side free, air of middling humidity. */
  warmUsual: ThermalCase[]
  /** The same with nothing on top: what a fan can blow across. */
  warmOpen: ThermalCase[]
  powerUnstated: string[]
  applianceUnstated: string[]
}

/**
 * Share of a lamp's power that warms the water: about 0.4 leaves a light-emitting diode as light and is swallowed, a tenth more comes down as warmth, the
 * rest rises into the room. Own. All of a pump's power is counted.
 */
const LAMP_SHARE = 0.5
/** Heaters past this count are taken as one more of the same: a tank never needs them, and a typed count must not cost time. */
const MOST_COUNTED = 20

/**
 * Power of all filters, W; the typical range of its kind for one that states none.
 *
 * @example filterPowerW({ gear }) // { low: 20, high: 20 } for one canister stated at 20 W
 */
export function filterPowerW(situation: Pick<Situation, 'gear'>): Span {
  return sumOf(
    situation.gear.filters.map(({ spec, quantity }) =>
      times(spec.powerW === undefined ? FILTER_POWER_W[spec.type ?? 'unknown'] : exactly(spec.powerW), quantity),
    ),
  )
}

/**
 * Power of all lights, W; the typical range by the tank's length in mm for one that states none.
 *
 * @example lightPowerW({ gear }, 1000) // { low: 10, high: 80 } for one light that states nothing
 */
export function lightPowerW({ gear }: { gear: Pick<Gear, 'lights'> }, tankLengthMm: number): Span {
  const typical = times(LIGHT_W_PER_M, tankLengthMm / 1000)
  return sumOf(gear.lights.map(({ spec, quantity }) => times(spec.powerW === undefined ? typical : exactly(spec.powerW), quantity)))
}

/** What of the lamps' power warms the water, all on, W. */
export const lampHeatW = (situation: Situation): Span => times(lightPowerW(situation, situation.tank.lengthMm), LAMP_SHARE)

/**
 * Power of one heater, W; what is commonly sold for the tank's outside volume in litres where none is stated.
 *
 * @example heaterPowerW(undefined, 100) // { low: 50, high: 200 }
 */
export const heaterPowerW = (powerW: number | undefined, outsideVolumeL: number): Span =>
  powerW === undefined ? times(HEATER_W_PER_L, outsideVolumeL) : exactly(powerW)

/** Words for each kind of gear with an unstated power. */
export function unstatedPower(gear: Situation['gear'], kinds: ReadonlyArray<'filters' | 'heaters' | 'lights'>): string[] {
  const words = { filters: 'power of the filter', heaters: 'power of the heater', lights: 'power of the light' }
  return kinds.filter((kind) => gear[kind].some(({ spec }) => spec.powerW === undefined)).map((kind) => words[kind])
}

/** A sump loses heat beside its tank, open as it is. At the low-loss end it counts for none: a closed cupboard keeps it as warm as the tank. */
function withSump(loss: HeatLoss, sump: Situation['sump'], end: HeatEnd): HeatLoss[] {
  if (!sump || sump.boxes.length === 0 || end.insulated) return [loss]
  return sump.boxes.map(({ shape, geometry }) => {
    const { dryWPerK, vapourWPerPa } = heatLoss(shape, geometry, 'open', end, loss.roomC)
    return { ...loss, dryWPerK: loss.dryWPerK + sump.count * dryWPerK, vapourWPerPa: loss.vapourWPerPa + sump.count * vapourWPerPa }
  })
}

/** Every loss of tank and sump that the stated figures allow, with the tank and the cover it is of. Sides, bottom and top are the tank's, the rest is of both. */
export const lossesOf = ({ corners, sump }: Situation, covers: readonly Cover[], end: HeatEnd, roomC: number) =>
  corners.flatMap((corner) =>
    covers.flatMap((cover) =>
      withSump(heatLoss(corner.shape, corner.geometry, cover, end, roomC), sump, end).map((loss) => ({ corner, cover, loss })),
    ),
  )

/**
 * Heaters, the heat of pump and lamp, and the tank's losses in every room that a check asks about, for every tank and lid that the stated figures allow.
 *
 * Units:  W, and the losses of `heatLoss`. Source: the ends in heat-ends.ts.
 *
 * @example heatingOf(situation).installedW // { low: 200, high: 200 } for two heaters stated at 100 W
 */
export function heatingOf(situation: Situation): Heating {
  const { gear, conditions, corners, covers, sump } = situation
  const outsideL = corners[0]?.geometry.outsideVolumeL ?? 0
  const heaters = gear.heaters.flatMap(({ name, quantity, spec }) =>
    Array.from({ length: Math.min(quantity, MOST_COUNTED) }, () => ({
      name,
      powerW: heaterPowerW(spec.powerW, outsideL),
      externalController: spec.externalController === true,
    })),
  )
  const cases = (end: HeatEnd, roomC: number, tops: readonly Cover[] = covers): ThermalCase[] =>
    lossesOf(situation, tops, end, roomC).map(({ corner: { mass, shape }, loss }) => ({
      loss,
      capacityJPerK: heatCapacity(mass, shape.material) + waterCapacity(sump?.runningKg ?? 0),
    }))
  return {
    heaters,
    installedW: sumOf(gear.heaters.map(({ spec, quantity }) => times(heaterPowerW(spec.powerW, outsideL), quantity))),
    applianceHeatW: sumOf([filterPowerW(situation), lampHeatW(situation), appliancesHeatW(gear)]),
    cold: cases(HIGH_LOSS, conditions.coldestRoomC),
    usual: cases(USUAL_LOSS, (conditions.coldestRoomC + conditions.warmestRoomC) / 2),
    warm: cases(LOW_LOSS, conditions.warmestRoomC, covers.map(withLidOn)),
    warmAsBuilt: cases(LOW_LOSS, conditions.warmestRoomC),
    lidLaidOn: covers.every(isLoose),
    warmUsual: cases(USUAL_LOSS, conditions.warmestRoomC),
    warmOpen: cases(USUAL_LOSS, conditions.warmestRoomC, ['open']),
    powerUnstated: unstatedPower(gear, ['heaters']),
    applianceUnstated: [...unstatedPower(gear, ['filters', 'lights']), ...unstatedAppliances(gear, { warming: true })],
  }
}
