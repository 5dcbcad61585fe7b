import type { CivilDate } from '../../../core/dates.ts'
import type { SaleCalendarRow, SaleDays, SaleTime } from '../../../core/pricing/sale-time.ts'
import { request } from './request.ts'

export type SaleTimeBody = Omit<SaleTime, 'id' | 'version'>
export interface SaleCalendar {
  asOf: CivilDate
  rows: SaleCalendarRow[]
}

export const getSaleCalendar = (): Promise<SaleCalendar> => request('GET', '/api/sale-times')
export const createSaleTime = (body: SaleTimeBody): Promise<SaleTime> => request('POST', '/api/sale-times', { body })
export const updateSaleTime = ({ id, version }: SaleTime, body: SaleTimeBody): Promise<SaleTime> =>
  request('PUT', `/api/sale-times/${id}`, { body, etag: `"${version}"` })
export const deleteSaleTime = (id: string): Promise<null> => request('DELETE', `/api/sale-times/${id}`)

/** The runs of the coming year of a sale time that is being entered. */
export const previewSaleTime = async (body: SaleTimeBody): Promise<Array<SaleDays & { storeIds: string[] }>> =>
  (await request<{ runs: Array<SaleDays & { storeIds: string[] }> }>('POST', '/api/sale-times/runs', { body })).runs

export async function listHolidays(country: string, subdivision: string | null): Promise<string[]> {
  const query = new URLSearchParams({ country, ...(subdivision === null ? {} : { subdivision }) })
  return (await request<{ names: string[] }>('GET', `/api/sale-times/holidays?${query.toString()}`)).names
}
