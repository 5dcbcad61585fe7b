import type { Kysely } from 'kysely'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import type { PricedThere } from '../../core/pricing/watches/deal.ts'
import { standingPrices } from '../../core/pricing/watches/standing-price.ts'
import { recordOfPairs } from '../../db/board.ts'
import { listCurrencyRates } from '../../db/currency-rates.ts'
import type { Database } from '../../db/database.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { getStores } from '../../db/stores.ts'

/** A price that stands was seen within 60 days; what it followed on is looked for a year back. */
const LOOK_BACK_DAYS = 365

/** What some products cost on a day at one store, or at every store where they were seen. */
export async function pricedThere(
  db: Kysely<Database>,
  products: readonly Product[],
  storeId: string | null,
  today: CivilDate,
  home: string,
): Promise<PricedThere[]> {
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

const recordOf = (db: Kysely<Database>, ids: string[], storeId: Store['id'] | null, since: CivilDate): Promise<Sighting[]> =>
  storeId === null
    ? sightingsOfProducts(db, ids, since)
    : recordOfPairs(
        db,
        ids.map((productId) => ({ productId, storeId })),
        since,
      )
