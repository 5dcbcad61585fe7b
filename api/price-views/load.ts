import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { Install } from '../../core/install.ts'
import { listView } from '../../core/pricing/price-list.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { priceViews } from '../../core/pricing/price-views.ts'
import { stockOf } from '../../db/price-list.ts'
import { getProducts } from '../../db/products.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { ownStore } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'

/** A year and a half: nothing older counts in any view (core/pricing/price-views.ts). */
const LOOK_BACK_DAYS = 550

/**
 * What some products cost on a day, and the products with what is inside their kits: in club mode what the record says, in store mode what
 * the own list says and nothing else, so that no price seen elsewhere comes near a quote.
 */
export async function loadPrices(
  c: Ctx,
  productIds: string[],
  asOf: CivilDate,
  mode: Install['mode'],
): Promise<{ prices: PriceView[]; products: Product[] }> {
  const ids = [...new Set(productIds)]
  if (ids.length === 0) return { prices: [], products: [] }
  const products = await getProducts(c.get('db'), ids, { withParts: true })
  return { prices: mode === 'store' ? await ownPrices(c, ids, asOf) : await seenPrices(c, ids, asOf), products }
}

const seenPrices = async (c: Ctx, ids: string[], asOf: CivilDate): Promise<PriceView[]> =>
  priceViews(await sightingsOfProducts(c.get('db'), ids, addDays(asOf, -LOOK_BACK_DAYS)), asOf)

async function ownPrices(c: Ctx, ids: string[], asOf: CivilDate): Promise<PriceView[]> {
  const own = await ownStore(c.get('db'))
  if (!own) return []
  return (await stockOf(c.get('db'), ids)).flatMap((item) => listView(item, own.id, asOf) ?? [])
}
