import { queryOptions } from '@tanstack/react-query'
import { getSaleCalendar, listHolidays, previewSaleTime, type SaleTimeBody } from '../client/sale-times.ts'

export const saleCalendarQuery = queryOptions({ queryKey: ['sale-times'], queryFn: getSaleCalendar, staleTime: 5 * 60_000 })

export const holidaysQuery = (country: string, subdivision: string | null) =>
  queryOptions({
    queryKey: ['holidays', country, subdivision],
    queryFn: () => listHolidays(country, subdivision),
    staleTime: Infinity,
    enabled: country !== '',
  })

/** Refusals are told at the fields, and asked again only after a change. */
export const runsQuery = (body: SaleTimeBody) =>
  queryOptions({
    queryKey: ['sale-time-runs', body],
    queryFn: () => previewSaleTime({ ...body, name: body.name || 'new' }),
    retry: false,
    staleTime: Infinity,
  })
