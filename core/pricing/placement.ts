import type { Store } from '../catalog/store.ts'
import type { Offer } from './line-offer.ts'
import { deliveredReceipt, type GoodsByRate } from './receipt.ts'

/** A line that can be bought, and where: at least one offer, the cheapest with tax first. */
export interface LineOffers {
  lineId: string
  quantity: number
  oversize: boolean
  offers: readonly Offer[]
}

/** What is bought at one store. */
export interface Basket {
  store: Store
  /** By the store's rates of tax. */
  goods: GoodsByRate
  oversizeLines: number
}

/** What a basket comes to with tax and delivery; nothing where nothing is in it. Units: minor units as the store prints them. */
export const basketTotal = ({ store, goods, oversizeLines }: Basket): number =>
  goods.every((minor) => minor === 0) ? 0 : deliveredReceipt(store, goods, oversizeLines > 0).totalMinor

export const emptyBasket = (store: Store): Basket => ({ store, goods: [], oversizeLines: 0 })

/** Goods with an amount more at one rate. @example goodsWith([100], 1, 50) // [100, 50] */
export const goodsWith = (goods: GoodsByRate, rateIndex: number, minor: number): number[] =>
  Array.from({ length: Math.max(goods.length, rateIndex + 1) }, (_, at) => (goods[at] ?? 0) + (at === rateIndex ? minor : 0))

/** A basket with a line more in it (`times` 1) or less (`times` −1). */
export const basketWith = (basket: Basket, { quantity, oversize }: LineOffers, { today, rateIndex = 0 }: Offer, times: 1 | -1): Basket => ({
  store: basket.store,
  goods: goodsWith(basket.goods, rateIndex, times * today.priceMinor * quantity),
  oversizeLines: basket.oversizeLines + (oversize ? times : 0),
})

/** Baskets by store id of lines placed at one offer each, in the same order. */
export function basketsOf(lines: readonly LineOffers[], placed: readonly Offer[]): Map<string, Basket> {
  const baskets = new Map<string, Basket>()
  lines.forEach((line, index) => {
    const offer = placed[index]
    if (offer === undefined) throw new RangeError(`Line ${line.lineId} has no offer`)
    const basket = baskets.get(offer.store.id) ?? emptyBasket(offer.store)
    baskets.set(offer.store.id, basketWith(basket, line, offer, 1))
  })
  return baskets
}

/** Goods, tax and delivery of all lines. */
export const totalOf = (lines: readonly LineOffers[], placed: readonly Offer[]): number =>
  [...basketsOf(lines, placed).values()].reduce((sum, basket) => sum + basketTotal(basket), 0)

/** Each line at its cheapest offer at the stores in use, a line with one offer where it is; null where a line has none there. */
export function placedWithin(lines: readonly LineOffers[], inUse: (storeId: string) => boolean): Offer[] | null {
  const placed: Offer[] = []
  for (const { offers } of lines) {
    const offer = offers.length === 1 ? offers[0] : offers.find(({ store }) => inUse(store.id))
    if (offer === undefined) return null
    placed.push(offer)
  }
  return placed
}

/** The stores that some line could do without, by id: those with an offer of a line that has others. */
export function storesToChoose(lines: readonly LineOffers[]): Store[] {
  const stores = new Map<string, Store>()
  for (const { offers } of lines) if (offers.length > 1) for (const { store } of offers) stores.set(store.id, store)
  return [...stores.values()].sort((a, b) => (a.id < b.id ? -1 : 1))
}
