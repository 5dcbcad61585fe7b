import { setImmediate as breathe } from 'node:timers/promises'
import type { Kysely, Transaction } from 'kysely'
import type { z } from 'zod'
import type { ImportFault, ImportReport } from '../../core/catalog/import-report.ts'
import type { Kind } from '../../core/catalog/kinds.ts'
import type { Product } from '../../core/catalog/product.ts'
import type { ProductRow } from '../../core/catalog/product-csv.ts'
import { MOST_FAULTS, productRowSteps, type ProductFile } from '../../core/catalog/product-csv.ts'
import type { ImportInput } from '../../core/catalog/schema.ts'
import { ok, refuse, type Result } from '../../core/result.ts'
import type { Database } from '../../db/database.ts'
import { audit } from '../../db/audit.ts'
import { importProducts } from '../../db/product-import.ts'
import type { ProductFields } from '../../db/products.ts'
import { listProducts, updateProduct } from '../../db/products.ts'
import { transact } from '../transact.ts'
import { readRecords } from './csv-records.ts'
import { fieldsOf, indexCatalog } from './import-rows.ts'

type Counts = Pick<ImportReport, 'creates' | 'updates' | 'unchanged'>
type Faulty = { code: 'faulty'; faults: ImportFault[] }

const faulty = (faults: ImportFault[]): { ok: false; refusal: Faulty } => refuse({ code: 'faulty', faults })

async function wholeCatalog(trx: Transaction<Database>): Promise<Product[]> {
  const all = { limit: 10_000_000, offset: 0 }
  const [current, archived] = [await listProducts(trx, { ...all, archived: false }), await listProducts(trx, { ...all, archived: true })]
  return [...current.items, ...archived.items]
}

interface Planned {
  row: ProductRow
  fields: ProductFields
  match: Product | undefined
}

/** Rows that name their product by id are changed one by one: they alone may give it another name. */
async function updateById(trx: Transaction<Database>, planned: Planned[]): Promise<Result<Counts, Faulty>> {
  const counts = { creates: 0, updates: 0, unchanged: 0 }
  for (const { row, fields, match } of planned) {
    if (match === undefined) continue
    const { id, version, ...stored } = match
    if (JSON.stringify(sorted(stored)) === JSON.stringify(sorted(fields))) counts.unchanged += 1
    else {
      const updated = await updateProduct(trx, id, version, fields)
      if (!updated.ok) return faulty([{ row: row.row, column: updated.refusal.field ?? null, message: updated.refusal.message }])
      counts.updates += 1
    }
  }
  return ok(counts)
}

/** The same object with its keys in order, at every depth. */
function sorted(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(sorted)
  if (typeof value !== 'object' || value === null) return value
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)).map(([key, inner]) => [key, sorted(inner)])) // prettier-ignore
}

async function store(trx: Transaction<Database>, rows: ProductRow[]): Promise<Result<Counts, Faulty>> {
  const catalog = indexCatalog(await wholeCatalog(trx))
  const read = rows.map((row) => ({ row, outcome: fieldsOf(catalog, row) }))
  // Each step over 50 000 rows takes a tenth of a second: others are answered between them.
  await breathe()
  const faults = read.flatMap(({ outcome }) => ('fault' in outcome ? [outcome.fault] : []))
  if (faults.length > 0) return faulty(faults)
  const planned = read.flatMap(({ row, outcome }) => ('fault' in outcome ? [] : [{ row, ...outcome }]))
  const byId = await updateById(trx, planned.filter(({ row }) => row.id !== null)) // prettier-ignore
  if (!byId.ok) return byId
  const others = planned.filter(({ row }) => row.id === null)
  await breathe()
  const imported = await importProducts(trx, others.map(({ fields }) => fields)) // prettier-ignore
  if (!imported.ok) {
    const { row, field, message } = imported.refusal
    return faulty([{ row: others[row]?.row.row ?? 1, column: field ?? null, message }])
  }
  const { creates, updates, unchanged } = imported.value
  return ok({ creates, updates: updates + byId.value.updates, unchanged: unchanged + byId.value.unchanged })
}

/** The rows of the records; others are answered between the steps. */
async function readInTurns(records: string[][], kind: Kind): Promise<ProductFile> {
  const steps = productRowSteps(records, kind)
  for (;;) {
    const { done, value } = steps.next()
    if (done === true) return value
    await breathe()
  }
}

/** Reads a CSV of products and stores all of it, or with any fault, or on a dry run, nothing. */
export async function importCsv(
  db: Kysely<Database>,
  actor: { id: string },
  { kind, csv, dryRun }: z.output<typeof ImportInput>,
): Promise<ImportReport> {
  const nothing = { dryRun, applied: false, rows: 0, creates: 0, updates: 0, unchanged: 0, more: false }
  const records = await readRecords(csv)
  if (!records.ok) return { ...nothing, faults: [records.refusal.fault] }
  const file = await readInTurns(records.value, kind)
  if (file.faults.length > 0) return { ...nothing, rows: file.records, faults: file.faults, more: file.more }
  await breathe()
  const stored = await transact(
    db,
    async (trx) => {
      const outcome = await store(trx, file.rows)
      if (outcome.ok)
        await audit(trx, { actor, action: 'products_imported', subject: { kind: 'product' }, after: { kind, ...outcome.value } })
      return outcome
    },
    !dryRun,
  )
  if (!stored.ok) {
    const { faults } = stored.refusal
    return { ...nothing, rows: file.records, faults: faults.slice(0, MOST_FAULTS), more: faults.length > MOST_FAULTS }
  }
  return { ...nothing, ...stored.value, rows: file.records, applied: !dryRun, faults: [] }
}
