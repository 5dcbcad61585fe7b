import type { Store } from '../catalog/store.ts'
import type { CivilDate } from '../dates.ts'
import { discountsOf, type Discount } from './discount.ts'
import { bestFor, offersFor, type BestOffer, type CostLine, type Market, type NoOffer, type Offer } from './line-offer.ts'
import type { PriceView } from './price-view.ts'
import { goodsWith } from './placement.ts'
import { deliveredReceipt, receiptOf, sumOf, withTaxExact, type GoodsByRate } from './receipt.ts'
import { chooseStores } from './store-choice.ts'
import type { BuildCost, LineCost, Receipt, Sum, Tier } from './tiers.ts'

export type { CostLine } from './line-offer.ts'

export interface CostInputs {
  lines: readonly CostLine[]
  stores: readonly Store[]
  prices: readonly PriceView[]
  /** Stores the customer will use. A line that names a store may name any. */
  storeIds: readonly string[]
  asOf: CivilDate
  /** Taken off the goods of today. */
  discount?: Discount | null | undefined
  /** Ids of stores whose currency has no rate of exchange. */
  unrated?: ReadonlySet<string> | undefined
}

/** A line with what was found for it. */
interface Priced {
  line: CostLine
  offer: Offer | NoOffer
  best: BestOffer | null
}
/** Goods bought at a store. */
interface Bought {
  store: Store
  rateIndex: number
  amountMinor: number
  oversize: boolean
}

/**
 * What a build costs in three tiers (design rule 10).
 *
 * - *today*: each line at the store it names, the others where this total is least, delivery included (`chooseStores` says how surely);
 *   delivery by each store's rule on the goods bought there; the discount taken off the goods; tax once a receipt and rate, rounded half away
 *   from zero. Where each line is bought does not depend on the discount.
 * - *full price*: the regular prices at the same stores, without the discount; delivery as charged today. A regular price under today's (a sale that two
 *   members confirmed to be dearer than the shelf) counts as today's.
 * - *best seen*: a line's lower, with tax, of today's price and the lowest accepted price of 365 days at a store the customer will use;
 *   delivery as charged today. The discount is off today's prices: where the sum comes out dearer than today's, today's stands.
 *
 * So best seen ≤ today ≤ full. A line without a price makes a tier incomplete, which then has no sums; `receipts` are today's and empty
 * while today is incomplete. Goods of a local store that is pickup only are collected: no fee. Delivery is never shared between stores.
 *
 * Units: minor units as each store prints them. Range: quantities 1 to 999, prices to 10⁹. Never throws on what the validators accept.
 */
export function buildCost({ lines, stores, prices, storeIds, asOf, discount, unrated = new Set() }: CostInputs): BuildCost {
  const views = Map.groupBy(prices, ({ productId }) => productId)
  const market: Market = {
    stores: new Map(stores.map((store) => [store.id, store])),
    allowed: storeIds,
    viewsOf: (id) => views.get(id) ?? [],
    unrated,
    asOf,
  }
  const priced = pricedLines(lines, market)
  const receipts = todayReceipts(priced, discount)
  const today = tierOf(receipts, priced)
  return {
    lines: priced.map(lineCost),
    receipts: receipts ?? [],
    full: tierOf(receipts && fullReceipts(priced, receipts), priced, (offer) => offer.regular === undefined),
    today,
    bestSeen: tierOf(receipts && bestReceipts(priced, receipts), priced),
  }
}

/** Every line that can be bought with the store chosen for it; the others with why not, which stops none of the rest. */
function pricedLines(lines: readonly CostLine[], market: Market): Priced[] {
  const found = lines.map((line) => ({ line, offers: offersFor(line, market) }))
  const chosen = chooseStores(found.flatMap(({ line, offers }) => (typeof offers === 'string' ? [] : [{ ...line, offers }])))
  let next = 0
  return found.map(({ line, offers }): Priced => {
    const offer = typeof offers === 'string' ? offers : (chosen[next++] ?? 'no_price')
    return { line, offer, best: bestFor(line, market) }
  })
}

const isOffer = (offer: Offer | NoOffer): offer is Offer => typeof offer === 'object'

function tierOf(receipts: Receipt[] | null, priced: readonly Priced[], lacks: (offer: Offer) => boolean = () => false): Tier {
  const missing = priced.flatMap(({ line: { lineId, name }, offer }) => {
    if (!isOffer(offer)) return [{ lineId, name, why: offer }]
    return lacks(offer) ? [{ lineId, name, why: 'no_price' as const }] : []
  })
  return missing.length > 0 || receipts === null ? { complete: false, missing } : { complete: true, ...sumOf(receipts) }
}

