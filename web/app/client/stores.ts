import type { Store } from '../../../core/catalog/store.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

export type StoreBody = Omit<Store, 'id' | 'version'>

/** Every store, archived ones included. */
export const listStores = async (): Promise<Store[]> => (await request<{ items: Store[] }>('GET', '/api/stores')).items
export const getStore = (id: string): Promise<Versioned<Store>> => requestVersioned('GET', `/api/stores/${id}`)
export const createStore = (body: StoreBody): Promise<Store> => request('POST', '/api/stores', { body })
export const updateStore = (id: string, body: StoreBody, etag: string): Promise<Store> =>
  request('PUT', `/api/stores/${id}`, { body, etag })
