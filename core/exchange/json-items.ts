/** What is wrong with a text that should be a JSON array, and where. */
export class JsonItemsError extends Error {
  readonly item: number
  constructor(item: number, message: string) {
    super(message)
    this.item = item
  }
}

/** One row is a few hundred characters; what is longer than this is no row, and would fill the memory. */
const LONGEST_ITEM = 1_000_000

/**
 * Cuts a JSON array into the texts of its items as it comes in, so that a long one is never in memory whole.
 *
 * Errors: JsonItemsError where it is no array, an item is too long or the text ends inside.
 *
 * @example const cut = cutItems(); [...cut.feed('[{"a":1}, {"a"'), ...cut.feed(':2}]')] // ['{"a":1}', ' {"a":2}']
 */
export function cutItems(): { feed: (text: string) => string[]; end: () => void } {
  let [state, depth, inText, escaped, kept, count] = ['before' as 'before' | 'inside' | 'after', 0, false, false, '', 0]
  const fault = (words: string): never => {
    throw new JsonItemsError(count + 1, words)
  }
  const feed = (text: string): string[] => {
    const items: string[] = []
    let start = 0
    const take = (at: number, sign: string): void => {
      const item = kept + text.slice(start, at)
      ;[kept, start] = ['', at + 1]
      if (sign === ']') state = 'after'
      if (item.trim() !== '') {
        items.push(item)
        count += 1
      } else if (sign === ',' || count > 0) fault('Between two commas of the list there is nothing.')
    }
    for (let at = 0; at < text.length; at += 1) {
      const sign = text[at]!
      if (state !== 'inside') {
        if (/\s|\uFEFF/.test(sign)) continue
        if (state === 'after' || sign !== '[') return fault('This is no list of rows. A JSON file begins with "[" and ends with "]".')
        ;[state, start] = ['inside', at + 1]
      } else if (escaped) escaped = false
      else if (inText) {
        if (sign === '\\') escaped = true
        else if (sign === '"') inText = false
      } else if (sign === '"') inText = true
      else if (sign === '{' || sign === '[') depth += 1
      else if (depth > 0 && (sign === '}' || sign === ']')) depth -= 1
      else if (depth === 0 && (sign === ',' || sign === ']')) take(at, sign)
    }
    if (state === 'inside') kept += text.slice(start)
    if (kept.length > LONGEST_ITEM) fault('A row is longer than a million characters.')
    return items
  }
  const end = (): void => {
    if (state !== 'after') fault('The file ends before its list does. It may have been cut off.')
  }
  return { feed, end }
}
