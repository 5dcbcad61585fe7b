import type { Store } from '../catalog/store.ts'
import type { CivilDate } from '../dates.ts'
import { canReach } from './delivery.ts'
import type { PriceView } from './price-view.ts'
import { withTaxExact } from './receipt.ts'

/** What a build asks the price of. `storeId` null: where the build's total today is least, delivery included. */
export interface CostLine {
  lineId: string
  productId: string
  name: string
  quantity: number
  storeId: string | null
  oversize: boolean
  archived: boolean
}

/** A store's price of one product on the day. */
export interface Offer {
  store: Store
  regular: PriceView['regular']
  today: NonNullable<PriceView['today']>
}
export interface BestOffer {
  store: Store
  best: NonNullable<PriceView['best']>
}
export type NoOffer = 'no_price' | 'cannot_be_delivered' | 'archived'

/** Stores and price views by id, made once a build. */
export interface Market {
  stores: ReadonlyMap<string, Store>
  /** Ids of the stores the customer will use. */
  allowed: readonly string[]
  viewsOf: (productId: string) => readonly PriceView[]
  asOf: CivilDate
}

/**
 * Where a line can be bought today, at least once: at the store it names, else at each of those allowed. The cheapest with tax comes first;
 * ties go to the newer fact, then to the lower store id, so that the same inputs give the same order.
 */
export function offersFor(line: CostLine, market: Market): Offer[] | NoOffer {
  if (line.archived) return 'archived'
  const offers = market.viewsOf(line.productId).flatMap((view) => offerOf(view, market) ?? [])
  const wanted = offers.filter(({ store }) =>
    line.storeId === null ? market.allowed.includes(store.id) && !store.archived : store.id === line.storeId,
  )
  if (line.storeId !== null && market.stores.get(line.storeId)?.archived) return 'archived'
  const reachable = wanted.filter(({ store }) => canReach(store)).toSorted(byCostToday)
  if (reachable.length > 0) return reachable
  return wanted.length > 0 ? 'cannot_be_delivered' : 'no_price'
}

const byCostToday = (a: Offer, b: Offer): number =>
  withTaxExact(a.today.priceMinor, a.store) - withTaxExact(b.today.priceMinor, b.store) ||
  b.today.seenOn.localeCompare(a.today.seenOn) ||
  (a.store.id < b.store.id ? -1 : 1)

function offerOf(view: PriceView, { stores, asOf }: Market): Offer | undefined {
  const store = stores.get(view.storeId)
  const today = runningOn(view, asOf)
  return store && today && { store, regular: view.regular, today }
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
    !store.archived && canReach(store) && (market.allowed.includes(store.id) || store.id === line.storeId)
  const [best] = market
    .viewsOf(line.productId)
    .flatMap(({ storeId, best }): BestOffer[] => {
      const store = market.stores.get(storeId)
      return store && best && usable(store) ? [{ store, best }] : []
    })
    .toSorted(
      (a, b) =>
        withTaxExact(a.best.priceMinor, a.store) - withTaxExact(b.best.priceMinor, b.store) ||
        b.best.seenOn.localeCompare(a.best.seenOn) ||
        (a.store.id < b.store.id ? -1 : 1),
    )
  return best ?? null
}
