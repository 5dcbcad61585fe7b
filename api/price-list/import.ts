import type { Kysely, Transaction } from 'kysely'
import type { ImportFault, ImportReport } from '../../core/catalog/import-report.ts'
import type { CivilDate } from '../../core/dates.ts'
import { MOST_LIST_FAULTS, priceListRows, type PriceListRow } from '../../core/pricing/price-list-csv.ts'
import { ok, refuse } from '../../core/result.ts'
import { audit } from '../../db/audit.ts'
import type { Database } from '../../db/database.ts'
import { listables, writeListings, type Listable, type Listing } from '../../db/price-list-import.ts'
import { readRecords } from '../products/csv-records.ts'
import { transact } from '../transact.ts'

type Planned = { listings: Listing[]; faults: ImportFault[] }

const numberKey = (gtin: string): string => gtin.padStart(14, '0')

/** Each row with its product: by stock number, else by GTIN, else by its name. A number that contradicts another is a fault. */
function plan(rows: readonly PriceListRow[], products: readonly Listable[]): Planned {
  const byNumber = new Map(products.flatMap((each) => (each.stockNumber === null ? [] : [[each.stockNumber.toLowerCase(), each]])))
  const byGtin = new Map(products.flatMap((each) => (each.gtin === null ? [] : [[numberKey(each.gtin), each]])))
  const byName = Map.groupBy(products, ({ name }) => name.toLowerCase())
  const seen = new Map<string, number>()
  const planned: Planned = { listings: [], faults: [] }
  for (const row of rows) {
    const fault = (column: string, message: string): void => void planned.faults.push({ row: row.row, column, message })
    const named = row.product === null ? [] : (byName.get(row.product.toLowerCase()) ?? [])
    const holder = row.stockNumber === null ? undefined : byNumber.get(row.stockNumber.toLowerCase())
    const found = (row.gtin === null ? undefined : byGtin.get(numberKey(row.gtin))) ?? holder ?? (named.length === 1 ? named[0] : undefined)
    if (!found) {
      if (named.length > 1) fault('product', `${named.length} products are called "${row.product}". Say which by its GTIN or stock number.`)
      else
        fault(
          row.gtin === null && row.product !== null ? 'product' : row.gtin === null ? 'stock number' : 'gtin',
          'This product is not in the catalog. Add it first.',
        )
      continue
    }
    if (holder && holder.id !== found.id) fault('stock number', `The stock number ${row.stockNumber} belongs to "${holder.name}".`)
    const twin = seen.get(`${found.id} ${row.validFrom}`)
    if (twin !== undefined) fault('valid from', `Row ${twin} has a price of this product from the same day.`)
    seen.set(`${found.id} ${row.validFrom}`, row.row)
    if (row.stockNumber !== null) byNumber.set(row.stockNumber.toLowerCase(), found)
    const { stockNumber, stockCount, validFrom, priceMinor } = row
    planned.listings.push({ productId: found.id, stockNumber, stockCount, validFrom, priceMinor })
  }
  return planned
}

async function write(trx: Transaction<Database>, rows: readonly PriceListRow[], actor: { id: string }) {
  const { listings, faults } = plan(rows, await listables(trx))
  if (faults.length > 0) return refuse({ code: 'faulty' as const, faults })
  const counts = await writeListings(trx, listings)
  await audit(trx, { actor, action: 'prices_imported', subject: { kind: 'product' }, after: counts })
  return ok(counts)
}

/** Reads a price list and stores all of it, or with any fault, or on a dry run, nothing. */
export async function importPriceList(
  db: Kysely<Database>,
  actor: { id: string },
  { csv, dryRun }: { csv: string; dryRun: boolean },
  { currency, today }: { currency: string; today: CivilDate },
): Promise<ImportReport> {
  const nothing = { dryRun, applied: false, rows: 0, creates: 0, updates: 0, unchanged: 0, more: false }
  const told = (faults: ImportFault[], rows: number): ImportReport => ({
    ...nothing,
    rows,
    faults: faults.slice(0, MOST_LIST_FAULTS),
    more: faults.length > MOST_LIST_FAULTS,
  })
  const records = await readRecords(csv)
  if (!records.ok) return told([records.refusal.fault], 0)
  const file = priceListRows(records.value, { currency, today })
  if (file.faults.length > 0) return told(file.faults, file.records)
  const written = await transact(db, (trx) => write(trx, file.rows, actor), !dryRun)
  if (!written.ok) return told(written.refusal.faults, file.records)
  return { ...nothing, ...written.value, rows: file.records, applied: !dryRun, faults: [] }
}
