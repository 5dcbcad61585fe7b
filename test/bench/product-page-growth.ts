import type { Measurement } from './measurement.ts'
import { mostSeen } from './record/grown-record.ts'
import { growthOf } from './record/growth.ts'

const PRODUCTS = mostSeen(100)

/** The price page of each of the hundred products that are seen most. */
export default function productPageGrowth(): Promise<Measurement[]> {
  return growthOf('product-page.growth', (round) => ({
    method: 'GET',
    path: `/api/products/${PRODUCTS[(round * 7) % PRODUCTS.length]}/record`,
  }))
}
