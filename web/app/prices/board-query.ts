import { queryOptions } from '@tanstack/react-query'
import { getBoard } from '../client/sightings.ts'
import type { BoardSearch } from './board-search.ts'

/** Rows of one reading. A phone shows about seven at once; a desk about twenty. */
export const BOARD_PAGE = 40

/** The board as its screen reads it; read ahead for an aisle without a signal, and what a newcomer's first choice of products comes from. */
export const boardQuery = (search: BoardSearch = {}, shown: number = BOARD_PAGE) =>
  queryOptions({
    queryKey: ['board', search, shown],
    queryFn: () => getBoard({ kind: search.kind, storeId: search.store, regionId: search.region, q: search.q, limit: shown }),
  })
