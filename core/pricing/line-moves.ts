import type { Offer } from './line-offer.ts'
import { basketsOf, basketTotal, basketWith, emptyBasket, type Basket, type LineOffers } from './placement.ts'

interface Move {
  index: number
  to: Offer
  saves: number
  baskets: [Basket, Basket]
}

/**
 * Moves one line at a time to another of its offers, always the move that lowers the total of goods, tax and delivery most, until none
 * lowers it: a basket that is a little short of free delivery is filled up so. Of equal moves the line with the lower id goes, to the
 * earlier of its offers.
 *
 * Range: one placed offer a line. It ends, as every move takes at least one minor unit off. Source: own.
 */
export function improveByMoves(lines: readonly LineOffers[], placed: readonly Offer[]): Offer[] {
  const improved = [...placed]
  const baskets = basketsOf(lines, improved)
  const byId = lines.map((_, index) => index).sort((a, b) => ((lines[a]?.lineId ?? '') < (lines[b]?.lineId ?? '') ? -1 : 1))
  for (;;) {
    const move = bestMove(lines, improved, baskets, byId)
    if (move === null) return improved
    improved[move.index] = move.to
    for (const basket of move.baskets) baskets.set(basket.store.id, basket)
  }
}

function bestMove(
  lines: readonly LineOffers[],
  placed: readonly Offer[],
  baskets: ReadonlyMap<string, Basket>,
  order: readonly number[],
): Move | null {
  let best: Move | null = null
  for (const index of order) {
    const line = lines[index]
    const from = placed[index]
    const left = from && baskets.get(from.store.id)
    if (!line || !from || !left) continue
    for (const to of line.offers) {
      if (to.store.id === from.store.id) continue
      const joined = baskets.get(to.store.id) ?? emptyBasket(to.store)
      const moved: Move['baskets'] = [basketWith(left, line, from, -1), basketWith(joined, line, to, 1)]
      const saves = basketTotal(left) + basketTotal(joined) - basketTotal(moved[0]) - basketTotal(moved[1])
      if (saves > (best?.saves ?? 0)) best = { index, to, saves, baskets: moved }
    }
  }
  return best
}
