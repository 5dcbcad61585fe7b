import type { DeliveryRule, Store } from '../../core/catalog/store.ts'
import type { DemoSaleTime } from './sale-times.ts'
import { demoId } from './seeded.ts'

/** A store of the scenario with what its prices do. */
export interface DemoStore {
  store: Store
  /** Its shelf prices against the usual ones. */
  level: number
  /** Share of the catalog that it carries and members report. */
  carries: number
  /** Its own sale besides the ones that all know. */
  anniversary: DemoSaleTime
  sellsUsed: boolean
}

interface Rules {
  town: string | null
  taxBasisPoints: number
  delivery: DeliveryRule
  deliveryTaxed?: boolean
  pricesIncludeTax?: boolean
  returnDays: number | null
  note: string
}
const storeOf = (name: string, kind: Store['kind'], rules: Rules): Store => ({
  id: demoId('store', name),
  name,
  kind,
  town: rules.town,
  country: 'US',
  subdivision: kind === 'local' ? 'Tarn Valley' : null,
  timeZone: 'America/New_York',
  taxBasisPoints: rules.taxBasisPoints,
  pricesIncludeTax: rules.pricesIncludeTax ?? false,
  deliveryTaxed: rules.deliveryTaxed ?? false,
  delivery: rules.delivery,
  returnDays: rules.returnDays,
  note: rules.note,
  archived: false,
  version: 1,
})
const own = (month: number, day: number): DemoSaleTime => ({ kind: 'yearly', month, day, lengthDays: 10 })

const PICKUP: DeliveryRule = { kind: 'pickup_only' }

export const STORES: readonly DemoStore[] = [
  {
    store: storeOf('Kettle Lane', 'local', { town: 'Tarnwick', taxBasisPoints: 600, delivery: PICKUP, returnDays: 30, note: 'Gives club members ten per cent on Thursdays, not counted here' }),
    level: 1.02, carries: 0.48, anniversary: own(9, 12), sellsUsed: false,
  },
  {
    store: storeOf('Saltcote Pet', 'local', { town: 'Saltcote', taxBasisPoints: 600, delivery: { kind: 'flat', feeMinor: 1500, oversizeMinor: 2500 }, deliveryTaxed: true, returnDays: 14, note: 'Delivers within the valley' }),
    level: 1.0, carries: 0.42, anniversary: own(5, 3), sellsUsed: false,
  },
  {
    store: storeOf('Upriver', 'online', { town: null, taxBasisPoints: 600, delivery: { kind: 'free_over', feeMinor: 995, freeOverMinor: 9900, oversizeMinor: 4500 }, returnDays: 30, note: 'Parcels from two counties away' }),
    level: 0.97, carries: 0.58, anniversary: own(2, 20), sellsUsed: false,
  },
  {
    store: storeOf('Cistern House', 'online', { town: null, taxBasisPoints: 0, delivery: { kind: 'flat', feeMinor: 1295, oversizeMinor: 6000 }, returnDays: 60, note: 'Collects no tax here' }),
    level: 0.95, carries: 0.34, anniversary: own(10, 1), sellsUsed: false,
  },
  {
    store: storeOf('Ferrow & Daughter', 'local', { town: 'Upper Brindle', taxBasisPoints: 600, delivery: PICKUP, returnDays: 30, note: 'Drills glass to order' }),
    level: 1.06, carries: 0.22, anniversary: own(6, 18), sellsUsed: false,
  },
  {
    store: storeOf('Marl Street Fish Room', 'local', { town: 'Tarnwick', taxBasisPoints: 600, pricesIncludeTax: true, delivery: PICKUP, returnDays: null, note: 'Used goods, as seen; prices have the tax in them' }),
    level: 1.03, carries: 0.14, anniversary: own(3, 8), sellsUsed: true,
  },
  {
    store: storeOf('Northing Freight', 'online', { town: null, taxBasisPoints: 600, delivery: { kind: 'free_over', feeMinor: 1495, freeOverMinor: 14900, oversizeMinor: 8900 }, deliveryTaxed: true, returnDays: 20, note: 'Large tanks by pallet' }),
    level: 0.96, carries: 0.2, anniversary: own(8, 5), sellsUsed: false,
  },
] // prettier-ignore
