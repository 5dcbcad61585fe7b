/** A value as a file holds it: JSON has its types, CSV writes it out. Null is an empty cell. */
export type CellValue = string | number | boolean | null

/** One column of a file, or one field of its objects. */
export interface ExchangeColumn {
  /** Heading as written. Read without regard to case, spaces, "-" and "_". */
  heading: string
  /** Numbers and flags are no text: no spreadsheet takes them for a formula. An amount is text in JSON, "159.00", so that nothing rounds it. */
  type: 'text' | 'number' | 'flag' | 'amount'
  required: boolean
  /** What a cell holds, for the page that explains the file. */
  help: string
  /** Written by an export for whoever reads it; an import takes no notice of it. */
  told?: boolean
}

/** How headings are compared. @example headingKey(' Length_mm ') // 'lengthmm' */
export const headingKey = (heading: string): string => heading.toLowerCase().replace(/[\s_-]/g, '')

/** Headings that are no words. */
const ABBREVIATIONS: Record<string, string> = { gtin: 'GTIN', id: 'Id', sku: 'SKU' }

/** A heading as a sentence begins with it. @example headingInWords('warrantyMonths') // 'Warranty months' */
export function headingInWords(heading: string): string {
  const words = heading.replace(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)
  return ABBREVIATIONS[heading] ?? `${words.charAt(0).toUpperCase()}${words.slice(1)}`
}

/** Cells of one row by their headings; an empty one is not there. */
export type Cells = ReadonlyMap<string, string>

/** Takes note of a fault of the row at hand. */
export type ReportCell = (column: string | null, message: string) => void
