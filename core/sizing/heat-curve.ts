import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS, type HeatEnd } from './heat-ends.ts'
import { lossByRoom, roomAt, type Room } from './heat-loss.ts'
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
 * Source: the heat balance; the ends in heat-ends.ts. The low end has a lid laid on, as the check of a heater stuck on has. In a room warmer than the water
 *         insulation keeps heat out instead of in, and the ends may change places: what is told is the band that they span.
 *
 * @example heatCurve(situation, heating).points.at(0) // { roomC: 14, lowW: …, usualW: …, highW: … } for rooms of 18 to 24 °C
 */
export function heatCurve({ conditions }: Situation, heating: Heating): HeatCurve {
  const { coldestRoomC, warmestRoomC, livestock } = conditions
  const { targetC } = livestock
  const fromC = Math.min(coldestRoomC, warmestRoomC) - MARGIN_K
  const toC = Math.max(coldestRoomC, warmestRoomC) + MARGIN_K
  const curve: HeatCurve = { points: [], targetC, coldestRoomC, warmestRoomC }
  const byRoom = (cases: readonly ThermalCase[], end: HeatEnd): ((room: Room) => Span) => {
    const losses = cases.map(({ loss }) => lossByRoom(loss, end.humidity, targetC))
    return (room) => over(losses, (lossW) => Math.max(0, lossW(room)))
  }
  const [low, usual, high] = [byRoom(heating.warm, LOW_LOSS), byRoom(heating.usual, USUAL_LOSS), byRoom(heating.cold, HIGH_LOSS)]
  for (let i = 0; i < POINTS; i++) {
    const room = roomAt(fromC + ((toC - fromC) * i) / (POINTS - 1))
    const between = usual(room)
    const usualW = (between.low + between.high) / 2
    const ends = [low(room).low, usualW, high(room).high]
    curve.points.push({
      roomC: tenth(room.roomC),
      lowW: tenth(Math.min(...ends)),
      usualW: tenth(usualW),
      highW: tenth(Math.max(...ends)),
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
