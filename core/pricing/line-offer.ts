import type { Kind } from '../catalog/kinds.ts'
import type { Store } from '../catalog/store.ts'
import type { CivilDate } from '../dates.ts'
import { canReach } from './delivery.ts'
import type { PriceView } from './price-view.ts'
import { withTaxExact } from './receipt.ts'
import { rateIndexOf } from './store-rates.ts'

/** What a build asks the price of. `storeId` null: where the build's total today is least, delivery included. */
export interface CostLine {
  lineId: string
  productId: string
  /** Which rate of tax it takes, where a store has several; absent: the usual one. */
  kind?: Kind | undefined
  /** The product's own; null or absent: the store's. */
  warrantyMonths?: number | null | undefined
  name: string
  quantity: number
  storeId: string | null
  oversize: boolean
  archived: boolean
}

/** A store's price of one product on the day. */
export interface Offer {
  store: Store
  /** Place of its rate of tax among the store's; absent is 0, the usual one. */
  rateIndex?: number
  regular: PriceView['regular']
  today: NonNullable<PriceView['today']>
  /** Name of the other club that told it; absent: our own record or list. */
  otherClub?: string
}
export interface BestOffer {
  store: Store
  rateIndex?: number
  best: NonNullable<PriceView['best']>
}
/** `no_rate`: only stores of another currency have it, and no rate of exchange is set for theirs. */
export type NoOffer = 'no_price' | 'cannot_be_delivered' | 'archived' | 'no_rate'

/** Stores and price views by id, made once a build. */
export interface Market {
  stores: ReadonlyMap<string, Store>
  /** Ids of the stores the customer will use. */
  allowed: readonly string[]
  viewsOf: (productId: string) => readonly PriceView[]
  /** Ids of stores of another currency without a rate of exchange: what they print enters no tier. */
  unrated: ReadonlySet<string>
  asOf: CivilDate
}

/**
 * Where a line can be bought today, at least once: at the store it names, else at each of those allowed. The cheapest with tax comes first;
 * ties go to the newer fact, then to the lower store id, so that the same inputs give the same order.
 */
export function offersFor(line: CostLine, market: Market): Offer[] | NoOffer {
  if (line.archived) return 'archived'
  const offers = market.viewsOf(line.productId).flatMap((view) => offerOf(line, view, market) ?? [])
  const wanted = offers.filter(({ store }) =>
    line.storeId === null ? market.allowed.includes(store.id) && !store.archived : store.id === line.storeId,
  )
  if (line.storeId !== null && market.stores.get(line.storeId)?.archived) return 'archived'
  const reachable = wanted.filter(({ store }) => canReach(store)).toSorted(byCostToday)
  if (reachable.length > 0) return reachable
  if (wanted.length > 0) return 'cannot_be_delivered'
  return soldUnrated(line, market) ? 'no_rate' : 'no_price'
}

const soldUnrated = ({ productId, storeId }: CostLine, { viewsOf, allowed, unrated }: Market): boolean =>
  viewsOf(productId).some(
    (view) => view.today && unrated.has(view.storeId) && (storeId === null ? allowed.includes(view.storeId) : view.storeId === storeId),
  )

const byCostToday = (a: Offer, b: Offer): number =>
  withTaxExact(a.today.priceMinor, a.store, a.rateIndex) - withTaxExact(b.today.priceMinor, b.store, b.rateIndex) ||
  b.today.seenOn.localeCompare(a.today.seenOn) ||
  (a.store.id < b.store.id ? -1 : 1)

function offerOf(line: CostLine, view: PriceView, { stores, unrated, asOf }: Market): Offer | undefined {
  const store = unrated.has(view.storeId) ? undefined : stores.get(view.storeId)
  const today = runningOn(view, asOf)
  if (!store || !today) return undefined
  const { regular, otherClub } = view
  return { store, rateIndex: rateIndexOf(store, line), regular, today, ...(otherClub !== undefined && { otherClub }) }
}

/** A view made on an earlier day may hold a sale that is over by now: then its regular price is what stands. */
function runningOn({ today, regular }: PriceView, asOf: CivilDate): PriceView['today'] {
  if (!today || today.holdsUntil === null || today.holdsUntil >= asOf) return today
  if (!regular) return undefined
  const { priceMinor, seenOn, age, sightingIds } = regular
  return { priceMinor, condition: 'shelf', seenOn, holdsUntil: null, lastDayStated: false, age, reporters: 1, sightingIds }
}

/** The lowest price of the last year, with tax, at a store the customer will use or the one the line names. */
export function bestFor(line: CostLine, market: Market): BestOffer | null {
  const usable = (store: Store): boolean =>
    !store.archived && !market.unrated.has(store.id) && canReach(store) && (market.allowed.includes(store.id) || store.id === line.storeId)
  const [best] = market
    .viewsOf(line.productId)
    .flatMap(({ storeId, best }): BestOffer[] => {
      const store = market.stores.get(storeId)
      return store && best && usable(store) ? [{ store, rateIndex: rateIndexOf(store, line), best }] : []
    })
    .toSorted(
      (a, b) =>
        withTaxExact(a.best.priceMinor, a.store, a.rateIndex) - withTaxExact(b.best.priceMinor, b.store, b.rateIndex) ||
        b.best.seenOn.localeCompare(a.best.seenOn) ||
        (a.store.id < b.store.id ? -1 : 1),
    )
  return best ?? null
}
