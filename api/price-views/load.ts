import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { Install } from '../../core/install.ts'
import { listView } from '../../core/pricing/price-list.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { CURRENT_DAYS } from '../../core/pricing/age.ts'
import { SUMMARY_DAYS } from '../../core/pricing/pair-summary.ts'
import { doubtOf } from '../../core/pricing/doubt.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import { isLikely, withOtherClubs, type OtherClubPrice } from '../../core/pricing/with-other-clubs.ts'
import { getInstall } from '../../db/install.ts'
import { otherClubPrices } from '../../db/other-clubs.ts'
import { stockOf } from '../../db/price-list.ts'
import { getProducts } from '../../db/products.ts'
import { seenPricesOfProducts } from '../../db/seen-prices.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { listStores, ownStore } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'

/**
 * What some products and the parts of their kits cost on a day, and these products: in club mode what the record says, in store mode what
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
  // A kit is held against what its parts cost apart.
  const priced = products.map(({ id }) => id)
  return { prices: mode === 'store' ? await ownPrices(c, priced, asOf) : await seenPrices(c, priced, asOf), products }
}

async function seenPrices(c: Ctx, ids: string[], asOf: CivilDate): Promise<PriceView[]> {
  const own = await seenPricesOfProducts(c.get('db'), ids, asOf)
  const told = await otherClubPrices(c.get('db'), ids, addDays(asOf, -CURRENT_DAYS))
  if (told.length === 0) return own
  const toldOf = [...new Set(told.map(({ productId }) => productId))]
  return withOtherClubs(own, await likely(c, told, own, await sightingsOfProducts(c.get('db'), toldOf, addDays(asOf, -SUMMARY_DAYS))), asOf)
}

/** Held against our own record as a member's sighting is; but nobody is asked to confirm what is unlikely: it does not count. */
async function likely(
  c: Ctx,
  told: readonly OtherClubPrice[],
  own: readonly PriceView[],
  sightings: readonly Sighting[],
): Promise<OtherClubPrice[]> {
  const { currency: home } = await getInstall(c.get('db'))
  const stores = await listStores(c.get('db'), { archived: 'all' })
  const currencyOf = new Map(stores.map((store) => [store.id, storeCurrency(store, home)]))
  return told.filter((price) => {
    const currency = currencyOf.get(price.storeId) ?? home
    const record = sightings.filter(({ productId, storeId }) => productId === price.productId && currencyOf.get(storeId) === currency)
    const known = own.filter(({ productId, storeId }) => productId === price.productId && currencyOf.get(storeId) === currency)
    const seen = known.flatMap(({ regular, today, best }) => (today ?? regular ?? best)?.priceMinor ?? [])
    return isLikely(price.priceMinor, seen) && doubtOf(price, record, { currency, home, othersThatDay: [] }) === null
  })
}

async function ownPrices(c: Ctx, ids: string[], asOf: CivilDate): Promise<PriceView[]> {
  const own = await ownStore(c.get('db'))
  if (!own) return []
  return (await stockOf(c.get('db'), ids)).flatMap((item) => listView(item, own.id, asOf) ?? [])
}
