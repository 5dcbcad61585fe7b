import type { MarketRecord } from '../../../core/pricing/outlook/market-record.ts'
import { regularPrice } from '../../../core/pricing/regular-price.ts'
import type { Random } from '../random.ts'
import type { MarketTruth } from './parameters.ts'

/** One thing that is to be bought: a product, and the stores that will do. */
export interface Line {
  product: number
  stores: number[]
}

/** Lines of the build that is asked about. */
const MOST_LINES = 10
const AT_ANY_STORE = 0.25

/**
 * What a customer of this market asks about: different products, each at one store or at any whose price is known. Chosen by the record alone,
 * never by what comes, so that the choice favours no outcome.
 */
export function drawLines(truth: MarketTruth, record: MarketRecord, random: Random): Line[] {
  const ofProduct = Map.groupBy(record.sightings, ({ productId }) => productId)
  const shuffled = truth.products
    .map((_, product) => ({ product, order: random() }))
    .sort((a, b) => a.order - b.order)
    .map(({ product }) => product)
  const lines: Line[] = []
  for (const product of shuffled) {
    const seen = Map.groupBy(ofProduct.get(truth.products[product]?.id as string) ?? [], ({ storeId }) => storeId)
    const known = truth.storeIds.flatMap((id, store) => (regularPrice(seen.get(id) ?? [], record.asOf) === undefined ? [] : [store]))
    const one = known[Math.floor(random() * known.length)]
    const any = random() < AT_ANY_STORE
    if (one !== undefined && lines.length < MOST_LINES) lines.push({ product, stores: any ? known : [one] })
  }
  return lines
}
