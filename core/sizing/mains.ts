import type { Conditions } from './conditions.ts'
import type { CautionName } from './finding-cautions.ts'

/** Mains are of 100 to 127 V or of 220 to 240 V, by country (IEC 60038, from memory): nothing lies between. */
const BETWEEN_V = 180

/** Whether the circuit is one of a country of about 120 V, where the rules of the NEC and its kin are read. @example isLowVoltageCountry({ circuitVoltageV: 230 }) // false */
export const isLowVoltageCountry = ({ circuitVoltageV }: Pick<Conditions, 'circuitVoltageV'>): boolean => circuitVoltageV < BETWEEN_V

/** The usual caution in the words of the country. @example mainsCaution({ circuitVoltageV: 230 }) // 'mains_230' */
export const mainsCaution = (conditions: Pick<Conditions, 'circuitVoltageV'>): CautionName =>
  isLowVoltageCountry(conditions) ? 'mains' : 'mains_230'
