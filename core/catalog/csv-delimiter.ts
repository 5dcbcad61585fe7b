/** Separators that spreadsheets write. */
const DELIMITERS = [',', ';', '\t'] as const
export type CsvDelimiter = (typeof DELIMITERS)[number]

/** A heading is far shorter; what is longer is no heading, and is not searched to its end. */
const HEADING_LENGTH = 20_000

/** The first line of a file that says something, without a byte order mark; a quoted line break belongs to its cell. */
function headingOf(text: string): string {
  const start = text.slice(0, HEADING_LENGTH).replace(/^[\uFEFF\s]+/, '')
  return /^(?:"(?:[^"]|"")*"|[^"\r\n])*/.exec(start)?.[0] ?? ''
}

/**
 * The separator of a file: the one that stands most often outside quotes in its heading; a comma where none does, as in a file of one column.
 *
 * @example sniffDelimiter('name;maker;powerW\nTorvane 150 W;Torvane;150') // ';'
 */
export function sniffDelimiter(text: string): CsvDelimiter {
  const bare = headingOf(text).replace(/"(?:[^"]|"")*"/g, '')
  const counted = DELIMITERS.map((delimiter) => ({ delimiter, times: bare.split(delimiter).length - 1 })).filter(({ times }) => times > 0)
  return counted.toSorted((a, b) => b.times - a.times)[0]?.delimiter ?? ','
}
