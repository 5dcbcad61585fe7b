import type { Transaction } from 'kysely'
import type { SaleTimeRule } from '../../core/pricing/sale-time.ts'
import type { Database } from '../database.ts'
import { createSaleTime, type SaleTimeFields } from '../sale-times.ts'
import { COMMON_NAMES, COMMON_SALE_TIMES, type DemoSaleTime } from './sale-times.ts'
import { STORES } from './stores.ts'

/** A rule counts from before the first sighting. */
const COUNTED_FROM = '2020-01-01'

const whenOf = (time: DemoSaleTime): SaleTimeRule =>
  time.kind === 'late_november'
    ? { kind: 'holiday', holiday: 'Thanksgiving Day', offsetDays: 1 }
    : { kind: 'rule', rule: `FREQ=YEARLY;BYMONTH=${time.month};BYMONTHDAY=${time.day}`, from: COUNTED_FROM }

/** What the club knows of sales to come: the times that all stores have, and each store's own. */
export async function seedSaleTimes(trx: Transaction<Database>): Promise<void> {
  const common = COMMON_SALE_TIMES.map((time, index): SaleTimeFields => ({
    name: COMMON_NAMES[index] ?? `Sale ${index + 1}`,
    when: whenOf(time),
    lengthDays: time.lengthDays,
    storeIds: [],
    note: null,
  }))
  const own = STORES.map(({ store, anniversary }): SaleTimeFields => ({
    name: `${store.name}, own sale`,
    when: whenOf(anniversary),
    lengthDays: anniversary.lengthDays,
    storeIds: [store.id],
    note: null,
  }))
  for (const fields of [...common, ...own]) {
    const made = await createSaleTime(trx, fields)
    if (!made.ok) throw new Error(`The scenario's sale time "${fields.name}" is refused: ${made.refusal.message}`)
  }
}
