import type { Kind } from '../../../core/catalog/kinds.ts'
import type { DeliveryRule, Store, StoreRate } from '../../../core/catalog/store.ts'
import { storeCurrency } from '../../../core/pricing/foreign-stores.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import type { StoreBody } from '../client/stores.ts'
import { RATE_STEPS } from '../../../core/money.ts'
import { countryName, NO_COUNTRY_WORDS } from '../../../core/country-name.ts'
import { readFigure, readMoney, spellMoney, type FigureReading } from '../parts/figure.ts'
import { sayPercent } from './store-words.ts'

/** A further rate as it is typed. */
export interface RateDraft {
  name: string
  percent: string
  kinds: Kind[]
  productIds: string[]
}

/** A store as it is typed. */
export interface StoreDraft {
  name: string
  kind: Store['kind']
  town: string
  country: string
  subdivision: string
  timeZone: string
  taxPercent: string
  taxName: string
  rates: RateDraft[]
  pricesIncludeTax: boolean
  deliveryTaxed: boolean
  /** Name of a rate; empty: the usual one. */
  deliveryRate: string
  deliveryKind: DeliveryRule['kind']
  fee: string
  freeOver: string
  oversize: string
  returnDays: string
  warrantyMonths: string
  /** Empty: the install's. */
  currency: string
  own: boolean
  note: string
  archived: boolean
}

/** A new store stands where the install does, until someone says otherwise. */
export const emptyStore = (place: { country: string; timeZone: string }): StoreDraft => ({
  name: '', kind: 'local', town: '', country: place.country, subdivision: '', timeZone: place.timeZone, taxPercent: '', taxName: '', rates: [], pricesIncludeTax: false, deliveryTaxed: false, deliveryRate: '',
  deliveryKind: 'pickup_only', fee: '', freeOver: '', oversize: '', returnDays: '', warrantyMonths: '', currency: '', own: false, note: '', archived: false,
}) // prettier-ignore

export function draftOfStore(store: Store, home: string, { decimal }: Pick<ReaderUnits, 'decimal'>): StoreDraft {
  const { delivery } = store
  const currency = storeCurrency(store, home)
  const money = (minor: number): string => spellMoney(minor, currency, decimal)
  return {
    name: store.name,
    kind: store.kind,
    town: store.town ?? '',
    country: store.country,
    subdivision: store.subdivision ?? '',
    timeZone: store.timeZone,
    taxPercent: sayPercent(store.taxBasisPoints).replace('.', decimal),
    taxName: store.taxName ?? '',
    rates: (store.otherRates ?? []).map(({ basisPoints, ...rate }) => ({
      ...rate,
      percent: sayPercent(basisPoints).replace('.', decimal),
    })),
    pricesIncludeTax: store.pricesIncludeTax,
    deliveryTaxed: store.deliveryTaxed,
    deliveryRate: store.deliveryRate ?? '',
    deliveryKind: delivery.kind,
    fee: delivery.kind === 'pickup_only' ? '' : money(delivery.feeMinor),
    freeOver: delivery.kind === 'free_over' ? money(delivery.freeOverMinor) : '',
    oversize: delivery.kind === 'pickup_only' || delivery.oversizeMinor === 0 ? '' : money(delivery.oversizeMinor),
    returnDays: store.returnDays === null ? '' : String(store.returnDays),
    warrantyMonths: store.warrantyMonths == null ? '' : String(store.warrantyMonths),
    currency: store.currency ?? '',
    own: store.own ?? false,
    note: store.note ?? '',
    archived: store.archived,
  }
}

type Faults = Record<string, string>

function readDelivery(draft: StoreDraft, currency: string, decimal: ReaderUnits['decimal'], faults: Faults): DeliveryRule {
  if (draft.deliveryKind === 'pickup_only') return { kind: 'pickup_only' }
  const amount = (text: string, field: string, label: string, least: number): number => {
    const read = readMoney(text, currency, label, least, decimal)
    if (read.fault !== null) faults[field] = read.fault
    else if (read.value === null) faults[field] = `${label} is missing. Write 0 where nothing is charged.`
    return read.value ?? 0
  }
  const feeMinor = amount(draft.fee, 'delivery.feeMinor', 'Delivery fee', 0)
  // A surcharge that nobody named is none.
  const oversizeMinor = draft.oversize.trim() === '' ? 0 : amount(draft.oversize, 'delivery.oversizeMinor', 'Oversize surcharge', 0)
  if (draft.deliveryKind === 'flat') return { kind: 'flat', feeMinor, oversizeMinor }
  return { kind: 'free_over', feeMinor, oversizeMinor, freeOverMinor: amount(draft.freeOver, 'delivery.freeOverMinor', 'Free from', 1) }
}

