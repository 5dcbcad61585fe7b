import type { Store } from '../catalog/store.ts'
import type { Offer } from './line-offer.ts'
import { basketTotal, basketWith, emptyBasket, goodsWith, type Basket, type LineOffers } from './placement.ts'
import type { GoodsByRate } from './receipt.ts'
import { rateCount } from './store-rates.ts'

/** What lines cost at each store, every line at its cheapest in a set of stores. */
interface Goods {
  /** Minor units by till and rate: each store has a place for each of its rates, in the order of stores. */
  atRates: number[]
  /** The stores where something is bought; the others of the set could as well be out of it. */
  used: number
  /** Sum over lines of the place of the offer taken: 0 where each is at its cheapest of all. */
  rank: number
}
interface Price {
  total: number
  storesUsed: number
  rank: number
}
/** A price with the sets it comes from. */
interface Found extends Price {
  ordinarySet: number
  oversizeSet: number
}

/**
 * The cheapest placements of all that come from a set of stores by sending each line to its cheapest price with tax in the set, the best
 * first, up to `count` of them. Where a store charges for oversize goods, they have a set of their own within it: the store may be used for
 * the small goods alone.
 *
 * Tried: 2ⁿ sets for n stores, 3ⁿ with oversize lines and surcharges at all of them. Equal totals go to fewer stores, then to the earlier
 * offers, then to the lower store ids. Sets are bits of a whole number, a bit a store.
 *
 * Range: n ≤ 8 takes under a millisecond, each store more up to three times as long; `stores` are all those of the lines with several offers.
 */
export function bestWithinStores(lines: readonly LineOffers[], stores: readonly Store[], count: number): Offer[][] {
  const bits = new Map(stores.map(({ id }, index) => [id, 1 << index]))
  const bitOf = ({ store }: Offer): number => bits.get(store.id) ?? 0
  const free = lines.filter(({ offers }) => offers.length > 1)
  const oversize = free.filter((line) => line.oversize)
  const ordinaryIn = goodsWithin(
    free.filter((line) => !line.oversize),
    stores,
    bitOf,
  )
  const oversizeIn = goodsWithin(oversize, stores, bitOf)
  const firsts = firstPlaces(stores)
  const tills = stores.map((store, at) => till(fixedBasket(lines, store), firsts[at] ?? 0))
  const surcharging = oversize.length === 0 ? 0 : surchargingSet(stores)
  const best: Found[] = []
  for (let set = 0; set < 1 << stores.length; set += 1) {
    const ordinary = ordinaryIn[set]
    if (!ordinary) continue
    // Every part of the set's surcharging stores, the whole first and none last.
    const parts = set & surcharging
    for (let part = parts; part >= 0; part = part === 0 ? -1 : (part - 1) & parts) {
      const oversizeSet = (set & ~surcharging) | part
      const bulky = oversizeIn[oversizeSet]
      // A store in which nothing is bought makes the same placement as the sets without it.
      if (!bulky || (part & ~bulky.used) !== 0 || (ordinary.used | bulky.used) !== set) continue
      const price = priceOf(tills, ordinary, bulky, best.length < count ? null : best.at(-1))
      if (price) enter(best, { ...price, ordinarySet: set, oversizeSet }, count)
    }
  }
  return best.map((found) => lines.map((line) => firstWithin(line, bitOf, line.oversize ? found.oversizeSet : found.ordinarySet)))
}

/** Puts a placement after those that are as good, and lets the worst go where there are too many. */
function enter(best: Found[], found: Found, count: number): void {
  const after = best.findLastIndex((each) => compare(each, found) <= 0)
  best.splice(after + 1, 0, found)
  if (best.length > count) best.pop()
}

const compare = (a: Price, b: Price): number => a.total - b.total || a.storesUsed - b.storesUsed || a.rank - b.rank

function firstWithin({ lineId, offers }: LineOffers, bitOf: (offer: Offer) => number, set: number): Offer {
  const offer = offers.length === 1 ? offers[0] : offers.find((each) => (bitOf(each) & set) !== 0)
  if (offer === undefined) throw new RangeError(`Line ${lineId} has no offer`)
  return offer
}

