import type { HearingView } from '../../../api/answers/hearing.ts'
import { request } from './request.ts'

export type { HearingView }
/** What a browser gives for messages. */
export interface DeviceBody {
  endpoint: string
  keys: { p256dh: string; auth: string }
}

export const getHearing = (): Promise<HearingView> => request('GET', '/api/hearing')
export const setOwnMail = (address: string): Promise<HearingView> => request('PUT', '/api/hearing/mail', { body: { address } })
export const removeOwnMail = (): Promise<null> => request('DELETE', '/api/hearing/mail')
export const addOwnDevice = (body: DeviceBody): Promise<HearingView> => request('POST', '/api/hearing/devices', { body })
export const removeOwnDevice = (id: string): Promise<null> => request('DELETE', `/api/hearing/devices/${id}`)
