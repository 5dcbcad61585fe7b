import type { Store } from '../catalog/store.ts'
import { storeCurrency } from '../pricing/foreign-stores.ts'
import { plainAmount } from './cell-reader.ts'
import type { CellValue, ExchangeColumn } from './column.ts'

const column = (heading: string, type: ExchangeColumn['type'], required: boolean, help: string): ExchangeColumn => ({
  heading,
  type,
  required,
  help,
})

/** Of a file that is exported and not imported: what a store is leans on prices and quotes, and is edited where these are looked at. */
export const STORE_COLUMNS: readonly ExchangeColumn[] = [
  column('id', 'text', true, 'Id of the store: a file of sightings names it as storeId.'),
  column('name', 'text', true, 'Name.'),
  column('kind', 'text', true, 'local or online.'),
  column('town', 'text', false, 'Town.'),
  column('country', 'text', true, 'Two letters of ISO 3166-1, like US.'),
  column('subdivision', 'text', false, 'State or province.'),
  column('timeZone', 'text', true, 'IANA time zone, like America/Detroit: a day of a price is a day there.'),
  column('currency', 'text', true, 'ISO 4217, like USD: what its prices and fees are in.'),
  column('pricesIncludeTax', 'flag', true, 'yes where prices are printed with tax.'),
  column('taxPercent', 'number', true, 'The usual rate of tax, in per cent.'),
  column('taxName', 'text', false, 'What the usual rate is called.'),
  column('otherRates', 'text', false, 'Rates that some goods take: name, per cent, then the kinds and ids of products, as in “Food 2 %: food, plant; Books 0 %: …”.'),
  column('deliveryTaxed', 'flag', true, 'yes where delivery is taxed.'),
  column('deliveryRate', 'text', false, 'Name of the rate that delivery takes, where it is not the usual one.'),
  column('delivery', 'text', true, 'pickup_only, flat, or free_over: free from an amount on.'),
  column('deliveryFee', 'amount', false, 'What delivery costs.'),
  column('freeOver', 'amount', false, 'Amount from which delivery is free.'),
  column('oversizeFee', 'amount', false, 'What delivery of oversize goods costs besides.'),
  column('returnDays', 'number', false, 'Days in which goods are taken back.'),
  column('warrantyMonths', 'number', false, 'Warranty in months, on goods that have none of their own.'),
  column('own', 'flag', true, 'yes for the store whose own this place is.'),
  column('note', 'text', false, 'Note.'),
  column('archived', 'flag', true, 'yes where it takes no new sightings.'),
] // prettier-ignore

/** Hundredths of a per cent, with at most two decimals themselves. @example percentOf(887.5) // 8.875 */
const percentOf = (basisPoints: number): number => Number((basisPoints / 100).toFixed(4))

const ratesOf = ({ otherRates = [] }: Store): string | null =>
  otherRates.length === 0
    ? null
    : otherRates
        .map(({ name, basisPoints, kinds, productIds }) => `${name} ${percentOf(basisPoints)} %: ${[...kinds, ...productIds].join(', ')}`)
        .join('; ')

/**
 * A store as a row of a file; its fees in its own currency, else in `home`.
 *
 * @example storeValues(store, 'USD').get('taxPercent') // 6
 */
export function storeValues(store: Store, home: string): Map<string, CellValue> {
  const { delivery } = store
  const currency = storeCurrency(store, home)
  const amount = (minor: number): string => plainAmount(minor, currency)
  return new Map<string, CellValue>([
    ['id', store.id],
    ['name', store.name],
    ['kind', store.kind],
    ['town', store.town],
    ['country', store.country],
    ['subdivision', store.subdivision],
    ['timeZone', store.timeZone],
    ['currency', currency],
    ['pricesIncludeTax', store.pricesIncludeTax],
    ['taxPercent', percentOf(store.taxBasisPoints)],
    ['taxName', store.taxName ?? null],
    ['otherRates', ratesOf(store)],
    ['deliveryTaxed', store.deliveryTaxed],
    ['deliveryRate', store.deliveryRate ?? null],
    ['delivery', delivery.kind],
    ['deliveryFee', delivery.kind === 'pickup_only' ? null : amount(delivery.feeMinor)],
    ['freeOver', delivery.kind === 'free_over' ? amount(delivery.freeOverMinor) : null],
    ['oversizeFee', delivery.kind === 'pickup_only' ? null : amount(delivery.oversizeMinor)],
    ['returnDays', store.returnDays],
    ['warrantyMonths', store.warrantyMonths ?? null],
    ['own', store.own === true],
    ['note', store.note],
    ['archived', store.archived],
  ])
}
