/**
 * Spreadsheets run a cell that begins with one of these signs as a formula, also behind white space or a quotation mark, and in the wide
 * forms of East Asian type. Source: OWASP, CSV Injection.
 */
const RUNS = /^['"\s]*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/
const GUARD = "'"

/**
 * Text as a cell that no spreadsheet runs: an apostrophe goes before whatever looks like a formula. Only for text: a number is its own column
 * and stays a number.
 *
 * @example guardText('=1+1') // "'=1+1"
 */
export const guardText = (text: string): string => (RUNS.test(text) ? GUARD + text : text)

/**
 * Text as a cell for programs: as it is, but for a text that itself begins with an apostrophe before such a sign. It gets one more, so that it is
 * not taken for a guarded one when it is read.
 *
 * @example rawText('=1+1') // '=1+1'
 * @example rawText("'=1+1") // "''=1+1"
 */
export const rawText = (text: string): string => (isGuarded(text) ? GUARD + text : text)

/** The text behind a cell of either form. @example unguardText("'=1+1") // '=1+1' */
export const unguardText = (cell: string): string => (isGuarded(cell) ? cell.slice(GUARD.length) : cell)

const isGuarded = (cell: string): boolean => cell.startsWith(GUARD) && RUNS.test(cell.slice(GUARD.length))
