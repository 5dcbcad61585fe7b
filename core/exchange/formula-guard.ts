/**
 * Spreadsheets run a cell that begins with one of these signs as a formula, also behind white space or a quotation mark, and in the wide
 * forms of East Asian type. Source: OWASP, CSV Injection.
 */
const RUNS = /^['"\s]*[=+\-@\t\r\uFF1D\uFF0B\uFF0D\uFF20]/
/** The same inside a text, where a spreadsheet takes another sign than the comma for the end of a cell: behind one of these a cell begins. */
const INNER_RUNS = /^['"\s]*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]/
const CELL_ENDS = /([;\t\r\n])/
const GUARD = "'"

/** A change to every piece of a text but its first, then to the whole. */
function inPieces(text: string, piece: (inner: string) => string): string {
  if (!CELL_ENDS.test(text)) return text
  return text
    .split(CELL_ENDS)
    .map((part, index) => (index > 0 && index % 2 === 0 ? piece(part) : part))
    .join('')
}
const isGuarded = (cell: string): boolean => cell.startsWith(GUARD) && RUNS.test(cell.slice(GUARD.length))
const isGuardedPiece = (piece: string): boolean => piece.startsWith(GUARD) && INNER_RUNS.test(piece.slice(GUARD.length))

/**
 * Text as a cell that no spreadsheet runs: an apostrophe goes before whatever looks like a formula, at its beginning and behind each semicolon, tab and
 * line end in it, since some take those for the end of a cell. Only for text: a number is its own column and stays a number.
 *
 * @example guardText('=1+1') // "'=1+1"
 * @example guardText('x;=1+1') // "x;'=1+1"
 */
export function guardText(text: string): string {
  const inner = inPieces(text, (piece) => (INNER_RUNS.test(piece) ? GUARD + piece : piece))
  return RUNS.test(inner) ? GUARD + inner : inner
}

/**
 * Text as a cell for programs: as it is, but where it has an apostrophe before such a sign itself. There it gets one more, so that it is not taken for
 * a guarded one when it is read.
 *
 * @example rawText('=1+1') // '=1+1'
 * @example rawText("'=1+1") // "''=1+1"
 */
export function rawText(text: string): string {
  const inner = inPieces(text, (piece) => (isGuardedPiece(piece) ? GUARD + piece : piece))
  return isGuarded(inner) ? GUARD + inner : inner
}

/** The text behind a cell of either form. @example unguardText("'=1+1") // '=1+1' */
export function unguardText(cell: string): string {
  const whole = isGuarded(cell) ? cell.slice(GUARD.length) : cell
  return inPieces(whole, (piece) => (isGuardedPiece(piece) ? piece.slice(GUARD.length) : piece))
}
