import { scaleLinear } from 'd3-scale'
import type { ReaderUnits, Unit } from '../../core/units/quantity.ts'
import { displayUnit, sayNumber } from '../../core/units/say.ts'
import { shownValue } from '../../core/units/shown-value.ts'
import { textWidth } from './frame.ts'

export interface Axis {
  /** The reader's unit: "°F". */
  unit: string
  ticks: Array<{ at: number; text: string }>
  /** Where a stored figure lies, px; beyond the ends too. */
  place: (stored: number) => number
}

interface AxisOf {
  unit: Unit
  low: number
  high: number
  from: number
  to: number
  reader: ReaderUnits
  /** About how many figures stand along it. */
  count: number
  /** Ends at round figures. */
  nice?: boolean
}

/** A scale in the reader's unit with round figures along it. @example axisOf({ unit: 'degC', low: 14, high: 30, from: 40, to: 340, reader: US, count: 4 }).unit // '°F' */
export function axisOf({ unit, low, high, from, to, reader, count, nice }: AxisOf): Axis {
  const scale = scaleLinear()
    .domain([shownValue(low, unit, reader), shownValue(high, unit, reader)])
    .range([from, to])
  if (nice) scale.nice(count)
  const values = scale.ticks(count)
  const digits = Math.max(0, ...values.map((value) => (String(Number(value.toFixed(3))).split('.')[1] ?? '').length))
  return {
    unit: displayUnit(unit, reader),
    ticks: values.map((value) => ({ at: scale(value), text: sayNumber(value, digits, reader) })),
    place: (stored) => scale(shownValue(stored, unit, reader)),
  }
}

/** How wide the figures beside an upright axis are. */
export const ticksWidth = (axis: Axis): number => Math.max(12, ...axis.ticks.map(({ text }) => textWidth(text, 12)))