/** Highest consumption tax that the server accepts; above it a decimal has slipped. */
const MOST_TAX_PERCENT = 30
/** Tax is kept in steps of a ten-thousandth of a per cent; rates in force have three decimals at most. */
const TAX_STEPS = 10_000

function readTax(text: string, reader: ReaderUnits, label = 'Tax'): FigureReading {
  const read = readFigure(text, { label, unit: 'percent', min: 0, max: MOST_TAX_PERCENT }, reader)
  if (read.fault !== null) return read
  if (read.value === null) return { value: null, fault: `${label} is missing. Write 0 where none is charged.` }
  const steps = Math.round(read.value * TAX_STEPS)
  if (Math.abs(read.value * TAX_STEPS - steps) > 1e-3) return { value: null, fault: `${label} has at most 4 decimals, like 8.875.` }
  return { value: steps / RATE_STEPS, fault: null }
}

function readRates(rates: readonly RateDraft[], reader: ReaderUnits, faults: Faults): StoreRate[] {
  return rates.map(({ name, percent, kinds, productIds }, at) => {
    const read = readTax(percent, reader, 'Rate')
    if (read.fault !== null) faults[`otherRates.${at}.basisPoints`] = read.fault
    if (name.trim() === '') faults[`otherRates.${at}.name`] = 'Name of the rate is empty. Write it as the receipt does.'
    if (kinds.length + productIds.length === 0) faults[`otherRates.${at}.kinds`] = 'Nothing takes this rate. Tick a kind, or add a product.'
    return { name: name.trim(), basisPoints: read.value ?? 0, kinds, productIds }
  })
}

/** The body to send, with what is wrong by field. Tax is typed in per cent and sent in hundredths of it: "8.875" is 887.5. */
export function readStoreDraft(draft: StoreDraft, home: string, reader: ReaderUnits): { body: StoreBody; faults: Faults } {
  const faults: Faults = {}
  const currency = draft.currency.trim().toUpperCase() || home
  const orNull = (text: string): string | null => (text.trim() === '' ? null : text.trim())
  const tax = readTax(draft.taxPercent, reader)
  if (tax.fault !== null) faults['taxBasisPoints'] = tax.fault
  const days = readFigure(draft.returnDays, { label: 'Return days', unit: 'count', min: 0, max: 3650, whole: true }, reader)
  if (days.fault !== null) faults['returnDays'] = days.fault
  const months = readFigure(draft.warrantyMonths, { label: 'Warranty', unit: 'count', min: 0, max: 600, whole: true }, reader)
  if (months.fault !== null) faults['warrantyMonths'] = months.fault
  if (draft.name.trim() === '') faults['name'] = 'Name is empty. Write the name on the door.'
  if (countryName(draft.country) === null) faults['country'] = NO_COUNTRY_WORDS
  const body: StoreBody = {
    name: draft.name.trim(),
    kind: draft.kind,
    town: orNull(draft.town),
    country: draft.country.trim().toUpperCase(),
    subdivision: orNull(draft.subdivision),
    timeZone: draft.timeZone.trim(),
    taxBasisPoints: tax.value ?? 0,
    taxName: orNull(draft.taxName),
    otherRates: readRates(draft.rates, reader, faults),
    pricesIncludeTax: draft.pricesIncludeTax,
    deliveryTaxed: draft.deliveryTaxed,
    deliveryRate: draft.rates.some(({ name }) => name.trim() === draft.deliveryRate) ? orNull(draft.deliveryRate) : null,
    delivery: readDelivery(draft, currency, reader.decimal, faults),
    returnDays: days.value,
    warrantyMonths: months.value,
    currency: currency === home ? null : currency,
    own: draft.own,
    note: orNull(draft.note),
    archived: draft.archived,
  }
  return { body, faults }
}
