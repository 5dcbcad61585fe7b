import { appliancePowerW, appliancesHeatW, appliancesOf } from './appliances.ts'
import { HIGH_LOSS, LOW_LOSS, USUAL_LOSS, type HeatEnd } from './heat-ends.ts'
import { lossByRoom, roomAt } from './heat-loss.ts'
import { filterPowerW, lampHeatW, type Heating, type ThermalCase } from './heating.ts'
import type { Situation } from './situation.ts'
import { over, sumOf, type Span } from './span.ts'

/** Rooms looked at between the coldest and the warmest day: the mean of a smooth year is exact, one cut off at nothing is within 0.3 %. */
const DAYS = 24
const HOURS_PER_DAY = 24

/** A heater's or a chiller's mean power over a year, W. */
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
  const { coldestRoomC, warmestRoomC, livestock } = situation.conditions
  const rooms = roomsOfYear(coldestRoomC, warmestRoomC).map(roomAt)
  const mean = (end: HeatEnd, atMostW: number, freeW: number) => (each: ThermalCase) => {
    const lossW = lossByRoom(each.loss, end.humidity, livestock.targetC)
    return meanOf(rooms, (room) => Math.min(atMostW, Math.max(0, lossW(room) - freeW)))
  }
  const { installedW } = heating
  const freeW = freeHeatW(situation).high
  const usual = over(heating.usual, mean(USUAL_LOSS, (installedW.low + installedW.high) / 2, 0))
  return {
    low: over(heating.warmAsBuilt, mean(LOW_LOSS, installedW.low, freeW)).low,
    usual: (usual.low + usual.high) / 2,
    high: over(heating.cold, mean(HIGH_LOSS, installedW.high, 0)).high,
  }
}

/** What pumps put into the water on average, and the lamp over its hours, W. */
function freeHeatW(situation: Situation): Span {
  const lamp = lampHeatW(situation)
  const share = situation.conditions.lightHoursPerDay / HOURS_PER_DAY
  return sumOf([filterPowerW(situation), appliancesHeatW(situation.gear), { low: lamp.low * share, high: lamp.high * share }])
}

/**
 * What the chillers draw on average over the same year: their power for the share of the time in which they take out what pumps and lamp put in beyond what is
 * lost at the highest temperature that the animals are comfortable at. Null without one, or where its cooling power is not stated.
 *
 * Units:  W, unrounded. Range: low ≤ usual ≤ high; no more than they draw.
 * Source: own, from the heat balance at both ends of the losses, with the build's own cover.
 *
 * @example chillerYear(situation, heating)?.usual // 0 in a cool room
 */
export function chillerYear(situation: Situation, heating: Heating): HeaterYear | null {
  const chillers = appliancesOf(situation.gear).filter(({ kind }) => kind === 'chiller')
  const coolingW = chillers.reduce((sum, { spec, quantity }) => sum + (spec.coolingW ?? NaN) * quantity, 0)
  if (!(coolingW > 0)) return null
  const { coldestRoomC, warmestRoomC, livestock } = situation.conditions
  const rooms = roomsOfYear(coldestRoomC, warmestRoomC).map(roomAt)
  const [power, free] = [sumOf(chillers.map(appliancePowerW)), freeHeatW(situation)]
  const duty = (end: HeatEnd, freeW: number) => (each: ThermalCase) => {
    const lossW = lossByRoom(each.loss, end.humidity, livestock.highestC)
    return meanOf(rooms, (room) => Math.min(1, Math.max(0, freeW - lossW(room)) / coolingW))
  }
  // A room warmer than the water gives it heat by the very ways by which a cooler one takes it: either end of the losses may be the one that costs more.
  const ends = [free.low, free.high].flatMap((freeW) => [
    over(heating.cold, duty(HIGH_LOSS, freeW)),
    over(heating.warmAsBuilt, duty(LOW_LOSS, freeW)),
  ])
  const usual = over(heating.usual, duty(USUAL_LOSS, (free.low + free.high) / 2))
  const middle = (usual.low + usual.high) / 2
  return {
    low: power.low * Math.min(middle, ...ends.map(({ low }) => low)),
    usual: ((power.low + power.high) / 2) * middle,
    high: power.high * Math.max(middle, ...ends.map(({ high }) => high)),
  }
}
