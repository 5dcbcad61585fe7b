import { guardText, rawText } from './formula-guard.ts'
import type { CellValue, ExchangeColumn } from './column.ts'

/** How the text of a CSV export is written: so that no spreadsheet runs any of it, or as it is, for programs. */
export type TextForm = 'safe' | 'raw'

/** A number with all its digits and without an exponent, which the reader of a cell would not take. @example plainNumber(1e-7) // '0.0000001' */
export const plainNumber = (value: number): string => (/e/.test(String(value)) ? value.toFixed(20).replace(/\.?0+$/, '') : String(value))

/** A value as a cell of CSV, before its quotes. @example writeCell(column, '=1+1', 'safe') // "'=1+1" */
export function writeCell({ type }: Pick<ExchangeColumn, 'type'>, value: CellValue | undefined, form: TextForm): string {
  if (value === null || value === undefined) return ''
  if (typeof value === 'boolean') return value ? 'yes' : 'no'
  if (typeof value === 'number') return plainNumber(value)
  if (type !== 'text') return value
  return form === 'safe' ? guardText(value) : rawText(value)
}
