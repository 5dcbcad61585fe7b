import type { ReaderUnits } from './quantity.ts'

/** What a reader measures each thing in, the system's own where nothing else was chosen. */
export type MeasuredIn = Required<{
  [Key in 'length' | 'volume' | 'mass' | 'temperature' | 'hardness' | 'salinity']: NonNullable<ReaderUnits[Key]>
}>

/** Hardness is counted in drops of a kit that are degrees everywhere; salinity is floated in a hydrometer by most in the United States. Common practice. */
const OF_SYSTEM: Record<ReaderUnits['system'], MeasuredIn> = {
  metric: { length: 'cm', volume: 'L', mass: 'kg', temperature: 'C', hardness: 'dKH', salinity: 'g/kg' },
  us: { length: 'in', volume: 'gal', mass: 'lb', temperature: 'F', hardness: 'dKH', salinity: 'sg' },
}

/**
 * The unit of each thing for a reader.
 *
 * @example measuredIn({ ...US, temperature: 'C' }).temperature // 'C', with inches and gallons still
 */
export function measuredIn(reader: ReaderUnits): MeasuredIn {
  const own = OF_SYSTEM[reader.system]
  return {
    length: reader.length ?? own.length,
    volume: reader.volume ?? own.volume,
    mass: reader.mass ?? own.mass,
    temperature: reader.temperature ?? own.temperature,
    hardness: reader.hardness ?? own.hardness,
    salinity: reader.salinity ?? own.salinity,
  }
}

/**
 * The same reader with a whole system: gallon and decimal sign stay, what departed from the old system goes.
 *
 * @example inSystem({ ...US, temperature: 'C' }, 'metric') // { system: 'metric', gallon: 'us', decimal: '.' }
 */
export const inSystem = ({ gallon, decimal }: ReaderUnits, system: ReaderUnits['system']): ReaderUnits => ({ system, gallon, decimal })
