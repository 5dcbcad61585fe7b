import { sayDate, yearOf } from '../dates.ts'
import { sayMoney } from '../money.ts'
import { offersFor, type Market, type Offer } from '../pricing/line-offer.ts'
import { withTaxExact } from '../pricing/receipt.ts'
import { rateIndexOf } from '../pricing/store-rates.ts'
import { taxThere, type TaxThere } from '../pricing/tax-there.ts'
import type { LineCost } from '../pricing/tiers.ts'
import { namedStore, quoteMarket } from './quote-market.ts'
import type { QuoteInputs } from './revision.ts'

/**
 * Tells of a bought line where its product costs less today, tax counted, than the price on the tag that it is to be bought at, and why the quote does
 * not buy it there; null where it does nowhere. Of several stores the cheapest. New goods alone; only stores whose goods reach the customer.
 *
 * Units: minor units as each store prints them.
 *
 * @example cheaperElsewhere(inputs)(line, 10_000) // 'Harbour Aquatics has it for $95.00, seen Nov 20: it is not among the stores of this quote.'
 */
export function cheaperElsewhere(inputs: QuoteInputs & { asOf: string }): (line: LineCost, tagMinor: number) => string | null {
  const { stores, prices, storeIds, unrated } = quoteMarket(inputs)
  const views = Map.groupBy(prices, ({ productId }) => productId)
  const byId = new Map(stores.map((store) => [store.id, store]))
  const market: Market = { stores: byId, allowed: [...byId.keys()], viewsOf: (id) => views.get(id) ?? [], unrated, asOf: inputs.asOf }
  const kindOf = new Map(inputs.products.map(({ id, kind }) => [id, kind]))
  const named = new Set(
    inputs.draft.builds.flatMap(({ lines }) =>
      lines.flatMap((line) => (line.answer === 'buy' && namedStore(line, inputs) !== null ? [line.id] : [])),
    ),
  )
  return ({ lineId, productId, quantity, storeId }, tagMinor) => {
    const here = storeId === null ? undefined : byId.get(storeId)
    if (!here) return null
    const kind = kindOf.get(productId)
    const asked = { lineId, productId, kind, name: '', quantity, storeId: null, oversize: false, archived: false }
    const offers = offersFor(asked, market)
    const [least] = typeof offers === 'string' ? [] : offers
    if (!least || least.store.id === here.id) return null
    const rateIndex = rateIndexOf(here, { productId, kind })
    if (withTaxExact(least.today.priceMinor, least.store, least.rateIndex) >= withTaxExact(tagMinor, here, rateIndex)) return null
    const why = !storeIds.includes(least.store.id)
      ? 'it is not among the stores of this quote.'
      : named.has(lineId)
        ? `this line is kept at ${here.name}.`
        : 'where the quote buys is chosen for the whole build, delivery counted.'
    return `${sayOffer(least, TAX_WORDS[taxThere(least, { store: here, rateIndex })], inputs)}: ${why}`
  }
}

const TAX_WORDS: Record<TaxThere, string> = {
  same: '',
  within: ' with tax',
  before: ' before tax',
  none: ' and adds no tax',
  less: ' and adds less tax',
  more: ' and adds more tax',
}

function sayOffer({ store, today }: Offer, tax: string, { install, asOf }: Pick<QuoteInputs, 'install'> & { asOf: string }): string {
  return `${store.name} has it for ${sayMoney(today.priceMinor, install.currency)}${tax}, seen ${sayDate(today.seenOn, yearOf(asOf))}`
}
