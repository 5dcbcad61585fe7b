import type { Gear } from '../sizing/gear.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'

/** Ammonia and nitrite at or below this a day after a dose, two days running, is ready. Common practice; a coarser kit does not loosen it. */
export const READY_MG_PER_L = 0.25

/** Ammonia that active soil gives off is waited out until it reads under this, mg/L. Common practice: dosing on top stalls the cycle. */
export const SOIL_UNDER_MG_PER_L = 1

/** What the kits of a plan can tell about ammonia. */
export interface AmmoniaKit {
  /** False where kits are there and all of them are stated not to measure it; a kit that states nothing may. */
  measures: boolean
  /** Lowest mark above zero of the finest kit, mg/L; null where none states it. */
  lowestMgL: number | null
  /** The finest kit cannot tell 0.25 mg/L: it reads zero or too much. */
  coarse: boolean
}

/**
 * The finest of the kits that measure ammonia.
 *
 * Units:  mg/L as printed on the kit.
 * Errors: none; a mark that no kit states is null, and then the kit is taken for a usual one.
 *
 * @example ammoniaKit({ ...gear, testKits: [one('Lockridge', { measuresAmmonia: true, lowestAmmoniaMgL: 1 })] }).coarse // true
 */
export function ammoniaKit({ testKits }: Gear): AmmoniaKit {
  const measuring = testKits.filter(({ spec }) => spec.measuresAmmonia !== false)
  const marks = measuring.flatMap(({ spec }) => (spec.lowestAmmoniaMgL === undefined ? [] : [spec.lowestAmmoniaMgL]))
  const lowestMgL = marks.length === 0 ? null : Math.min(...marks)
  return { measures: measuring.length > 0, lowestMgL, coarse: lowestMgL !== null && lowestMgL > READY_MG_PER_L }
}

/** The reading of ammonia that counts as eaten, for the kit at hand. @example sayPhrase(eatenAmmonia(gear), METRIC) // '0.25 mg/L or less' */
export const eatenAmmonia = (gear: Gear): Phrase =>
  ammoniaKit(gear).coarse ? phrase`zero` : phrase`${quantity(READY_MG_PER_L, 'mg/L', 2)} or less`
