import type { Store } from '../catalog/store.ts'
import type { Discount } from '../pricing/discount.ts'
import { sayRate } from '../pricing/currency-rate.ts'
import { inHomeCurrency, storeCurrency, type HomePrices } from '../pricing/foreign-stores.ts'
import type { BuildLine } from './draft.ts'
import type { QuoteInputs } from './revision.ts'

/** Where a quote's goods may come from and at what prices, in the install's currency. */
export interface QuoteMarket extends HomePrices {
  /** Ids of the stores the customer will use. */
  storeIds: string[]
}

type MarketInputs = Pick<QuoteInputs, 'draft' | 'stores' | 'prices' | 'install' | 'rates' | 'regions'>

/**
 * The stores and prices that a quote is made of.
 *
 * In store mode these are the store's own and nothing else, whatever the draft names: prices seen elsewhere are internal and enter no figure of
 * a quote. In club mode they are the stores of the region that the need names, else the stores it names, else all that are not archived.
 */
export function quoteMarket({ draft, stores, prices, install, rates = [], regions = [] }: MarketInputs): QuoteMarket {
  const sold = install.mode === 'store' ? stores.filter((store) => store.own === true) : stores
  const known = new Set(sold.map(({ id }) => id))
  const home = inHomeCurrency(
    sold,
    prices.filter(({ storeId }) => known.has(storeId)),
    rates,
    install.currency,
  )
  return { ...home, storeIds: chosenStores(draft.need, sold, install.mode, regions) }
}

function chosenStores(
  need: MarketInputs['draft']['need'],
  sold: readonly Store[],
  mode: 'club' | 'store',
  regions: NonNullable<MarketInputs['regions']>,
): string[] {
  const open = sold.filter((store) => !store.archived).map(({ id }) => id)
  if (mode === 'store') return open
  const region = regions.find(({ id }) => id === need.regionId)
  if (region) return region.storeIds
  return need.storeIds.length > 0 ? need.storeIds : open
}

/** The store that a line names, where the quote's market has it: in store mode a line is always the store's own. */
export const namedStore = (line: Extract<BuildLine, { answer: 'buy' }>, { install }: Pick<QuoteInputs, 'install'>): string | null =>
  install.mode === 'store' ? null : line.storeId

/** The discount of a quote; in store mode it is the store's own, whatever store it named. */
export const discountOf = ({ draft, install }: Pick<QuoteInputs, 'draft' | 'install'>): Discount | null =>
  draft.discount ? { ...draft.discount, storeId: install.mode === 'store' ? null : draft.discount.storeId } : null

/**
 * What must be said of stores of another currency: the rate that was used, with its day and source, or that there is none. A sentence a
 * currency, in the order of their codes; empty where no store of the market is foreign.
 */
export function currencyNotes({
  draft,
  stores,
  prices,
  install,
  rates = [],
  regions = [],
  asOf,
}: MarketInputs & { asOf: string }): string[] {
  const { storeIds, stores: sold } = quoteMarket({ draft, stores, prices, install, rates, regions })
  const used = new Set([
    ...storeIds,
    ...draft.builds.flatMap(({ lines }) => lines.flatMap((line) => (line.answer === 'buy' ? (line.storeId ?? []) : []))),
  ])
  const seen = new Set(prices.map(({ storeId }) => storeId))
  const foreign = sold.filter(
    (store) => used.has(store.id) && seen.has(store.id) && storeCurrency(store, install.currency) !== install.currency,
  )
  return [...Map.groupBy(foreign, (store) => storeCurrency(store, install.currency))]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([currency, of]) => {
      const names = of.map(({ name }) => name).join(', ')
      const rate = rates.find((each) => each.currency === currency)
      return rate
        ? `Prices of ${names} are in ${currency}, reckoned at ${sayRate(rate, install.currency, asOf)}.`
        : `Prices of ${names} are in ${currency}, for which no rate of exchange is set: they are in no total.`
    })
}
