import * as z from 'zod'
import { SaleTimeInput } from '../../core/pricing/schema.ts'
import type { SaleCalendarRow, SaleTime } from '../../core/pricing/sale-time.ts'
import { day, id, version } from './catalog.ts'
import { answer } from './registry.ts'

export const SaleTimeAnswer = answer('SaleTime', SaleTimeInput.extend({ id, version }) satisfies z.ZodType<SaleTime>)

const run = z.strictObject({ first: day, last: day, storeIds: z.array(id) })
const past = z.strictObject({
  first: day,
  last: day,
  stores: z.int(),
  products: z.int(),
  sightings: z.int(),
  medianDepth: z.number().nullable(),
})
const row = z.strictObject({ saleTime: SaleTimeAnswer, coming: z.array(run), past: z.array(past) }) satisfies z.ZodType<SaleCalendarRow>

export const SaleCalendarAnswer = answer('SaleCalendar', z.strictObject({ asOf: day, rows: z.array(row) }))
export const SaleRunsAnswer = answer('SaleRuns', z.strictObject({ runs: z.array(run) }))
export const HolidaysAnswer = answer('Holidays', z.strictObject({ names: z.array(z.string()) }))
