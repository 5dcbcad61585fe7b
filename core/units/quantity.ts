/**
 * A figure with its unit, in the one unit of storage. Screens and paper say it in the reader's units (`sayQuantity`).
 *
 * `digits` are the decimals kept in the storage unit: values are rounded to them before any verdict or comparison.
 */
export type Unit =
  | 'mm'
  | 'm'
  | 'm2'
  | 'L'
  | 'mL'
  | 'kg'
  | 'g'
  | 'degC'
  | 'K'
  | 'W'
  | 'W/K'
  | 'V'
  | 'A'
  | 'L/h'
  | 'per_hour'
  | 'h'
  | 'min'
  | 'days'
  | 'mg/L'
  | 'umol/m2/s'
  | 'mol/m2/day'
  | 'lm'
  | 'kWh/year'
  | 'L/day'
  | 'share'
  | 'percent'
  | 'count'
  | 'dKH'
  | 'g/kg'
  | 'N'
  | 'kg/m2'

export interface Quantity {
  value: number
  unit: Unit
  digits: number
  /** A least length, for someone who measures: told rounded up. */
  least?: true | undefined
  /** For somebody who reckons with it: told with its declared digits in any unit, a thickness in hundredths of an inch and its millimetres beside. */
  fine?: true | undefined
}

/** Rounds to the declared digits. @example quantity(4.2649, 'per_hour', 2).value // 4.26 */
export function quantity(value: number, unit: Unit, digits: number): Quantity {
  const scale = 10 ** digits
  return { value: Math.round(value * scale) / scale, unit, digits }
}

/**
 * A figure as somebody stated it: told to its digits in the reader's unit, but not rounded in the unit of storage first, or the 62 °F that were
 * typed would come back as 63 °F.
 *
 * @example sayQuantity(stated(16.6667, 'degC', 0), US) // '62 °F'
 */
export const stated = (value: number, unit: Unit, digits: number): Quantity => ({ value, unit, digits })

/** A stated figure as a verdict compares it: rounded to its digits, like every computed one beside it. @example asJudged(stated(32.222, 'degC', 1)) // 32.2 */
export const asJudged = ({ value, unit, digits }: Quantity): number => quantity(value, unit, digits).value

/** A length to keep to at least, told rounded up wherever it stands. @example sayQuantity(leastLength(1373), US) // '54.5 in' */
export const leastLength = (mm: number): Quantity => ({ ...quantity(mm, 'mm', 0), least: true })

/** A figure that somebody reckons with. @example sayQuantity(fine(quantity(57.28, 'kg', 1)), US) // '126.3 lb' */
export const fine = (quantity: Quantity): Quantity => ({ ...quantity, fine: true })

/** A sentence whose figures are told in the reader's units. */
export type Phrase = ReadonlyArray<string | Quantity>

/** @example phrase`a full tank weighs ${quantity(336, 'kg', 0)}` */
export function phrase(parts: TemplateStringsArray, ...values: Array<string | number | Quantity | Phrase>): Phrase {
  const out: Array<string | Quantity> = []
  for (let index = 0; index < parts.length; index++) {
    const text = parts[index]
    if (text !== undefined && text !== '') out.push(text)
    const value = values[index]
    if (value === undefined) continue
    if (typeof value === 'number') out.push(String(value))
    else if (Array.isArray(value)) for (const part of value as Phrase) out.push(part)
    else out.push(value as string | Quantity)
  }
  return out
}

/**
 * How a reader wants figures told and what a bare figure is in. `gallon` is which gallon a typed "gal" means; the rest departs from the
 * system where someone says so, and is as the system has it where nobody does (`reader.ts`).
 */
export interface ReaderUnits {
  system: 'metric' | 'us'
  gallon: 'us' | 'imperial'
  decimal: '.' | ','
  length?: 'cm' | 'in' | undefined
  volume?: 'L' | 'gal' | undefined
  mass?: 'kg' | 'lb' | undefined
  temperature?: 'C' | 'F' | undefined
  /** Carbonate hardness: German degrees, or mg/L as calcium carbonate. */
  hardness?: 'dKH' | 'ppm' | undefined
  /** Salt in sea water: grams in a kilogram, or specific gravity at 25 °C. */
  salinity?: 'g/kg' | 'sg' | undefined
}
