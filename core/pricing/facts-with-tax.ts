import type { Store } from '../catalog/store.ts'
import { goodsWith } from './placement.ts'
import type { PriceView } from './price-view.ts'
import { receiptOf } from './receipt.ts'
import type { StoreFacts } from './roll-up.ts'
import { rateIndexOf, type TaxedGoods } from './store-rates.ts'

/**
 * The same facts with every price as it is paid at the store: the tax that it adds comes on top, rounded as on a receipt of one piece, and a tag that holds its tax stays. Prices of stores that print
 * tax differently have no middle and no least as they stand on their tags.
 *
 * Units: minor units of the store's currency. What is no amount stays: a drift is a share, and the same with tax.
 *
 * @example factsWithTax(at(9000), { taxBasisPoints: 600, pricesIncludeTax: false, … }, { productId, kind: 'heater' }).view?.regular?.priceMinor // 9540
 */
export function factsWithTax(facts: StoreFacts, store: Store, goods: TaxedGoods): StoreFacts {
  const rateIndex = rateIndexOf(store, goods)
  const taxed = <Part extends { priceMinor: number }>(part: Part): Part => ({
    ...part,
    priceMinor: receiptOf(store, goodsWith([], rateIndex, part.priceMinor), 0).totalMinor,
  })
  const { view, used } = facts
  return {
    ...facts,
    ...(view && { view: viewTaxed(view, taxed) }),
    ...(used && { used: { best: taxed(used.best), ...(used.lowest && { lowest: taxed(used.lowest) }) } }),
  }
}

const viewTaxed = (view: PriceView, taxed: <Part extends { priceMinor: number }>(part: Part) => Part): PriceView => ({
  ...view,
  ...(view.regular && { regular: taxed(view.regular) }),
  ...(view.today && { today: taxed(view.today) }),
  ...(view.best && { best: taxed(view.best) }),
})
