import type { PriceRecord } from '../../core/pricing/record.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { findProduct } from '../../db/products.ts'
import { sightingRowsOfProduct } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'

/** All that a product page shows; undefined for an unknown product. */
export async function priceRecord(c: Ctx, productId: string): Promise<PriceRecord | undefined> {
  const product = await findProduct(c.get('db'), productId)
  if (product === undefined) return undefined
  const { today } = await installToday(c)
  const sightings = await sightingRowsOfProduct(c.get('db'), signedIn(c), productId)
  return { product, sightings, views: priceViews(sightings, today), asOf: today }
}
