import { celsiusToFahrenheit, L_PER_IMPERIAL_GALLON, L_PER_US_GALLON, MM_PER_INCH } from './factors.ts'
import type { ReaderUnits, Unit } from './quantity.ts'
import { measuredIn } from './reader.ts'

const MM_PER_CM = 10
const M_PER_FOOT = 0.3048

/**
 * A stored figure as a bare number in the unit of `displayUnit`, for an axis: unrounded, and in one unit however small or large it is.
 *
 * Range: any finite number. Units that no reader changes come out as they went in.
 *
 * @example shownValue(25, 'degC', US) // 77
 * @example shownValue(50, 'mm', METRIC) // 5, in cm
 */
export function shownValue(value: number, unit: Unit, reader: ReaderUnits): number {
  const { length, volume, temperature } = measuredIn(reader)
  switch (unit) {
    case 'mm':
      return value / (length === 'in' ? MM_PER_INCH : MM_PER_CM)
    case 'm':
      return length === 'in' ? value / M_PER_FOOT : value
    case 'degC':
      return temperature === 'F' ? celsiusToFahrenheit(value) : value
    case 'L/h':
      return volume === 'gal' ? value / (reader.gallon === 'imperial' ? L_PER_IMPERIAL_GALLON : L_PER_US_GALLON) : value
    default:
      return value
  }
}
