import { setImmediate as breathe } from 'node:timers/promises'
import { isDeepStrictEqual } from 'node:util'
import type { Transaction } from 'kysely'
import type { Product } from '../core/catalog/product.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { replaceProduct, valuesOf, withParts, writeParts, type ProductFields } from './products.ts'
import { isId, type Refusal } from './refusal.ts'

export interface ImportCounts {
  creates: number
  updates: number
  unchanged: number
}
/** `row` counts the rows given from 0. */
export type ImportRefusal = Refusal<'repeated' | 'name_taken' | 'kind_fixed' | 'part_unknown' | 'part_is_kit'> & { row: number }

/** Rows a statement carries: 500 of nine values stay well under the 65 535 parameters that one may have. */
const BATCH = 500

/**
 * Writes products in one go: one with a number known here, else with a kind and name known here, is changed; any other is new.
 * Must run in a transaction, which the caller rolls back for a dry run and after a refusal: rows before the refused one may have been written.
 *
 * Errors: the first row that cannot be written, and why.
 */
export async function importProducts(trx: Transaction<Database>, rows: ProductFields[]): Promise<Result<ImportCounts, ImportRefusal>> {
  const catalog = await catalogOf(trx)
  const planned = plan(catalog, rows)
  if (!planned.ok) return planned
  const { creates, updates } = planned.value
  for (let start = 0; start < creates.length; start += BATCH) {
    // The embedded engine answers without ever leaving this turn of the event loop: other requests get theirs here.
    await breathe()
    const batch = creates.slice(start, start + BATCH)
    const written = await trx.insertInto('product').values(batch.map(valuesOf)).returning(['id', 'kind', 'name']).execute()
    const ids = new Map(written.map((row) => [nameKey(row), row.id]))
    for (const kit of batch.filter((fields) => fields.kind === 'kit')) await writeParts(trx, ids.get(nameKey(kit)) ?? '', kit.parts)
  }
  for (const [index, { before, fields }] of updates.entries()) {
    if (index % 50 === 0) await breathe()
    await replaceProduct(trx, before.id, before.version + 1, fields)
  }
  return ok({ creates: creates.length, updates: updates.length, unchanged: rows.length - creates.length - updates.length })
}

interface Catalog {
  byId: Map<string, Product>
  byName: Map<string, Product>
  byNumber: Map<string, Product>
}

const nameKey = (product: { kind: string; name: string }): string => `${product.kind} ${product.name.toLowerCase()}`
/** Twelve digits and the same with leading zeros are one number. */
const numberKey = (gtin: string): string => gtin.padStart(14, '0')

/** Locked, so that nobody edits a product between the comparison and the writing. */
async function catalogOf(trx: Transaction<Database>): Promise<Catalog> {
  const products = await withParts(trx, await trx.selectFrom('product').selectAll().forUpdate().execute())
  return {
    byId: new Map(products.map((product) => [product.id, product])),
    byName: new Map(products.map((product) => [nameKey(product), product])),
    byNumber: new Map(products.flatMap((product) => (product.gtin === null ? [] : [[numberKey(product.gtin), product]]))),
  }
}

interface Plan {
  creates: ProductFields[]
  updates: Array<{ before: Product; fields: ProductFields }>
}

function plan(catalog: Catalog, rows: ProductFields[]): Result<Plan, ImportRefusal> {
  const result: Plan = { creates: [], updates: [] }
  const namesHere = new Map<string, number>()
  const numbersHere = new Map<string, number>()
  for (const [row, fields] of rows.entries()) {
    const number = fields.gtin === null ? undefined : numberKey(fields.gtin)
    const twin = namesHere.get(nameKey(fields)) ?? (number === undefined ? undefined : numbersHere.get(number))
    if (twin !== undefined)
      return refuse({ code: 'repeated', row, field: 'name', message: `The same product stands in an earlier row (${twin + 1}).` })
    namesHere.set(nameKey(fields), row)
    if (number !== undefined) numbersHere.set(number, row)
    const fault = faultOf(catalog, fields)
    if (fault) return refuse({ ...fault, row })
    const before = matchOf(catalog, fields)
    if (!before) result.creates.push(fields)
    else if (differs(before, fields)) result.updates.push({ before, fields })
  }
  return ok(result)
}

const matchOf = (catalog: Catalog, fields: ProductFields): Product | undefined =>
  (fields.gtin === null ? undefined : catalog.byNumber.get(numberKey(fields.gtin))) ?? catalog.byName.get(nameKey(fields))

function faultOf(catalog: Catalog, fields: ProductFields): Omit<ImportRefusal, 'row'> | undefined {
  const match = matchOf(catalog, fields)
  if (match && match.kind !== fields.kind) {
    return { code: 'kind_fixed', field: 'gtin', message: `The number ${fields.gtin} belongs to "${match.name}", which is a ${match.kind}.` }
  }
  const namesake = catalog.byName.get(nameKey(fields))
  if (match && namesake && namesake.id !== match.id) {
    return {
      code: 'name_taken',
      field: 'name',
      message: `"${fields.name}" is another product than the one with the number ${fields.gtin}.`,
    }
  }
  for (const part of fields.parts) {
    const product = isId(part.productId) ? catalog.byId.get(part.productId) : undefined
    if (!product) return { code: 'part_unknown', field: 'parts', message: 'There is no such product to put in the kit.' }
    if (product.kind === 'kit')
      return { code: 'part_is_kit', field: 'parts', message: `"${product.name}" is a kit. A kit contains single products only.` }
  }
  return undefined
}

function differs(before: Product, fields: ProductFields): boolean {
  const { id: _id, version: _version, ...stored } = before
  const { warrantyMonths = stored.warrantyMonths } = fields
  return !isDeepStrictEqual(withoutGaps(stored), withoutGaps({ ...fields, warrantyMonths }))
}

/** A spec field left out and one that says undefined are the same. */
const withoutGaps = (fields: Omit<Product, 'id' | 'version'>): unknown => ({ ...fields, spec: JSON.parse(JSON.stringify(fields.spec)) })
