import type { Measurement } from './measurement.ts'
import { compareRates } from './two-servers.ts'

/** Reading a product through the whole service, session included, against a bare handler on raw postgres.js with the same answer. */
export default function productRead(): Promise<Measurement[]> {
  let read = 0
  return compareRates(
    'product.read',
    ({ stock, headers }) => {
      read += 1
      return { method: 'GET', path: `/api/products/${stock.productIds[read % stock.productIds.length]}`, headers }
    },
    200,
  )
}
