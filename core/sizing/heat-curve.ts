import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS, type HeatEnd } from './heat-ends.ts'
import { inRoom, lossW } from './heat-loss.ts'
import type { Heating, ThermalCase } from './heating.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'

/** Heat that holds the target, against the temperature of the room: what a plot draws. */
export interface HeatCurve {
  /** By rising room temperature; W, never below nothing: a room that warms the water by itself asks for none. */
  points: Array<{ roomC: number; lowW: number; usualW: number; highW: number }>
  targetC: number
  /** The room that was stated: the checks look at its ends. */
  coldestRoomC: number
  warmestRoomC: number
  /** The weakest heater alone, and all of them; absent without a heater or without its power. */
  oneHeaterW?: number
  allHeatersW?: number
}

/** Told beyond the room's own ends, so that a colder night can be read off too, K. Own. */
const MARGIN_K = 4
/** Points of the curve: between two of them it bends by less than a line is thick. Own. */
const POINTS = 13

/**
 * A tank's loss over the rooms around the stated ones, at the high-loss end, as usual and at the low-loss end.
 *
 * Units:  °C and W, rounded to a tenth. Range: any room that the conditions accept.
 * Source: the heat balance; the ends in heat-ends.ts. The low end has a lid laid on, as the check of a heater stuck on has.
 *
 * @example heatCurve(situation, heating).points.at(0) // { roomC: 14, lowW: …, usualW: …, highW: … } for rooms of 18 to 24 °C
 */
export function heatCurve({ conditions }: Situation, heating: Heating): HeatCurve {
  const { coldestRoomC, warmestRoomC, livestock } = conditions
  const { targetC } = livestock
  const fromC = Math.min(coldestRoomC, warmestRoomC) - MARGIN_K
  const toC = Math.max(coldestRoomC, warmestRoomC) + MARGIN_K
  const curve: HeatCurve = { points: [], targetC, coldestRoomC, warmestRoomC }
  for (let i = 0; i < POINTS; i++) {
    const roomC = fromC + ((toC - fromC) * i) / (POINTS - 1)
    const at = (cases: readonly ThermalCase[], end: HeatEnd): Span =>
      over(cases, ({ loss }) => Math.max(0, lossW(inRoom(loss, end.humidity, roomC), targetC)))
    const usual = at(heating.usual, USUAL_LOSS)
    curve.points.push({
      roomC: tenth(roomC),
      lowW: tenth(at(heating.warm, LOW_LOSS).low),
      usualW: tenth((usual.low + usual.high) / 2),
      highW: tenth(at(heating.cold, HIGH_LOSS).high),
    })
  }
  if (heating.heaters.length === 0 || heating.powerUnstated.length > 0) return curve
  return {
    ...curve,
    oneHeaterW: tenth(Math.min(...heating.heaters.map(({ powerW }) => powerW.low))),
    allHeatersW: tenth(heating.installedW.low),
  }
}

const tenth = (value: number): number => Math.round(value * 10) / 10
