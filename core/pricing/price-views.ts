import type { CivilDate } from '../dates.ts'
import { bestSeen } from './best-seen.ts'
import { productGone } from './gone.ts'
import type { PriceView } from './price-view.ts'
import { regularPrice } from './regular-price.ts'
import type { Sighting } from './sighting.ts'
import { todayPrice } from './today.ts'
import { newcomerTrust, type TrustOf } from './trust.ts'

/**
 * What the record says of every product and store in the sightings on a day, new goods only. Pairs of which nothing is known any more are
 * left out. The order of the sightings does not matter; the answer is in the order of product id, then store id.
 *
 * Units: minor units as each store prints them; civil days of the stores' zones. A year and a half of sightings is enough: nothing older counts.
 */
export function priceViews(sightings: readonly Sighting[], asOf: CivilDate, trustOf: TrustOf = newcomerTrust): PriceView[] {
  const byPair = Map.groupBy(sightings, ({ productId, storeId }) => `${productId} ${storeId}`)
  return [...byPair]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, ofPair]) => priceViewOf(ofPair, asOf, trustOf))
    .filter((view) => view !== undefined && (view.regular ?? view.today ?? view.best) !== undefined) as PriceView[]
}

/** The view of one product at one store; undefined without a sighting. All sightings must be of the same pair. */
export function priceViewOf(
  sightingsOfOnePair: readonly Sighting[],
  asOf: CivilDate,
  trustOf: TrustOf = newcomerTrust,
): PriceView | undefined {
  const [first] = sightingsOfOnePair
  if (!first) return undefined
  const regular = regularPrice(sightingsOfOnePair, asOf, trustOf)
  const today = todayPrice(sightingsOfOnePair, regular, asOf, trustOf)
  const best = bestSeen(sightingsOfOnePair, asOf)
  const goneOn = regular && !today ? productGone(sightingsOfOnePair, asOf) : null
  const pair = { productId: first.productId, storeId: first.storeId }
  return { ...pair, ...(regular && { regular }), ...(today && { today }), ...(goneOn && { goneOn }), ...(best && { best }) }
}
