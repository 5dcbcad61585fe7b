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

/** The same told, for whoever tops up. */
export function evaporationWords(situation: Situation, heating: Heating): Phrase {
  const { litres, levelMm } = evaporationOf(situation, heating)
  const ends = ({ low, high }: Span, unit: 'L' | 'mm') => phrase`${quantity(low, unit, 1)} to ${quantity(high, unit, 1)}`
  return phrase` ${ends(litres, 'L')} evaporate in a day, by room and season: the level falls by ${ends(levelMm, 'mm')}.`
}
