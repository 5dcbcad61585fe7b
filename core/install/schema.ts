import * as z from 'zod'
import { country, currencyCode, timeZone } from '../catalog/schema.ts'
import type { Install } from '../install.ts'
import { minor, oneOf, strict, text } from '../schema.ts'
import type { ReaderUnits } from '../units/quantity.ts'

/** A figure of the install within limits that refuse the absurd, in words. */
const within = (label: string, unit: string, least: number, most: number) => {
  const words = `${label} is between ${least} and ${most} ${unit}.`
  return z.number({ error: words }).min(least, { error: words }).max(most, { error: words })
}

export const ReaderUnitsSchema = strict('Units', {
  system: oneOf('System of units', ['metric', 'us']),
  gallon: oneOf('Gallon', ['us', 'imperial']),
  decimal: oneOf('Decimal sign', ['.', ',']),
  length: oneOf('Unit of length', ['cm', 'in']).optional(),
  volume: oneOf('Unit of volume', ['L', 'gal']).optional(),
  mass: oneOf('Unit of mass', ['kg', 'lb']).optional(),
  temperature: oneOf('Unit of temperature', ['C', 'F']).optional(),
  hardness: oneOf('Unit of hardness', ['dKH', 'ppm']).optional(),
  salinity: oneOf('Unit of salinity', ['g/kg', 'sg']).optional(),
}) satisfies z.ZodType<ReaderUnits>

export const InstallInput = strict('Install', {
  name: text('Name', 1, 80),
  mode: oneOf('Mode', ['club', 'store']),
  currency: currencyCode,
  country,
  timeZone,
  units: ReaderUnitsSchema,
  contact: text('Contact', 0, 200),
  paper: oneOf('Paper', ['a4', 'letter']),
  energyPriceMinor: within('Price of a kilowatt hour', 'minor units', 0, 1_000_000),
  circuitVoltageV: within('Circuit voltage', 'V', 90, 260),
  circuitCurrentA: within('Circuit current', 'A', 1, 63),
  /** Left out, what is kept stays. */
  leastSavingMinor: minor('Smallest saving worth waiting for', 0).optional(),
}) satisfies z.ZodType<Install>
export type InstallInput = z.output<typeof InstallInput>
