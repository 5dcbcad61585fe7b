import type { Kysely } from 'kysely'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import type { PricedThere } from '../../core/pricing/watches/deal.ts'
import { standingListPrice } from '../../core/pricing/watches/list-standing.ts'
import { standingPrices } from '../../core/pricing/watches/standing-price.ts'
import { recordOfPairs } from '../../db/board.ts'
import { listCurrencyRates } from '../../db/currency-rates.ts'
import type { Database } from '../../db/database.ts'
import { stockOf } from '../../db/price-list.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { getStores, ownStore } from '../../db/stores.ts'

/** A price that stands was seen within 60 days; what it followed on is looked for half a year back. A sale that lasts longer may be told once more. */
const LOOK_BACK_DAYS = 180

/**
 * What some products cost on a day at one store, or at every store where they were seen. Where the place is a store, what its own list says and nothing
 * else: its customers are sent nowhere else.
 */
export async function pricedThere(
  db: Kysely<Database>,
  products: readonly Product[],
  storeId: string | null,
  today: CivilDate,
  { currency: home, mode }: Pick<Install, 'currency' | 'mode'>,
): Promise<PricedThere[]> {
  if (mode === 'store') {
    const own = await ownStore(db)
    return own && (storeId === null || storeId === own.id) ? listedThere(db, products, own, today, home) : []
  }
  const seen = await recordOf(db, products.map(({ id }) => id), storeId, addDays(today, -LOOK_BACK_DAYS)) // prettier-ignore
  const byPlace = Map.groupBy(seen, (one) => `${one.productId} ${one.storeId}`)
  const stores = new Map((await getStores(db, [...new Set(seen.map((one) => one.storeId))])).map((store) => [store.id, store]))
  const isForeign = [...stores.values()].some((store) => storeCurrency(store, home) !== home)
  const rates = new Map(isForeign ? (await listCurrencyRates(db)).map((rate) => [rate.currency, rate]) : [])
  const kindOf = new Map(products.map(({ id, kind }) => [id, kind]))
  const at = ([first, ...others]: Sighting[]): PricedThere[] => {
    const [store, kind] = [first && stores.get(first.storeId), first && kindOf.get(first.productId)]
    if (!first || !store || kind === undefined) return []
    const rate = rates.get(storeCurrency(store, home)) ?? null
    return standingPrices([first, ...others], today).map((price) => ({ productId: first.productId, kind, store, price, rate, home }))
  }
  return [...byPlace.values()].flatMap(at)
}

/** The own store's prices are in the install's currency. */
async function listedThere(
  db: Kysely<Database>,
  products: readonly Product[],
  store: Store,
  today: CivilDate,
  home: string,
): Promise<PricedThere[]> {
  const stock = new Map((await stockOf(db, products.map(({ id }) => id))).map((item) => [item.productId, item])) // prettier-ignore
  return products.flatMap(({ id: productId, kind }): PricedThere[] => {
    const item = stock.get(productId)
    const price = item && standingListPrice(item, today)
    return price ? [{ productId, kind, store, price, rate: null, home }] : []
  })
}

const recordOf = (db: Kysely<Database>, ids: string[], storeId: Store['id'] | null, since: CivilDate): Promise<Sighting[]> =>
  storeId === null
    ? sightingsOfProducts(db, ids, since)
    : recordOfPairs(
        db,
        ids.map((productId) => ({ productId, storeId })),
        since,
      )
