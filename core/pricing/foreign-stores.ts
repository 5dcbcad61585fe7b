import type { DeliveryRule, Store } from '../catalog/store.ts'
import { homeMinor, type CurrencyRate } from './currency-rate.ts'
import type { PriceView } from './price-view.ts'

/** Stores and prices told in the install's currency, and the stores that have no rate for theirs. */
export interface HomePrices {
  stores: Store[]
  prices: PriceView[]
  /** Ids of stores whose prices enter no tier. */
  unrated: Set<string>
}

/** The currency of a store. @example storeCurrency({ currency: null }, 'USD') // 'USD' */
export const storeCurrency = ({ currency }: Pick<Store, 'currency'>, home: string): string => currency ?? home

/**
 * Prices and delivery fees of stores in another currency at the manager's rates. What a store without a rate prints stays as it is, and its
 * id is among the unrated.
 *
 * Units: minor units of each store's currency in, of the install's out. The order of stores and prices is kept.
 */
export function inHomeCurrency(
  stores: readonly Store[],
  prices: readonly PriceView[],
  rates: readonly CurrencyRate[],
  home: string,
): HomePrices {
  const rateOf = new Map(rates.map((rate) => [rate.currency, rate]))
  const foreign = new Map(stores.filter((store) => storeCurrency(store, home) !== home).map((store) => [store.id, store.currency ?? home]))
  const converterOf = (storeId: string): ((minor: number) => number) | null => {
    const rate = rateOf.get(foreign.get(storeId) ?? '')
    return rate ? (minor) => homeMinor(minor, rate, home) : null
  }
  return {
    stores: stores.map((store) => {
      const convert = converterOf(store.id)
      return convert ? { ...store, delivery: convertedDelivery(store.delivery, convert) } : store
    }),
    prices: prices.map((view) => convertedView(view, converterOf(view.storeId))),
    unrated: new Set([...foreign].filter(([, currency]) => !rateOf.has(currency)).map(([id]) => id)),
  }
}

function convertedDelivery(delivery: DeliveryRule, convert: (minor: number) => number): DeliveryRule {
  if (delivery.kind === 'pickup_only') return delivery
  const fees = { feeMinor: convert(delivery.feeMinor), oversizeMinor: convert(delivery.oversizeMinor) }
  return delivery.kind === 'flat'
    ? { kind: 'flat', ...fees }
    : { kind: 'free_over', ...fees, freeOverMinor: convert(delivery.freeOverMinor) }
}

function convertedView(view: PriceView, convert: ((minor: number) => number) | null): PriceView {
  if (convert === null) return view
  // A price is above 0: the smallest coin stands for less.
  const priced = <Part extends { priceMinor: number }>(part: Part): Part => ({ ...part, priceMinor: Math.max(1, convert(part.priceMinor)) })
  return {
    ...view,
    ...(view.regular && { regular: priced(view.regular) }),
    ...(view.today && { today: priced(view.today) }),
    ...(view.best && { best: priced(view.best) }),
  }
}
