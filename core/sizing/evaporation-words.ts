import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { evaporationLPerDay } from './heat-loss.ts'
import type { Heating } from './heating.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'

const MM2_PER_M2 = 1e6

/**
 * Water that leaves as vapour in a day, at the target: from the warmest room at the low-loss end to the coldest at the high-loss end.
 *
 * Units:  litres a day, and millimetres that the level falls in a day. Source: ASHRAE form, by `heatLoss`.
 *
 * @example evaporationOf(situation, heating).litres // { low: 0.1, high: 0.7 } under a lid
 */
export function evaporationOf({ conditions, corners }: Situation, heating: Heating): { litres: Span; levelMm: Span } {
  const { targetC } = conditions.livestock
  const litres = {
    low: over(heating.warmAsBuilt, ({ loss }) => evaporationLPerDay(loss, targetC)).low,
    high: over(heating.cold, ({ loss }) => evaporationLPerDay(loss, targetC)).high,
  }
  // A litre over a square metre is a millimetre.
  const topM2 = over(corners, ({ geometry }) => geometry.insidePlanMm2 / MM2_PER_M2)
  return { litres, levelMm: { low: litres.low / topM2.high, high: litres.high / topM2.low } }
}

/** Below this a reader of inches would be told of none. */
const SEEN_MM = 1.3
/** A bottle's measure up to here; a tenth of a litre, or of a gallon, would be most of it or nothing. */
const BOTTLES_L = 4

/** The same told, for whoever tops up. */
export function evaporationWords(situation: Situation, heating: Heating): Phrase {
  const { litres, levelMm } = evaporationOf(situation, heating)
  const told = (volumeL: number) =>
    litres.high < BOTTLES_L ? quantity(Math.round(volumeL * 100) * 10, 'mL', 0) : quantity(volumeL, 'L', 1)
  const [low, high] = [told(litres.low), told(litres.high)]
  const water = low.value === 0 ? phrase`Up to ${high}` : phrase`${low} to ${high}`
  const level = levelMm.high < SEEN_MM ? phrase`hardly falls` : phrase`falls by up to ${quantity(levelMm.high, 'mm', 1)}`
  return phrase` ${water} evaporate in a day, by room and season: the level ${level}.`
}
