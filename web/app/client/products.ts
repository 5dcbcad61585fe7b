import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { PriceRecord } from '../../../core/pricing/record.ts'
import { queryOf, request, requestVersioned, type Versioned } from './request.ts'

export interface ProductFilter {
  kind?: Kind | undefined
  q?: string | undefined
  archived?: boolean | undefined
  spec?: string | undefined
  limit?: number | undefined
  offset?: number | undefined
}
/** What a form sends: a product without what the server gives it. */
export type ProductBody = { [K in Kind]: Omit<Extract<Product, { kind: K }>, 'id' | 'version'> }[Kind]

export interface ProductPage {
  items: Product[]
  total: number
  /** Hashes of the pictures of those that have one, by product. */
  pictures: Record<string, string>
}
export interface PriceViews {
  prices: PriceView[]
  /** Kit parts included. */
  products: Product[]
  asOf: string
}

export const listProducts = (filter: ProductFilter, signal?: AbortSignal): Promise<ProductPage> =>
  request('GET', `/api/products${queryOf({ ...filter })}`, signal ? { signal } : {})
export const getProduct = (id: string): Promise<Versioned<Product>> => requestVersioned('GET', `/api/products/${id}`)
export const createProduct = (body: ProductBody): Promise<Product> => request('POST', '/api/products', { body })
export const updateProduct = (id: string, body: ProductBody, etag: string): Promise<Product> =>
  request('PUT', `/api/products/${id}`, { body, etag })
/** The newest sightings and those behind the figures; the whole record on asking. */
export const getRecord = (id: string, whole = false): Promise<PriceRecord> =>
  request('GET', `/api/products/${id}/record${whole ? '?whole=true' : ''}`)
export const getPriceViews = (productIds: string[]): Promise<PriceViews> => request('POST', '/api/price-views', { body: { productIds } })
