import type { LivestockGroup } from '../../../core/sizing/conditions.ts'
import { request, requestVersioned, type Versioned } from './request.ts'

export type StoredGroup = LivestockGroup & { version: number }
export type GroupBody = Omit<LivestockGroup, 'id' | 'standing'>

export const listLivestockGroups = async (): Promise<StoredGroup[]> =>
  (await request<{ items: StoredGroup[] }>('GET', '/api/livestock-groups')).items
export const getLivestockGroup = (id: string): Promise<Versioned<StoredGroup>> => requestVersioned('GET', `/api/livestock-groups/${id}`)
export const createLivestockGroup = (body: GroupBody): Promise<StoredGroup> => request('POST', '/api/livestock-groups', { body })
export const updateLivestockGroup = (id: string, body: GroupBody, etag: string): Promise<StoredGroup> =>
  request('PUT', `/api/livestock-groups/${id}`, { body, etag })
