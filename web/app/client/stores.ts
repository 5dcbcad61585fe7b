import type { Store } from '../../../core/catalog/store.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

export type StoreBody = Omit<Store, 'id' | 'version'>
interface StoreList {
  items?: Store[]
  stores?: Store[]
}

/** Every store, archived ones included. */
export async function listStores(): Promise<Store[]> {
  const answer = await request<StoreList | Store[]>('GET', '/api/stores')
  return Array.isArray(answer) ? answer : (answer.items ?? answer.stores ?? [])
}
export const getStore = (id: string): Promise<Versioned<Store>> => requestVersioned('GET', `/api/stores/${id}`)
export const createStore = (body: StoreBody): Promise<Store> => request('POST', '/api/stores', { body })
export const updateStore = (id: string, body: StoreBody, etag: string): Promise<Store> =>
  request('PUT', `/api/stores/${id}`, { body, etag })
