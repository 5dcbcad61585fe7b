import { LEAST_SAVING_MINOR } from '../../../core/install.ts'
import { parseMoney } from '../../../core/money.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { spellMoney, type FigureReading } from '../parts/figure.ts'

/** Shown of what was typed. */
const SHOWN = 30

/**
 * Reads the smallest saving worth waiting for; an empty field is no saving yet.
 *
 * Units: minor units. Errors: words that speak of a saving, where the text is below 0 or no amount.
 *
 * @example readSaving('-3', 'USD', '.').fault // 'A saving of "-3" cannot be waited for. Write 0 or more, like 5.00; 0 tells of any saving.'
 */
export function readSaving(text: string, currency: string, decimal: ReaderUnits['decimal']): FigureReading {
  const typed = text.trim()
  if (typed === '') return { value: null, fault: null }
  const read = parseMoney(typed, currency, decimal)
  if (read.ok) return { value: read.value, fault: null }
  if (read.refusal.code !== 'not_a_price') return { value: null, fault: read.refusal.words }
  const like = spellMoney(LEAST_SAVING_MINOR, currency, decimal)
  return {
    value: null,
    fault: `A saving of "${typed.slice(0, SHOWN)}" cannot be waited for. Write 0 or more, like ${like}; 0 tells of any saving.`,
  }
}
