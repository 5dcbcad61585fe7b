import { ok, refuse, type Result } from '../result.ts'
import { short } from './csv-cell.ts'

/** As many as a kit holds on its own page. */
const MOST_PARTS = 40
/** A name of 120 characters and its count, with room for blanks. Longer ones are no reference, and would be searched for a count for minutes. */
const ENTRY_LENGTH = 160

/** A kit's part as the file names it: a product's id or its name. Which product that is, the catalog says. */
export interface PartReference {
  product: string
  quantity: number
}

/**
 * Reads a kit's parts: products by name or id, " x " and how many, separated by ";". "×" and "*" are read as "x".
 *
 * The count is looked for at the end and only behind a space, so that a name like "Halden 60 x 30" keeps its own "x 30" when it is written
 * with a count of its own: "Halden 60 x 30 x 1".
 *
 * @example readParts('Torvane 150 W x 2; Pellick C-1800') // [{ product: 'Torvane 150 W', quantity: 2 }, { product: 'Pellick C-1800', quantity: 1 }]
 */
export function readParts(
  cell: string,
): Result<PartReference[], { code: 'empty' | 'too_long' | 'too_many' | 'bad_count' | 'repeated'; words: string }> {
  const parts: PartReference[] = []
  const entries = cell
    .split(';')
    .map((entry) => entry.trim())
    .filter(Boolean)
  if (entries.length === 0)
    return refuse({ code: 'empty', words: 'A kit contains at least one product. Write them like: Torvane 150 W x 2; Pellick C-1800' })
  if (entries.length > MOST_PARTS)
    return refuse({ code: 'too_many', words: `The parts are ${entries.length}. A kit contains at most ${MOST_PARTS}.` })
  for (const entry of entries) {
    if (entry.length > ENTRY_LENGTH) {
      const words = `"${short(entry)}" has ${entry.length} characters. A part with its count has at most ${ENTRY_LENGTH}; between two parts stands ";".`
      return refuse({ code: 'too_long', words })
    }
    const [, product, count] = /^(.+?)(?:\s+[x×*]\s*(\d+))?$/i.exec(entry) ?? []
    const quantity = Number(count ?? 1)
    if (!product || quantity < 1 || quantity > 99)
      return refuse({ code: 'bad_count', words: `"${short(entry)}": how many is a whole number from 1 to 99, as in "Torvane 150 W x 2".` })
    if (parts.some((part) => part.product.toLowerCase() === product.toLowerCase()))
      return refuse({ code: 'repeated', words: `"${short(product)}" stands twice in the parts. Write it once with its count.` })
    parts.push({ product, quantity })
  }
  return ok(parts)
}