/** For every set of stores, what the lines cost in it; null where a line has no offer there. */
function goodsWithin(lines: readonly LineOffers[], stores: readonly Store[], bitOf: (offer: Offer) => number): Array<Goods | null> {
  const firsts = firstPlaces(stores)
  const priced = lines.map(({ quantity, offers }) =>
    offers.map((offer) => ({
      bit: bitOf(offer),
      at: (firsts[31 - Math.clz32(bitOf(offer))] ?? 0) + (offer.rateIndex ?? 0),
      amountMinor: offer.today.priceMinor * quantity,
    })),
  )
  const places = stores.reduce((sum, store) => sum + rateCount(store), 0)
  return Array.from({ length: 1 << stores.length }, (_, set): Goods | null => {
    const atRates = Array.from({ length: places }, () => 0)
    let used = 0
    let rank = 0
    for (const offers of priced) {
      const place = offers.findIndex(({ bit }) => (bit & set) !== 0)
      const offer = offers[place]
      if (offer === undefined) return null
      atRates[offer.at] = (atRates[offer.at] ?? 0) + offer.amountMinor
      used |= offer.bit
      rank += place
    }
    return { atRates, used, rank }
  })
}

/** What is bought at a store in any case. */
function fixedBasket(lines: readonly LineOffers[], store: Store): Basket {
  return lines.reduce<Basket>((basket, line) => {
    const [only, other] = line.offers
    return other === undefined && only?.store.id === store.id ? basketWith(basket, line, only, 1) : basket
  }, emptyBasket(store))
}

/** Where each store's first rate stands among the places of all. */
function firstPlaces(stores: readonly Store[]): number[] {
  let next = 0
  return stores.map((store) => {
    const first = next
    next += rateCount(store)
    return first
  })
}

const goodsAt = (goods: GoodsByRate, minor: number, rate: number): GoodsByRate => goodsWith(goods, rate, minor)

/** What a store takes for its basket with more in it, by rate; 0 for an empty one. */
type Till = (ordinary: readonly number[], oversize: readonly number[]) => number

/**
 * A till that works each amount out once: thousands of sets come to a few dozen amounts at one store. `first` is the store's first place in
 * the lists of amounts.
 */
function till({ store, goods, oversizeLines }: Basket, first: number): Till {
  const known = new Map<number | string, number>()
  const rates = rateCount(store)
  const added = Array.from({ length: rates }, () => 0)
  return (ordinary, oversize) => {
    let bulky = false
    for (let rate = 0; rate < rates; rate += 1) {
      const oversizeMinor = oversize[first + rate] ?? 0
      bulky ||= oversizeMinor > 0
      added[rate] = (ordinary[first + rate] ?? 0) + oversizeMinor
    }
    // A number is the faster key, and most stores have one rate.
    const key = rates === 1 ? 2 * (added[0] ?? 0) + (bulky ? 1 : 0) : `${added.join(' ')} ${bulky}`
    let total = known.get(key)
    if (total === undefined) {
      const sums = added.reduce(goodsAt, goods)
      total = basketTotal({ store, goods: sums, oversizeLines: oversizeLines + (bulky ? 1 : 0) })
      known.set(key, total)
    }
    return total
  }
}

/** The price, or null where it is no better than the one to beat; given up as soon as it is dearer. */
function priceOf(tills: readonly Till[], ordinary: Goods, oversize: Goods, toBeat: Price | null | undefined): Price | null {
  let total = 0
  let storesUsed = 0
  for (let at = 0; at < tills.length; at += 1) {
    const taken = tills[at]?.(ordinary.atRates, oversize.atRates) ?? 0
    total += taken
    storesUsed += taken > 0 ? 1 : 0
    if (toBeat && total > toBeat.total) return null
  }
  const price = { total, storesUsed, rank: ordinary.rank + oversize.rank }
  return toBeat && compare(price, toBeat) >= 0 ? null : price
}

const surchargingSet = (stores: readonly Store[]): number =>
  stores.reduce((set, { delivery }, at) => (delivery.kind !== 'pickup_only' && delivery.oversizeMinor > 0 ? set | (1 << at) : set), 0)
