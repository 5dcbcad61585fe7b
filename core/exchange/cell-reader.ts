import { short } from '../catalog/csv-cell.ts'
import { isCivilDate, type CivilDate } from '../dates.ts'
import { currencyExponent, parseMoney } from '../money.ts'
import { isPlainText, isVisible } from '../plain-text.ts'
import { headingInWords, type Cells, type ReportCell } from './column.ts'

const ID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/
const NAME_LENGTH = 120

/** Reads the cells of one row one by one; null for an empty one and for one that is not right, which `report` is told. */
export interface CellReader {
  text: (heading: string, most?: number) => string | null
  id: (heading: string) => string | null
  oneOf: <Value extends string>(heading: string, values: readonly Value[]) => Value | null
  /** In minor units, above 0. */
  amount: (heading: string, currency: string) => number | null
  day: (heading: string) => CivilDate | null
  fault: (heading: string, message: string) => null
  /** Reports every one of them that is empty. */
  need: (headings: readonly string[], what: string) => void
  /** False once something was reported. */
  isSound: () => boolean
}

export function cellReader(cells: Cells, report: ReportCell): CellReader {
  let sound = true
  const fault = (heading: string, message: string): null => {
    sound = false
    report(heading, message)
    return null
  }
  const text = (heading: string, most = NAME_LENGTH): string | null => {
    const cell = cells.get(heading) ?? null
    if (cell === null) return null
    if (!isPlainText(cell) || cell.includes('\ufffd'))
      return fault(heading, `${headingInWords(heading)} has a character that cannot be read. Save the file as UTF-8.`)
    if (!isVisible(cell)) return fault(heading, `${headingInWords(heading)} has no visible character. Fill it in, or leave the cell empty.`)
    return cell.length > most ? fault(heading, `${headingInWords(heading)} has ${cell.length} characters. At most ${most} fit.`) : cell
  }
  return {
    text,
    fault,
    id: (heading) => {
      const cell = text(heading)?.toLowerCase() ?? null
      return cell === null || ID.test(cell) ? cell : fault(heading, `"${short(cell)}" is not an id of ours. Leave it empty for a new one.`)
    },
    oneOf: (heading, values) => {
      const cell = text(heading)?.toLowerCase() ?? null
      const found = values.find((value) => value === cell) ?? null
      return cell === null || found !== null ? found : fault(heading, `"${short(cell)}" is not known. It is one of: ${values.join(', ')}.`)
    },
    amount: (heading, currency) => {
      const cell = text(heading)
      if (cell === null) return null
      const read = parseMoney(cell, currency)
      if (!read.ok) return fault(heading, read.refusal.words)
      return read.value < 1 ? fault(heading, `${headingInWords(heading)} is 0. A price is above it.`) : read.value
    },
    day: (heading) => {
      const cell = text(heading)
      return cell === null || isCivilDate(cell) ? cell : fault(heading, `"${short(cell)}" is not a day. Write it like 2026-10-20.`)
    },
    need: (headings, what) => {
      for (const heading of headings)
        if (!cells.has(heading)) fault(heading, `${headingInWords(heading)} is empty. Every ${what} needs it.`)
    },
    isSound: () => sound,
  }
}

/** An amount with the decimals of its currency and no sign. @example plainAmount(15900, 'USD') // '159.00' */
export function plainAmount(minor: number, currency: string): string {
  const exponent = currencyExponent(currency)
  if (exponent === 0) return String(minor)
  const digits = String(minor).padStart(exponent + 1, '0')
  return `${digits.slice(0, -exponent)}.${digits.slice(-exponent)}`
}
