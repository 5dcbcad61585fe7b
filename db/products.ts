import { sql, type Kysely, type Selectable, type Transaction } from 'kysely'
import type { KitPart, Product } from '../core/catalog/product.ts'
import type { NewProduct } from '../core/catalog/schema.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database, ProductTable } from './database.ts'
import { searchProducts, type ProductFilter } from './product-search.ts'
import { constraintOf, inTransaction, isId, type Refusal } from './refusal.ts'

/** A product as someone enters it. */
export type ProductFields = NewProduct
export type ProductRefusal = Refusal<'name_taken' | 'gtin_taken' | 'part_unknown' | 'part_is_kit' | 'kind_fixed'>

export async function listProducts(db: Kysely<Database>, filter: ProductFilter): Promise<{ items: Product[]; total: number }> {
  const { rows, total } = await searchProducts(db, filter)
  return { items: await withParts(db, rows), total }
}

export async function findProduct(db: Kysely<Database>, id: string): Promise<Product | undefined> {
  if (!isId(id)) return undefined
  const { rows } = await sql<Selectable<ProductTable>>`select * from product where id = ${id}`.execute(db)
  return (await withParts(db, rows))[0]
}

/** Those that exist, archived ones too; with the products inside the kits where asked for. */
export async function getProducts(db: Kysely<Database>, ids: string[], also: { withParts?: boolean } = {}): Promise<Product[]> {
  const wanted = [...new Set(ids.filter(isId))]
  if (wanted.length === 0) return []
  const products = await withParts(db, await db.selectFrom('product').selectAll().where('id', 'in', wanted).execute())
  if (!also.withParts) return products
  const here = new Set(products.map((product) => product.id))
  const missing = products.flatMap((product) => product.parts.map((part) => part.productId)).filter((id) => !here.has(id))
  return [...products, ...(await getProducts(db, missing))]
}

export async function createProduct(db: Kysely<Database>, fields: ProductFields): Promise<Result<Product, ProductRefusal>> {
  return refusingClashes<Product, ProductRefusal>(fields, () =>
    inTransaction(db, async (trx) => {
      const fault = await faultOf(trx, fields, null)
      if (fault) return refuse(fault)
      const row = await trx.insertInto('product').values(valuesOf(fields)).returningAll().executeTakeFirstOrThrow()
      await writeParts(trx, row.id, fields.parts)
      return ok(productOf(row, fields.parts))
    }),
  )
}

