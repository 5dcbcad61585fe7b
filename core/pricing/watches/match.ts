import type { Product } from '../../catalog/product.ts'
import { parseSpecFilter, type SpecTest } from '../../catalog/spec-filter.ts'
import { dealFor, type Deal, type PricedThere } from './deal.ts'
import { isNews, type ToldDeal } from './news.ts'
import type { Watch } from './watch.ts'

/** Sides are stored to the millimetre by some and to the tenth by others: 36 in is 914.4 mm, and 914 mm is meant by it. */
const SLACK_MM = 0.5

/** Whether a product's stated spec meets every test, as a search for it does; what nobody stated meets none. */
export function meetsTests(spec: object, tests: readonly SpecTest[]): boolean {
  const stated = spec as Record<string, unknown>
  return tests.every((test) => {
    const value = stated[test.key]
    if ('is' in test) return value === test.is
    if (typeof value !== 'number') return false
    const slack = test.key.endsWith('Mm') ? SLACK_MM : 0
    return (test.least === null || value >= test.least - slack) && (test.most === null || value <= test.most + slack)
  })
}

/** Whether a watch is of a product, as far as the product itself tells. Archived products are of nobody's interest. */
export function isOf(
  watch: Pick<Watch, 'productId' | 'requirement'>,
  product: Pick<Product, 'id' | 'kind' | 'spec' | 'archived'>,
): boolean {
  if (product.archived) return false
  const { requirement } = watch
  if (requirement === null) return watch.productId === product.id
  if (requirement.kind !== product.kind) return false
  // A filter that this release cannot read any more is met by nothing.
  const tests = parseSpecFilter(requirement.kind, requirement.spec)
  return tests.ok && meetsTests(product.spec, tests.value)
}

/** The most that one watch tells on a day: "any heater" may be met two thousand times at once, and nobody reads the twenty-first. Own. */
export const MOST_A_DAY = 20
/** The most that all watches of one person tell on a day: many that are nearly alike tell the same deals. Own. */
export const MOST_A_DAY_TO_ONE = 100

/**
 * How many deals a watch may still tell on a day, of those that it and all watches of its owner have told on it. What finds no room is told on the next
 * day that has some, while it still stands: it is nowhere noted as told.
 *
 * @example roomLeft(12, 95) // 5
 */
export const roomLeft = (toldByWatch: number, toldToOwner: number): number =>
  Math.max(0, Math.min(MOST_A_DAY - toldByWatch, MOST_A_DAY_TO_ONE - toldToOwner))

/** A product's prices with the most that is to be paid for it. */
export interface LimitedPrices {
  limitMinor: number
  there: readonly PricedThere[]
}

/**
 * What is to be told of a watch now: deals that were not told before, the cheapest first, ties in the order of product and store; as many as there is
 * room for. The order in which prices and told deals are given does not matter.
 */
export function newDeals(
  watch: Pick<Watch, 'conditions' | 'currency' | 'storeIds'>,
  prices: readonly LimitedPrices[],
  told: readonly ToldDeal[],
  inRegion: ReadonlySet<string> | null = null,
  room: number = MOST_A_DAY,
): Deal[] {
  return prices
    .flatMap(({ limitMinor, there }) => there.flatMap((one) => dealFor(watch, limitMinor, one, inRegion) ?? []))
    .filter((deal) => isNews(deal, told))
    .toSorted((a, b) => a.totalMinor - b.totalMinor || (placeOf(a) < placeOf(b) ? -1 : 1))
    .slice(0, room)
}

const placeOf = ({ productId, storeId, condition }: Deal): string => `${productId} ${storeId} ${condition}`
