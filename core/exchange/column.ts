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

/** Cells of one row by their headings; an empty one is not there. */
export type Cells = ReadonlyMap<string, string>

/** Takes note of a fault of the row at hand. */
export type ReportCell = (column: string | null, message: string) => void
