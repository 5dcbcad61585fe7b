import type { Store } from '../catalog/store.ts'
import { improveByMoves } from './line-moves.ts'
import type { Offer } from './line-offer.ts'
import { placedWithin, storesToChoose, totalOf, type LineOffers } from './placement.ts'
import { bestWithinStores } from './store-subsets.ts'

/** Up to here every set of stores is tried: 256 of them, or 6,561 where goods are oversize and all stores charge for that. */
export const TRIED_STORES = 8

/**
 * Where stores deliver free over an amount, the cheapest set need not be the one that is cheapest once a basket is filled up to it. On 3,000
 * random markets of 4 such stores and 6 lines, moves from the cheapest set alone missed the least total in one of five, from the 8 cheapest
 * in one of thirty.
 */
const STARTS_WITH_THRESHOLDS = 8

/**
 * The offer of each line, in their order, so that goods, tax and delivery together cost least today. A line with one offer stays there:
 * that is how a store the advisor chose is kept, and what is bought there counts for delivery.
 *
 * Up to 8 stores to choose from, every set of them is tried (`bestWithinStores`). Beyond 8, all are used at first, and the store whose
 * absence saves most is left out, again and again, as long as that saves anything. Then one line at a time moves to another store while that
 * lowers the total (`improveByMoves`): from the cheapest set, or from the 8 cheapest where a store delivers free over an amount.
 *
 * What is sure:
 * - it is never dearer than each line at its own cheapest store, and moving any one line does not lower it;
 * - up to 8 stores, none of which delivers free over an amount: no choice at all is cheaper, but for the rounding of tax by receipt and rate, which
 *   may come to one minor unit a store and rate;
 * - up to 8 stores and any rules: no set of stores with each line at its cheapest in the set is cheaper. A better choice that is reached
 *   only by moving several lines at once, to fill a basket up to free delivery, may be missed.
 *
 * Of sets with equal totals the one with fewer stores goes first, then the one with earlier offers of its lines, then that with the lower
 * store ids. The order of lines and stores changes nothing.
 *
 * Units: minor units as each store prints them. Range: at least one offer a line, the cheapest with tax first, prices above 0; line ids
 * differ. Errors: RangeError for a line without offers. Source: own.
 *
 * @example chooseStores([{ …filter, offers: [atUpriver(9900), atKettle(10400)] }]) // [atKettle(10400)] where Upriver brings it for 995
 */
export function chooseStores(lines: readonly LineOffers[]): Offer[] {
  const stores = storesToChoose(lines)
  const starts = stores.length <= TRIED_STORES ? bestWithinStores(lines, stores, startsFrom(stores)) : [leavingOut(lines, stores)]
  const [best] = starts
    .map((placed) => improveByMoves(lines, placed))
    .map((placed) => ({ placed, total: totalOf(lines, placed) }))
    .toSorted((a, b) => a.total - b.total)
  return best?.placed ?? []
}

const startsFrom = (stores: readonly Store[]): number =>
  stores.some(({ delivery }) => delivery.kind === 'free_over') ? STARTS_WITH_THRESHOLDS : 1

function leavingOut(lines: readonly LineOffers[], stores: readonly Store[]): Offer[] {
  const kept = new Set(stores.map(({ id }) => id))
  let placed = placedWithin(lines, (id) => kept.has(id)) ?? []
  for (;;) {
    const before = totalOf(lines, placed)
    const tries = [...kept].map((left) => ({ left, placed: placedWithin(lines, (id) => id !== left && kept.has(id)) }))
    const [best] = tries
      .flatMap((each) => (each.placed ? [{ left: each.left, placed: each.placed, total: totalOf(lines, each.placed) }] : []))
      .toSorted((a, b) => a.total - b.total)
    if (best === undefined || best.total >= before) return placed
    kept.delete(best.left)
    placed = best.placed
  }
}
