import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { getProducts } from '../../db/products.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'

/** A year and a half: nothing older counts in any view (core/pricing/price-views.ts). */
const LOOK_BACK_DAYS = 550

/** What the record says of some products on a day, and the products with what is inside their kits. */
export async function loadPrices(c: Ctx, productIds: string[], asOf: CivilDate): Promise<{ prices: PriceView[]; products: Product[] }> {
  const ids = [...new Set(productIds)]
  if (ids.length === 0) return { prices: [], products: [] }
  const products = await getProducts(c.get('db'), ids, { withParts: true })
  const sightings = await sightingsOfProducts(c.get('db'), ids, addDays(asOf, -LOOK_BACK_DAYS))
  return { prices: priceViews(sightings, asOf), products }
}
