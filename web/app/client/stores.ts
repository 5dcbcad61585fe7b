import type { Region } from '../../../core/catalog/region.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { CurrencyRate } from '../../../core/pricing/currency-rate.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

export type StoreBody = Omit<Store, 'id' | 'version'>

/** Every store, archived ones included. */
export const listStores = async (): Promise<Store[]> => (await request<{ items: Store[] }>('GET', '/api/stores')).items
export const getStore = (id: string): Promise<Versioned<Store>> => requestVersioned('GET', `/api/stores/${id}`)
export const createStore = (body: StoreBody): Promise<Store> => request('POST', '/api/stores', { body })
export const deleteStore = (id: string): Promise<null> => request('DELETE', `/api/stores/${id}`)

export type RegionBody = Omit<Region, 'id' | 'version'>
export const listRegions = async (): Promise<Region[]> => (await request<{ items: Region[] }>('GET', '/api/regions')).items
export const createRegion = (body: RegionBody): Promise<Region> => request('POST', '/api/regions', { body })
export const updateRegion = (region: Region, body: RegionBody): Promise<Region> =>
  request('PUT', `/api/regions/${region.id}`, { body, etag: `"${region.version}"` })
export const countRegionWatches = async (id: string): Promise<number> =>
  (await request<{ watches: number }>('GET', `/api/regions/${id}/watches`)).watches
export const deleteRegion = (id: string): Promise<null> => request('DELETE', `/api/regions/${id}`)

export interface CurrencyRates {
  items: CurrencyRate[]
  oldAfterDays: number
}
export const listCurrencyRates = (): Promise<CurrencyRates> => request('GET', '/api/currency-rates')
export const enterCurrencyRate = (body: CurrencyRate): Promise<CurrencyRates> => request('POST', '/api/currency-rates', { body })

export const updateStore = (id: string, body: StoreBody, etag: string): Promise<Store> =>
  request('PUT', `/api/stores/${id}`, { body, etag })
