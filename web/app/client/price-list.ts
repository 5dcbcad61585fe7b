import type { Kind } from '../../../core/catalog/kinds.ts'
import type { StockItem } from '../../../core/pricing/price-list.ts'
import { queryOf, request, requestVersioned, type Versioned } from './request.ts'

/** A product with what the own list says of it. */
export interface PriceListEntry extends StockItem {
  name: string
  kind: Kind
  gtin: string | null
  version: number
}
export interface PriceListPage {
  items: PriceListEntry[]
  total: number
  today: string
}
export type PriceListBody = Omit<StockItem, 'productId'>

export const listPriceList = (filter: { q?: string | undefined; listed?: boolean | undefined; limit: number }): Promise<PriceListPage> =>
  request('GET', `/api/price-list${queryOf({ ...filter })}`)
export const getPriceListEntry = (id: string): Promise<Versioned<PriceListEntry>> => requestVersioned('GET', `/api/price-list/${id}`)
export const savePriceListEntry = (id: string, body: PriceListBody, etag: string): Promise<PriceListEntry> =>
  request('PUT', `/api/price-list/${id}`, { body, etag })
