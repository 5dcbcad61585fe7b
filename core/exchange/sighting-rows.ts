import { short } from '../catalog/csv-cell.ts'
import { daysBetween, type CivilDate } from '../dates.ts'
import { ABOVE_ITS_TAG, isAboveItsTag } from '../pricing/printed-regular.ts'
import { CONDITIONS, type Condition, type Sighting } from '../pricing/sighting.ts'
import { cellReader, plainAmount, type CellReader } from './cell-reader.ts'
import type { Cells, CellValue, ExchangeColumn, ReportCell } from './column.ts'

const EVIDENCE = ['none', 'tag', 'receipt', 'page'] as const
/** A sale announced for longer than a year is a misread date. */
const LONGEST_SALE_DAYS = 366
const NOTE_LENGTH = 500
const CURRENCY = /^[A-Z]{3}$/

const text = (heading: string, required: boolean, help: string): ExchangeColumn => ({ heading, type: 'text', required, help })
const amount = (heading: string, required: boolean, help: string): ExchangeColumn => ({ heading, type: 'amount', required, help })

export const SIGHTING_COLUMNS: readonly ExchangeColumn[] = [
  text('id', false, 'Id of the sighting. One that is here already is left as it is: a sighting is never edited. Empty makes a new one.'),
  text('productId', false, 'Id of the product. Empty, or of another install: it is found by its number, else by its name.'),
  text('gtin', false, 'Number under the barcode of the product.'),
  text('kind', false, 'Kind of the product, where products of two kinds have one name.'),
  text('product', true, 'Name of the product as the catalog has it.'),
  text('storeId', false, 'Id of the store. Empty, or of another install: it is found by its name.'),
  text('store', true, 'Name of the store as it stands in the list of stores.'),
  text('condition', true, `${CONDITIONS.join(', ')}.`),
  amount('price', true, 'What one costs, in the currency of the next column: 159.00. As the store prints it, with or without tax.'),
  text('currency', false, 'The currency that the store prints its prices in, like USD. Another one is refused. Empty is the store’s.'),
  amount('printedRegular', false, 'The regular price printed beside it ("was").'),
  text('seenOn', true, 'Day it was seen, like 2026-10-20. Not more than two years ago.'),
  text('lastDay', false, 'Last day of a sale or clearance, where it is printed.'),
  text('evidence', false, `${EVIDENCE.join(', ')}. Empty is none.`),
  text('note', false, `Note, at most ${NOTE_LENGTH} characters. Nothing about a person belongs in it.`),
  {
    heading: 'counts',
    type: 'flag',
    required: false,
    told: true,
    help: 'yes where it counts, no where it waits for a second member or was disputed. Only told: an import judges anew.',
  },
]

/** A sighting as a file has it; product and store are still what the file calls them. */
export interface SightingRow {
  id: string | null
  productId: string | null
  gtin: string | null
  kind: string | null
  product: string
  storeId: string | null
  store: string
  condition: Condition
  /** ISO 4217, of the store's prices: what the amounts are in. */
  currency: string
  priceMinor: number
  printedRegularMinor: number | null
  seenOn: CivilDate
  lastDay: CivilDate | null
  evidence: Sighting['evidence']
  note: string | null
}

/** The currency of a store that a file names, by its id, else by its name in any case; undefined where there is no such store. */
export type FindStoreCurrency = (storeId: string | null, name: string) => string | undefined

/**
 * A sighting from its cells, its amounts in the currency of its store, or in the one the row says, else `home`, where there is no such store; null where something in them is wrong, which `report` is told.
 * What is here already is the caller's to look up, and so is a store that is not.
 */
export function readSightingRow(cells: Cells, home: string, findCurrency: FindStoreCurrency, report: ReportCell): SightingRow | null {
  const read = cellReader(cells, report)
  read.need(['product', 'store', 'condition', 'price', 'seenOn'], 'sighting')
  const [product, store, condition] = [read.text('product'), read.text('store'), read.oneOf('condition', CONDITIONS)]
  const storeId = read.id('storeId')
  const currency = currencyFor(read, home, findCurrency(storeId, store ?? ''), store)
  const [priceMinor, seenOn, lastDay] = [read.amount('price', currency), read.day('seenOn'), read.day('lastDay')]
  const row = {
    id: read.id('id'),
    productId: read.id('productId'),
    gtin: read.text('gtin')?.replace(/[\s-]/g, '') ?? null,
    kind: read.text('kind')?.toLowerCase() ?? null,
    storeId,
    currency,
    printedRegularMinor: read.amount('printedRegular', currency),
    evidence: read.oneOf('evidence', EVIDENCE) ?? 'none',
    note: read.text('note', NOTE_LENGTH),
    lastDay,
  }
  if (product === null || store === null || condition === null || priceMinor === null || seenOn === null) return null
  const words = lastDayFault(condition, seenOn, lastDay)
  if (words !== null) read.fault('lastDay', words)
  if (isAboveItsTag({ ...row, condition, priceMinor })) read.fault('printedRegular', ABOVE_ITS_TAG)
  return read.isSound() ? { ...row, product, store, condition, priceMinor, seenOn } : null
}

function currencyFor(read: CellReader, home: string, ofStore: string | undefined, store: string | null): string {
  const said = read.text('currency')?.toUpperCase() ?? null
  if (said !== null && !CURRENCY.test(said))
    read.fault('currency', `"${short(said)}" is not a currency. Write its three letters, like USD.`)
  else if (said !== null && ofStore !== undefined && said !== ofStore)
    read.fault('currency', `${said} is not the currency of ${store ?? 'this store'}, whose prices are in ${ofStore}.`)
  return ofStore ?? (said !== null && CURRENCY.test(said) ? said : home)
}

function lastDayFault(condition: Condition, seenOn: CivilDate, lastDay: CivilDate | null): string | null {
  if (lastDay === null) return null
  if (condition === 'shelf' || condition === 'used')
    return 'A last day belongs to a sale or a clearance. Take it out, or change the condition.'
  const days = daysBetween(seenOn, lastDay)
  if (days < 0) return `The last day ${lastDay} is before the day it was seen, ${seenOn}. Check the two dates.`
  return days > LONGEST_SALE_DAYS ? `The last day is ${days} days after it was seen. At most ${LONGEST_SALE_DAYS}. Check the year.` : null
}

/** A sighting with the names that an export tells, and whether it counts. */
export interface ExportedSighting extends Omit<SightingRow, 'id'> {
  id: string
  counts: boolean
}

/** Reporters are people, and stay out of the file. */
export function sightingValues({ priceMinor, printedRegularMinor, ...row }: ExportedSighting): Map<string, CellValue> {
  return new Map<string, CellValue>([
    ...Object.entries(row),
    ['price', plainAmount(priceMinor, row.currency)],
    ['printedRegular', printedRegularMinor === null ? null : plainAmount(printedRegularMinor, row.currency)],
  ])
}
