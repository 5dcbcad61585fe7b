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

/** A sale time of the scenario under the id that it has on record. */
export interface SeededSaleTime {
  id: string
  name: string
  time: DemoSaleTime
  /** Where it happens. */
  storeIds: string[]
}

/** What the club knows of sales to come: the times that all stores have, and each store's own. */
export async function seedSaleTimes(trx: Transaction<Database>): Promise<SeededSaleTime[]> {
  const common = COMMON_SALE_TIMES.map((time, index) => ({ name: COMMON_NAMES[index] ?? `Sale ${index + 1}`, time, storeIds: [] }))
  const own = STORES.map(({ store, anniversary }) => ({ name: `${store.name}, own sale`, time: anniversary, storeIds: [store.id] }))
  const seeded: SeededSaleTime[] = []
  for (const { name, time, storeIds } of [...common, ...own]) {
    const fields: SaleTimeFields = { name, when: whenOf(time), lengthDays: time.lengthDays, storeIds, note: null }
    const made = await createSaleTime(trx, fields)
    if (!made.ok) throw new Error(`The scenario's sale time "${name}" is refused: ${made.refusal.message}`)
    seeded.push({ id: made.value.id, name, time, storeIds: storeIds.length > 0 ? storeIds : STORES.map(({ store }) => store.id) })
  }
  return seeded
}
