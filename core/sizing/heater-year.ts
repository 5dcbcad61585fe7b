import { appliancesHeatW } from './appliances.ts'
import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS, type HeatEnd } from './heat-ends.ts'
import { lossByRoom, roomAt } from './heat-loss.ts'
import { filterPowerW, lampHeatW, type Heating, type ThermalCase } from './heating.ts'
import type { Situation } from './situation.ts'
import { over, sumOf, type Span } from './span.ts'

/** Rooms looked at between the coldest and the warmest day: the mean of a smooth year is exact, one cut off at nothing is within 0.3 %. */
const DAYS = 24
const HOURS_PER_DAY = 24

/** A heater's mean power over a year, W. */
export interface HeaterYear extends Span {
  usual: number
}

/**
 * Mean over a year in which the room swings as a cosine between its coldest and its warmest.
 *
 * Units:  °C in, whatever `at` gives out. Source: midpoint rule over half a year; the other half is its mirror.
 *
 * @example overYear(18, 26, (roomC) => 20 * (25 - roomC)) // 60: a straight line has the mean of its middle
 */
export const overYear = (coldestC: number, warmestC: number, at: (roomC: number) => number): number =>
  meanOf(roomsOfYear(coldestC, warmestC), at)

function roomsOfYear(coldestC: number, warmestC: number): number[] {
  const [middleC, swingK] = [(coldestC + warmestC) / 2, (warmestC - coldestC) / 2]
  return Array.from({ length: DAYS }, (_, i) => middleC - swingK * Math.cos((Math.PI * (i + 0.5)) / DAYS))
}

function meanOf<Item>(items: readonly Item[], at: (item: Item) => number): number {
  let sum = 0
  for (const item of items) sum += at(item)
  return sum / items.length
}

/**
 * What the heaters draw on average over a year: no more than they have, and nothing while the room keeps the water warm.
 *
 * Units:  W, unrounded. Range: low ≤ usual ≤ high.
 * Source: own, from the heat balance. High: the high-loss end, nothing from pump and lamp. Usual: usual losses, the same. Low: the low-loss end with the
 *         build's own cover, pump and lamp's warmth taken off, the lamp's for its hours.
 *
 * @example heaterYear(situation, heating).usual // 62.3 for a lidded 75 gallon tank of 25 °C in a room of 20 to 24 °C
 */
export function heaterYear(situation: Situation, heating: Heating): HeaterYear {
  const { coldestRoomC, warmestRoomC, livestock, lightHoursPerDay } = situation.conditions
  const rooms = roomsOfYear(coldestRoomC, warmestRoomC).map(roomAt)
  const mean = (end: HeatEnd, atMostW: number, freeW: number) => (each: ThermalCase) => {
    const lossW = lossByRoom(each.loss, end.humidity, livestock.targetC)
    return meanOf(rooms, (room) => Math.min(atMostW, Math.max(0, lossW(room) - freeW)))
  }
  const { installedW } = heating
  const lamp = lampHeatW(situation)
  const free = sumOf([filterPowerW(situation), appliancesHeatW(situation.gear)])
  const freeW = free.high + (lamp.high * lightHoursPerDay) / HOURS_PER_DAY
  const usual = over(heating.usual, mean(USUAL_LOSS, (installedW.low + installedW.high) / 2, 0))
  return {
    low: over(heating.warmAsBuilt, mean(LOW_LOSS, installedW.low, freeW)).low,
    usual: (usual.low + usual.high) / 2,
    high: over(heating.cold, mean(HIGH_LOSS, installedW.high, 0)).high,
  }
}
