import type { Measurement } from './measurement.ts'
import { mostSeen } from './record/grown-record.ts'
import { growthOf } from './record/growth.ts'

const LINES = 12
const PRODUCTS = mostSeen(100)

/** Prices of the twelve products of a build, store by store, from which its tiers are added up. */
export default function tiersGrowth(): Promise<Measurement[]> {
  return growthOf('tiers.growth', (round) => ({
    method: 'POST',
    path: '/api/price-views',
    body: { productIds: Array.from({ length: LINES }, (_, line) => PRODUCTS[(round * 5 + line * 8) % PRODUCTS.length]) },
  }))
}
