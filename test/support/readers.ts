import fc from 'fast-check'
import type { ReaderUnits } from '../../core/units/quantity.ts'

/** Every way a person may have chosen to read: both systems, both gallons, both decimal signs, and anything that departs from its system. */
export const anyReader: fc.Arbitrary<ReaderUnits> = fc.record(
  {
    system: fc.constantFrom('metric', 'us'),
    gallon: fc.constantFrom('us', 'imperial'),
    decimal: fc.constantFrom('.', ','),
    length: fc.constantFrom('cm', 'in'),
    volume: fc.constantFrom('L', 'gal'),
    mass: fc.constantFrom('kg', 'lb'),
    temperature: fc.constantFrom('C', 'F'),
    hardness: fc.constantFrom('dKH', 'ppm'),
    salinity: fc.constantFrom('g/kg', 'sg'),
  },
  { requiredKeys: ['system', 'gallon', 'decimal'] },
) as fc.Arbitrary<ReaderUnits>

/** The four that most people are. */
export const READERS: ReadonlyArray<readonly [name: string, reader: ReaderUnits]> = [
  ['metric', { system: 'metric', gallon: 'us', decimal: '.' }],
  ['metric with a decimal comma', { system: 'metric', gallon: 'us', decimal: ',' }],
  ['US', { system: 'us', gallon: 'us', decimal: '.' }],
  ['US with imperial gallons and °C', { system: 'us', gallon: 'imperial', decimal: '.', temperature: 'C' }],
]
