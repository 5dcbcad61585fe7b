import { sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { sayMoney } from '../../core/money.ts'
import { sayByDate, type ByDate, type ByDateWords } from '../../core/pricing/by-date.ts'
import { documentUnits } from '../../core/quote/document-units.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import type { Phrase, Quantity, ReaderUnits } from '../../core/units/quantity.ts'
import { sayPhrase, sayQuantity } from '../../core/units/say.ts'

/** How one document tells its figures: one currency, one reader, one year that goes without saying. */
export interface Teller {
  units: ReaderUnits
  money: (minor: number) => string
  /** Without the currency's sign: for columns whose heading says it. */
  bare: (minor: number) => string
  phrase: (phrase: Phrase) => string
  quantity: (quantity: Quantity) => string
  date: (date: CivilDate) => string
  byDate: (byDate: ByDate) => ByDateWords
  storeName: (storeId: string | null) => string
}

/** @example tellerOf(document).date('2026-10-31') // 'Oct 31' in a document of 2026 */
export function tellerOf({ inputs, issuedOn }: RevisionDocument): Teller {
  const { currency } = inputs.install
  const units = documentUnits(inputs)
  const stores = new Map(inputs.stores.map((store) => [store.id, store.name]))
  return {
    units,
    money: (minor) => sayMoney(minor, currency),
    bare: (minor) => sayMoney(minor, currency, { symbol: false }),
    phrase: (phrase) => sayPhrase(phrase, units),
    quantity: (quantity) => sayQuantity(quantity, units),
    date: (date) => sayDate(date, yearOf(issuedOn)),
    byDate: (byDate) => sayByDate(byDate, currency, yearOf(issuedOn)),
    storeName: (storeId) => (storeId === null ? '' : (stores.get(storeId) ?? 'a store no longer listed')),
  }
}
