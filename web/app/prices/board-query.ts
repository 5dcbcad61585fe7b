import { queryOptions } from '@tanstack/react-query'
import { getBoard } from '../client/sightings.ts'
import { keptAnswer } from '../offline/kept-answer.ts'
import type { BoardSearch } from './board-search.ts'

/** Rows of one reading. A phone shows about seven at once; a desk about twenty. */
export const BOARD_PAGE = 40

/** The whole board as it first opens: the one that stays on the device. */
const isPlain = ({ kind, store, region, q }: BoardSearch, shown: number): boolean =>
  kind === undefined && store === undefined && region === undefined && (q ?? '') === '' && shown === BOARD_PAGE

/** The board as its screen reads it; read ahead for an aisle without a signal, and what a newcomer's first choice of products comes from. */
export const boardQuery = (search: BoardSearch = {}, shown: number = BOARD_PAGE) =>
  queryOptions({
    queryKey: ['board', search, shown],
    queryFn: isPlain(search, shown)
      ? keptAnswer('board', () => getBoard({ limit: shown }))
      : () => getBoard({ kind: search.kind, storeId: search.store, regionId: search.region, q: search.q, limit: shown }),
  })
