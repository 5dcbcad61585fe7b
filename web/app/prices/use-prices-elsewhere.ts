import { useQueries } from '@tanstack/react-query'
import type { BoardRow } from '../../../core/pricing/record.ts'
import { getPriceViews } from '../client/products.ts'
import { pricesOfRows, pricesOfViews, type PriceThere } from './lower-elsewhere.ts'

/** Products asked for at once: the server takes up to 240. */
const AT_ONCE = 200
const FRESH_MS = 60_000

/** What the products of the board's rows cost at every store; of those the server has not told of yet, what stands in the rows. */
export function usePricesElsewhere(rows: readonly BoardRow[]): PriceThere[] {
  const ids = [...new Set(rows.map(({ sighting }) => sighting.productId))]
  const parts = Array.from({ length: Math.ceil(ids.length / AT_ONCE) }, (_, part) => ids.slice(part * AT_ONCE, (part + 1) * AT_ONCE))
  const answers = useQueries({
    queries: parts.map((part) => ({
      queryKey: ['price-views', part],
      queryFn: () => getPriceViews(part),
      staleTime: FRESH_MS,
    })),
  })
  const asked = new Set(parts.flatMap((part, index) => (answers[index]?.data ? part : [])))
  return [
    ...answers.flatMap(({ data }) => (data ? pricesOfViews(data.prices) : [])),
    ...pricesOfRows(rows).filter(({ productId }) => !asked.has(productId)),
  ]
}
