import type { Kind } from '../../../core/catalog/kinds.ts'
import type { ListedPrice } from '../../../core/pricing/listed-price.ts'
import type { BoardRow, SightingRow } from '../../../core/pricing/record.ts'
import type { Sighting } from '../../../core/pricing/sighting.ts'
import { queryOf, request } from './request.ts'

/** What a phone posts; its id makes repeating it harmless. */
export type SightingBody = Pick<
  Sighting,
  'id' | 'productId' | 'storeId' | 'condition' | 'priceMinor' | 'printedRegularMinor' | 'seenOn' | 'lastDay' | 'evidence' | 'note'
>
export interface BoardFilter {
  kind?: Kind | undefined
  storeId?: string | undefined
  regionId?: string | undefined
  q?: string | undefined
  limit?: number | undefined
  offset?: number | undefined
}
export interface Board {
  rows: BoardRow[]
  /** Where the place is a store: what its own list asks, in place of rows. Absent in what a phone kept of an earlier release. */
  listed?: ListedPrice[]
  total: number
}
export type SightingAct = 'confirm' | 'dispute' | 'withdraw' | 'take_back'

export const getBoard = (filter: BoardFilter): Promise<Board> => request('GET', `/api/board${queryOf({ ...filter })}`)
export const postSighting = (body: SightingBody): Promise<SightingRow> => request('POST', '/api/sightings', { body })
export const actOnSighting = (id: string, act: SightingAct): Promise<SightingRow> =>
  act === 'take_back' ? request('DELETE', `/api/sightings/${id}/vote`) : request('POST', `/api/sightings/${id}/${act}`)