/** Today's receipts with delivery; null where a line has no price. */
function todayReceipts(priced: readonly Priced[], discount: CostInputs['discount']): Receipt[] | null {
  const bought = priced.flatMap(({ line, offer }): Bought[] => (isOffer(offer) ? [boughtAt(offer, offer.today.priceMinor, line)] : []))
  if (bought.length < priced.length) return null
  const baskets = byStore(bought)
  const discounts = discountsOf(
    discount,
    baskets.map(({ store, goods }) => ({ storeId: store.id, goods })),
  )
  return baskets.map(({ store, goods, anyOversize }) => deliveredReceipt(store, goods, anyOversize, discounts.get(store.id)))
}

const boughtAt = ({ store, rateIndex = 0 }: Pick<Offer, 'store' | 'rateIndex'>, unitMinor: number, line: CostLine): Bought => ({
  store,
  rateIndex,
  amountMinor: unitMinor * line.quantity,
  oversize: line.oversize,
})

function fullReceipts(priced: readonly Priced[], today: readonly Receipt[]): Receipt[] {
  return withTodaysDelivery(
    priced.flatMap(({ line, offer }): Bought[] => (isOffer(offer) ? [boughtAt(offer, fullUnit(offer) ?? 0, line)] : [])),
    priced,
    today,
  )
}

const fullUnit = ({ regular, today }: Offer): number | null => (regular ? Math.max(regular.priceMinor, today.priceMinor) : null)

/** The best price where it beats today's, tax counted. */
function bestBeats(offer: Offer, best: BestOffer | null): best is BestOffer {
  return (
    best !== null &&
    withTaxExact(best.best.priceMinor, best.store, best.rateIndex) < withTaxExact(offer.today.priceMinor, offer.store, offer.rateIndex)
  )
}

function bestReceipts(priced: readonly Priced[], today: Receipt[]): Receipt[] {
  const bought = priced.flatMap(({ line, offer, best }): Bought[] => {
    if (!isOffer(offer)) return []
    return [bestBeats(offer, best) ? boughtAt(best, best.best.priceMinor, line) : boughtAt(offer, offer.today.priceMinor, line)]
  })
  const receipts = withTodaysDelivery(bought, priced, today)
  return total(receipts) <= total(today) ? receipts : today
}
const total = (receipts: readonly Sum[]): number => sumOf(receipts).totalMinor

/** Receipts of other goods than today's, each store's delivery being the amount charged today, also where nothing is bought there now. */
function withTodaysDelivery(bought: readonly Bought[], priced: readonly Priced[], today: readonly Receipt[]): Receipt[] {
  const nothing = priced.flatMap(({ offer }): Bought[] =>
    isOffer(offer) ? [{ store: offer.store, rateIndex: 0, amountMinor: 0, oversize: false }] : [],
  )
  return byStore([...bought, ...nothing]).map(({ store, goods }) =>
    receiptOf(store, goods, today.find(({ storeId }) => storeId === store.id)?.deliveryMinor ?? 0),
  )
}

function byStore(bought: readonly Bought[]): Array<{ store: Store; goods: GoodsByRate; anyOversize: boolean }> {
  return [...Map.groupBy(bought, ({ store }) => store.id).values()]
    .map((ofStore) => ({
      store: (ofStore[0] as Bought).store,
      goods: ofStore.reduce<GoodsByRate>((goods, { rateIndex, amountMinor }) => goodsWith(goods, rateIndex, amountMinor), []),
      anyOversize: ofStore.some(({ oversize }) => oversize),
    }))
    .sort((a, b) => (a.store.id < b.store.id ? -1 : 1))
}

function lineCost({ line: { lineId, productId, quantity, storeId, warrantyMonths }, offer, best }: Priced): LineCost {
  const found = isOffer(offer) ? offer : null
  const unitTodayMinor = found?.today.priceMinor ?? null
  const unitFullMinor = found && fullUnit(found)
  const bestUnitMinor =
    found === null ? (best?.best.priceMinor ?? null) : bestBeats(found, best) ? best.best.priceMinor : found.today.priceMinor
  const times = (unit: number | null): number | null => (unit === null ? null : unit * quantity)
  return {
    lineId,
    productId,
    quantity,
    storeId: found?.store.id ?? storeId,
    fullMinor: times(unitFullMinor),
    todayMinor: times(unitTodayMinor),
    bestSeenMinor: times(bestUnitMinor),
    unitTodayMinor,
    unitFullMinor,
    condition: found?.today.condition ?? null,
    seenOn: found?.today.seenOn ?? null,
    holdsUntil: found?.today.holdsUntil ?? null,
    lastDayStated: found?.today.lastDayStated ?? false,
    age: found?.today.age ?? null,
    reporters: found?.today.reporters ?? 0,
    ...(found?.otherClub !== undefined && { otherClub: found.otherClub }),
    sightingIds: found?.today.sightingIds ?? [],
    returnDays: found?.store.returnDays ?? null,
    warrantyMonths: warrantyMonths ?? found?.store.warrantyMonths ?? null,
    best: best && { storeId: best.store.id, ...best.best },
  }
}
