import type { QueryClient } from '@tanstack/react-query'
import type { BoardRow } from '../../../core/pricing/record.ts'
import type { Board } from '../client/sightings.ts'
import type { BoardSearch } from './board-search.ts'

/**
 * Which of the rows that were read before match what is asked for now, at these stores where a region was; each pair of product and store once, its newest first.
 *
 * @example matchingRows([row, row], { store: row.sighting.storeId }).length // 1
 */
export function matchingRows(rows: readonly BoardRow[], { kind, store, q = '' }: BoardSearch, storeIds?: readonly string[]): BoardRow[] {
  const word = q.trim().toLowerCase()
  const newest = new Map<string, BoardRow>()
  for (const row of rows.toSorted((a, b) => newer(a, b))) {
    const { productId, storeId, productName } = row.sighting
    const matches =
      (!kind || row.kind === kind) &&
      (!store || storeId === store) &&
      (!storeIds || storeIds.includes(storeId)) &&
      productName.toLowerCase().includes(word)
    const pair = `${productId} ${storeId}`
    if (matches && !newest.has(pair)) newest.set(pair, row)
  }
  return [...newest.values()]
}

const newer = ({ sighting: a }: BoardRow, { sighting: b }: BoardRow): number =>
  b.seenOn.localeCompare(a.seenOn) || b.receivedAt.localeCompare(a.receivedAt) || a.id.localeCompare(b.id)

/** Every board row that this page has read, whatever it was filtered by. */
export const rowsInMemory = (queries: QueryClient): BoardRow[] =>
  queries.getQueriesData<Board>({ queryKey: ['board'] }).flatMap(([, board]) => board?.rows ?? [])
