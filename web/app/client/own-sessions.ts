import type { DeviceWord } from '../../../core/people/device.ts'
import { request } from './request.ts'

/** One place where one is signed in. */
export interface OwnSession {
  id: string
  device: DeviceWord
  begunAt: string
  lastUsedAt: string
  /** The one that asks. */
  current: boolean
}

export const listOwnSessions = async (): Promise<OwnSession[]> => (await request<{ items: OwnSession[] }>('GET', '/api/sessions')).items
export const endOwnSession = (id: string): Promise<void> => request('DELETE', `/api/sessions/${id}`)
export const endOtherSessions = (): Promise<void> => request('DELETE', '/api/sessions')