/** A product's kind never changes: sightings and quotes lean on it. */
export async function updateProduct(
  db: Kysely<Database>,
  id: string,
  expectedVersion: number,
  fields: ProductFields,
): Promise<Result<Product, ProductRefusal | Refusal<'not_found' | 'stale'>>> {
  if (!isId(id)) return refuse({ code: 'not_found', message: 'There is no such product.' })
  return refusingClashes<Product, ProductRefusal | Refusal<'not_found' | 'stale'>>(fields, () =>
    inTransaction(db, async (trx) => {
      const found = await trx.selectFrom('product').select(['kind', 'version']).where('id', '=', id).forUpdate().executeTakeFirst()
      if (!found) return refuse({ code: 'not_found', message: 'There is no such product.' })
      if (found.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this product meanwhile.' })
      if (found.kind !== fields.kind)
        return refuse({ code: 'kind_fixed', field: 'kind', message: `This is a ${found.kind}. Make a new product instead.` })
      const fault = await faultOf(trx, fields, id)
      if (fault) return refuse(fault)
      return ok(await replaceProduct(trx, id, expectedVersion + 1, fields))
    }),
  )
}

/** Writes a product and its parts over what was there. The caller has locked the row and checked the fields. */
export async function replaceProduct(trx: Transaction<Database>, id: string, version: number, fields: ProductFields): Promise<Product> {
  const row = await trx
    .updateTable('product')
    .set({ ...valuesOf(fields), version })
    .where('id', '=', id)
    .returningAll()
    .executeTakeFirstOrThrow()
  if (fields.kind === 'kit') {
    await trx.deleteFrom('kit_part').where('kit_id', '=', id).execute()
    await writeParts(trx, id, fields.parts)
  }
  return productOf(row, fields.parts)
}

/** Names and numbers are looked at first, in words; two at the same moment are caught by the index. */
async function refusingClashes<Value, R extends { code: string }>(
  fields: ProductFields,
  work: () => Promise<Result<Value, R>>,
): Promise<Result<Value, R | ProductRefusal>> {
  try {
    return await work()
  } catch (error) {
    const constraint = constraintOf(error)
    if (constraint === 'product_name_once') return refuse(nameTaken(fields))
    if (constraint === 'product_gtin_once') return refuse(gtinTaken(fields.gtin, 'another product'))
    throw error
  }
}

async function faultOf(trx: Transaction<Database>, fields: ProductFields, id: string | null): Promise<ProductRefusal | undefined> {
  const others = await trx
    .selectFrom('product')
    .select(['name', 'kind', 'gtin'])
    .where((eb) =>
      eb.or([eb.and([eb('kind', '=', fields.kind), eb(sql`lower(name)`, '=', sql`lower(${fields.name})`)]), sameGtin(fields.gtin)]),
    )
    .where('id', '<>', id ?? '00000000-0000-0000-0000-000000000000')
    .execute()
  for (const other of others) {
    if (other.kind === fields.kind && other.name.toLowerCase() === fields.name.toLowerCase()) return nameTaken(fields)
    return gtinTaken(fields.gtin, other.name)
  }
  return partFault(trx, fields)
}

const sameGtin = (gtin: string | null) => sql<boolean>`(gtin is not null and lpad(gtin, 14, '0') = lpad(${gtin}::text, 14, '0'))`

async function partFault(trx: Transaction<Database>, fields: ProductFields): Promise<ProductRefusal | undefined> {
  if (fields.parts.length === 0) return undefined
  const ids = fields.parts.map((part) => part.productId).filter(isId)
  const found = ids.length === 0 ? [] : await trx.selectFrom('product').select(['id', 'kind', 'name']).where('id', 'in', ids).execute()
  for (const [index, part] of fields.parts.entries()) {
    const product = found.find((one) => one.id === part.productId)
    const field = `parts.${index}.productId`
    if (!product) return { code: 'part_unknown', field, message: 'There is no such product to put in the kit.' }
    if (product.kind === 'kit')
      return { code: 'part_is_kit', field, message: `"${product.name}" is a kit. A kit contains single products only.` }
  }
  return undefined
}

export async function writeParts(trx: Transaction<Database>, kitId: string, parts: KitPart[]): Promise<void> {
  if (parts.length === 0) return
  const ids = parts.map((part) => part.productId)
  const kinds = new Map(
    (await trx.selectFrom('product').select(['id', 'kind']).where('id', 'in', ids).execute()).map((row) => [row.id, row.kind]),
  )
  const rows = parts.map((part, position) => ({
    kit_id: kitId,
    part_id: part.productId,
    part_kind: kinds.get(part.productId) ?? 'kit',
    quantity: part.quantity,
    position,
  }))
  await trx.insertInto('kit_part').values(rows).execute()
}

export async function withParts(db: Kysely<Database>, rows: Selectable<ProductTable>[]): Promise<Product[]> {
  const kits = rows.filter((row) => row.kind === 'kit').map((row) => row.id)
  const parts =
    kits.length === 0 ? [] : await db.selectFrom('kit_part').selectAll().where('kit_id', 'in', kits).orderBy('position').execute()
  const byKit = Map.groupBy(parts, (part) => part.kit_id)
  return rows.map((row) =>
    productOf(
      row,
      (byKit.get(row.id) ?? []).map((part) => ({ productId: part.part_id, quantity: part.quantity })),
    ),
  )
}

const nameTaken = (fields: ProductFields): ProductRefusal => ({
  code: 'name_taken',
  field: 'name',
  message: `There is already a ${fields.kind.replaceAll('_', ' ')} called "${fields.name}".`,
})
const gtinTaken = (gtin: string | null, other: string): ProductRefusal => ({
  code: 'gtin_taken',
  field: 'gtin',
  message: `The number ${gtin} belongs to "${other}".`,
})

export const valuesOf = (fields: ProductFields) => ({
  kind: fields.kind,
  name: fields.name,
  maker: fields.maker,
  gtin: fields.gtin,
  oversize: fields.oversize,
  note: fields.note,
  // An import that has no such column leaves it as it is.
  ...(fields.warrantyMonths !== undefined && { warranty_months: fields.warrantyMonths }),
  spec: fields.spec,
  archived: fields.archived,
})

// The table keeps kind and spec in two columns; that they belong together was checked when they were written.
const productOf = (row: Selectable<ProductTable>, parts: KitPart[]): Product =>
  ({
    id: row.id,
    kind: row.kind,
    name: row.name,
    maker: row.maker,
    gtin: row.gtin,
    oversize: row.oversize,
    note: row.note,
    warrantyMonths: row.warranty_months,
    spec: row.spec,
    parts,
    archived: row.archived,
    version: row.version,
  }) as Product
