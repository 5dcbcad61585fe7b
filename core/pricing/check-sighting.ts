import type { Product } from '../catalog/product.ts'
import type { Store } from '../catalog/store.ts'
import { daysBetween, type CivilDate } from '../dates.ts'
import { ok, refuse, type Result } from '../result.ts'
import type { Sighting } from './sighting.ts'

/** Two years back, a price changes no figure any more; a date from before then is a misread year. */
export const OLDEST_SIGHTING_DAYS = 730

export interface SightingRefusal {
  code: 'unknown_product' | 'unknown_store' | 'archived_product' | 'archived_store' | 'future' | 'too_old'
  field: 'productId' | 'storeId' | 'seenOn'
  words: string
}

/** What the server looked up for a sighting: undefined where the id led nowhere. */
export interface SightingFacts {
  product: Pick<Product, 'name' | 'archived'> | undefined
  store: Pick<Store, 'name' | 'archived'> | undefined
  /** The civil day now in the store's zone. */
  today: CivilDate
}

/** Whether a well-formed sighting may be taken: its product and store exist and are in use, and its day has come. */
export function checkSighting(
  { seenOn }: Pick<Sighting, 'seenOn'>,
  { product, store, today }: SightingFacts,
): Result<void, SightingRefusal> {
  if (!product)
    return refuse({
      code: 'unknown_product',
      field: 'productId',
      words: 'This product is not in the catalog. Search for it again, or ask a manager to add it.',
    })
  if (!store)
    return refuse({
      code: 'unknown_store',
      field: 'storeId',
      words: 'This store is not known. Choose one from the list, or ask a manager to add it.',
    })
  if (product.archived)
    return refuse({
      code: 'archived_product',
      field: 'productId',
      words: `"${product.name}" is archived and takes no new sightings. Choose the product that replaced it.`,
    })
  if (store.archived)
    return refuse({
      code: 'archived_store',
      field: 'storeId',
      words: `"${store.name}" is archived and takes no new sightings. Choose another store.`,
    })
  const days = daysBetween(seenOn, today)
  if (days < 0)
    return refuse({
      code: 'future',
      field: 'seenOn',
      words: `${seenOn} has not come yet: at ${store.name} it is ${today}. Enter the day you saw the price.`,
    })
  if (days > OLDEST_SIGHTING_DAYS)
    return refuse({ code: 'too_old', field: 'seenOn', words: `${seenOn} is more than two years ago. Check the year.` })
  return ok(undefined)
}
