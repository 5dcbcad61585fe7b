import type { Limit } from '../sizing/finding.ts'
import type { ReaderUnits } from '../units/quantity.ts'
import { sayQuantity } from '../units/say.ts'

/** A limit in words. @example sayLimit({ kind: 'at_most', high: quantity(32, 'degC', 1) }, US) // 'at most 89.6 °F' */
export function sayLimit(limit: Limit, reader: ReaderUnits): string {
  switch (limit.kind) {
    case 'at_most':
      return `at most ${sayQuantity(limit.high, reader)}`
    case 'at_least':
      return `at least ${sayQuantity(limit.low, reader)}`
    case 'between':
      return `${withoutUnit(sayQuantity(limit.low, reader), sayQuantity(limit.high, reader))} to ${sayQuantity(limit.high, reader)}`
  }
}

/** Two figures in one unit say it once. */
function withoutUnit(low: string, high: string): string {
  const unit = /[^\d.,\u2212\u00a0]+$/.exec(high)?.[0] ?? ''
  return unit !== '' && low.endsWith(unit) ? low.slice(0, -unit.length) : low
}
