import { stringify } from 'csv-stringify/sync'

/**
 * Rows of CSV by RFC 4180. A cell with any line end, semicolon or tab stands in quotes: readers differ in what ends a row or a cell, and quotes hold for all
 * that read the standard.
 */
export const csvLines = (rows: readonly (readonly string[])[]): string =>
  stringify(rows as string[][], { record_delimiter: '\r\n', quoted_match: /[\r\n;\t]/ })
