import { short } from '../catalog/csv-cell.ts'
import { daysBetween, type CivilDate } from '../dates.ts'
import { CONDITIONS, type Condition, type Sighting } from '../pricing/sighting.ts'
import { cellReader, plainAmount } from './cell-reader.ts'
import type { Cells, CellValue, ExchangeColumn, ReportCell } from './column.ts'

const EVIDENCE = ['none', 'tag', 'receipt', 'page'] as const
/** A sale announced for longer than a year is a misread date. */
const LONGEST_SALE_DAYS = 366
const NOTE_LENGTH = 500

const text = (heading: string, required: boolean, help: string): ExchangeColumn => ({ heading, type: 'text', required, help })
const amount = (heading: string, required: boolean, help: string): ExchangeColumn => ({ heading, type: 'amount', required, help })

export const SIGHTING_COLUMNS: readonly ExchangeColumn[] = [
  text('id', false, 'Id of the sighting. One that is here already is left as it is: a sighting is never edited. Empty makes a new one.'),
  text('productId', false, 'Id of the product. Empty: it is found by its number, else by its name.'),
  text('gtin', false, 'Number under the barcode of the product.'),
  text('kind', false, 'Kind of the product, where products of two kinds have one name.'),
  text('product', true, 'Name of the product as the catalog has it.'),
  text('storeId', false, 'Id of the store. Empty: it is found by its name.'),
  text('store', true, 'Name of the store as it stands in the list of stores.'),
  text('condition', true, `${CONDITIONS.join(', ')}.`),
  amount('price', true, 'What one costs, in the currency of the next column: 159.00. As the store prints it, with or without tax.'),
  text('currency', false, 'The currency of this place, like USD. Another one is refused. Empty is this one.'),
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
  priceMinor: number
  printedRegularMinor: number | null
  seenOn: CivilDate
  lastDay: CivilDate | null
  evidence: Sighting['evidence']
  note: string | null
}

/** A sighting from its cells; null where something in them is wrong, which `report` is told. What is here already is the caller's to look up. */
export function readSightingRow(cells: Cells, currency: string, report: ReportCell): SightingRow | null {
  const read = cellReader(cells, report)
  read.need(['product', 'store', 'condition', 'price', 'seenOn'], 'sighting')
  const own = read.text('currency')
  if (own !== null && own.toUpperCase() !== currency)
    read.fault('currency', `${short(own)} is not the currency of this place, which is ${currency}.`)
  const [product, store, condition] = [read.text('product'), read.text('store'), read.oneOf('condition', CONDITIONS)]
  const [priceMinor, seenOn, lastDay] = [read.amount('price', currency), read.day('seenOn'), read.day('lastDay')]
  const row = {
    id: read.id('id'),
    productId: read.id('productId'),
    gtin: read.text('gtin')?.replace(/[\s-]/g, '') ?? null,
    kind: read.text('kind')?.toLowerCase() ?? null,
    storeId: read.id('storeId'),
    printedRegularMinor: read.amount('printedRegular', currency),
    evidence: read.oneOf('evidence', EVIDENCE) ?? 'none',
    note: read.text('note', NOTE_LENGTH),
    lastDay,
  }
  if (product === null || store === null || condition === null || priceMinor === null || seenOn === null) return null
  const words = lastDayFault(condition, seenOn, lastDay)
  if (words !== null) read.fault('lastDay', words)
  return read.isSound() ? { ...row, product, store, condition, priceMinor, seenOn } : null
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
export function sightingValues({ priceMinor, printedRegularMinor, ...row }: ExportedSighting, currency: string): Map<string, CellValue> {
  return new Map<string, CellValue>([
    ...Object.entries(row),
    ['price', plainAmount(priceMinor, currency)],
    ['printedRegular', printedRegularMinor === null ? null : plainAmount(printedRegularMinor, currency)],
    ['currency', currency],
  ])
}
