import type { CivilDate } from '../../../core/dates.ts'
import type { OutlookView } from '../../../core/pricing/outlook-view.ts'
import { request } from './request.ts'

export interface OutlookAsked {
  lines: Array<{ productId: string; quantity: number; storeId: string | null }>
  storeIds: string[]
  until: CivilDate
  weekWaitMinor?: number
  withTax?: boolean
}
export const getOutlook = (body: OutlookAsked): Promise<OutlookView> => request('POST', '/api/outlook', { body })
