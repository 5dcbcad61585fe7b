/** Separators that spreadsheets write. */
const DELIMITERS = [',', ';', '\t'] as const
export type CsvDelimiter = (typeof DELIMITERS)[number]

const NAMES: Record<CsvDelimiter, string> = { ',': 'a comma', ';': "';'", '\t': 'a tab' }

/**
 * The separator that a heading line seems to use: the one that stands most often outside quotes; null where none does, as in a file of one column.
 *
 * @example sniffDelimiter('name;maker;powerW') // ';'
 */
export function sniffDelimiter(firstLine: string): CsvDelimiter | null {
  const bare = firstLine.replace(/"(?:[^"]|"")*"/g, '')
  const counted = DELIMITERS.map((delimiter) => ({ delimiter, times: bare.split(delimiter).length - 1 })).filter(({ times }) => times > 0)
  return counted.toSorted((a, b) => b.times - a.times)[0]?.delimiter ?? null
}

/** What to say where a heading was read as one column and holds another separator; null where it does not. */
export function delimiterFault(headings: readonly string[]): string | null {
  const [only, ...others] = headings
  if (only === undefined || others.length > 0) return null
  const delimiter = sniffDelimiter(only)
  if (delimiter === null || delimiter === ',') return null
  return `The file seems to use ${NAMES[delimiter]} between columns. Save it with commas.`
}
