import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS } from './heat-ends.ts'
import { heatCapacity } from './heat-capacity.ts'
import { heatLoss, type HeatLoss } from './heat-loss.ts'
import type { Situation } from './situation.ts'
import { exactly, sumOf, type Span } from './span.ts'
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
  /** What reaches the water from pump and lamp, both on. */
  applianceHeatW: Span
  cold: ThermalCase[]
  usual: ThermalCase[]
  warm: ThermalCase[]
  /** The warmest room at usual losses: every side free, air of middling humidity. */
  warmUsual: ThermalCase[]
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

export function filterPowerW(situation: Pick<Situation, 'gear'>): Span {
  return sumOf(
    situation.gear.filters.map(({ spec, quantity }) =>
      times(spec.powerW === undefined ? FILTER_POWER_W[spec.type ?? 'unknown'] : exactly(spec.powerW), quantity),
    ),
  )
}

export function lightPowerW(situation: Pick<Situation, 'gear'>, tankLengthMm: number): Span {
  const typical = times(LIGHT_W_PER_M, tankLengthMm / 1000)
  return sumOf(
    situation.gear.lights.map(({ spec, quantity }) => times(spec.powerW === undefined ? typical : exactly(spec.powerW), quantity)),
  )
}

export const heaterPowerW = (powerW: number | undefined, outsideVolumeL: number): Span =>
  powerW === undefined ? times(HEATER_W_PER_L, outsideVolumeL) : exactly(powerW)

export const times = (span: Span, factor: number): Span => ({ low: span.low * factor, high: span.high * factor })

/** Words for each kind of gear with an unstated power. */
export function unstatedPower(gear: Situation['gear'], kinds: ReadonlyArray<'filters' | 'heaters' | 'lights'>): string[] {
  const words = { filters: 'power of the filter', heaters: 'power of the heater', lights: 'power of the light' }
  return kinds.filter((kind) => gear[kind].some(({ spec }) => spec.powerW === undefined)).map((kind) => words[kind])
}

export function heatingOf(situation: Situation): Heating {
  const { gear, conditions, corners, covers } = situation
  const outsideL = corners[0]?.geometry.outsideVolumeL ?? 0
  const heaters = gear.heaters.flatMap(({ name, quantity, spec }) =>
    Array.from({ length: Math.min(quantity, MOST_COUNTED) }, () => ({
      name,
      powerW: heaterPowerW(spec.powerW, outsideL),
      externalController: spec.externalController === true,
    })),
  )
  const cases = (end: typeof HIGH_LOSS, roomC: number): ThermalCase[] =>
    corners.flatMap(({ shape, geometry, mass }) =>
      covers.map((cover) => ({ loss: heatLoss(shape, geometry, cover, end, roomC), capacityJPerK: heatCapacity(mass, shape.material) })),
    )
  return {
    heaters,
    installedW: sumOf(gear.heaters.map(({ spec, quantity }) => times(heaterPowerW(spec.powerW, outsideL), quantity))),
    applianceHeatW: sumOf([filterPowerW(situation), times(lightPowerW(situation, situation.tank.lengthMm), LAMP_SHARE)]),
    cold: cases(HIGH_LOSS, conditions.coldestRoomC),
    usual: cases(USUAL_LOSS, (conditions.coldestRoomC + conditions.warmestRoomC) / 2),
    warm: cases(LOW_LOSS, conditions.warmestRoomC),
    warmUsual: cases(USUAL_LOSS, conditions.warmestRoomC),
    powerUnstated: unstatedPower(gear, ['heaters']),
    applianceUnstated: unstatedPower(gear, ['filters', 'lights']),
  }
}
