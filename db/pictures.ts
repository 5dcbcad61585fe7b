import type { Kysely, Transaction } from 'kysely'
import type { PictureSize, ProductPicture } from '../core/catalog/picture.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId, type Refusal } from './refusal.ts'

/** A picture as it is stored: both sizes, and the hash of the large one. */
export interface PictureFiles {
  hash: string
  small: Uint8Array
  large: Uint8Array
  /** Of the large size, pixels. */
  width: number
  height: number
}
type PictureRefusal = Refusal<'not_found' | 'stale'>

const NONE: ProductPicture = { hash: null, width: null, height: null, version: 0 }

/** What is known of a product's picture, at version 0 where there never was one; undefined where there is no such product. */
export async function findPicture(db: Kysely<Database>, productId: string): Promise<ProductPicture | undefined> {
  if (!isId(productId)) return undefined
  const row = await db
    .selectFrom('product')
    .leftJoin('product_picture as picture', 'picture.product_id', 'product.id')
    .select(['picture.hash', 'picture.width', 'picture.height', 'picture.version'])
    .where('product.id', '=', productId)
    .executeTakeFirst()
  if (row === undefined) return undefined
  return row.version === null ? NONE : { ...row, version: row.version }
}

/** The bytes of a picture that some product has now. */
export async function findPictureBytes(db: Kysely<Database>, hash: string, size: PictureSize): Promise<Uint8Array | undefined> {
  const row = await db
    .selectFrom('product_picture')
    .select(`product_picture.${size} as bytes`)
    .where('hash', '=', hash)
    .limit(1)
    .executeTakeFirst()
  return row?.bytes ?? undefined
}

/** Hashes by product, of those that have a picture. */
export async function pictureHashes(db: Kysely<Database>, productIds: readonly string[]): Promise<Record<string, string>> {
  const known = productIds.filter(isId)
  if (known.length === 0) return {}
  const rows = await db.selectFrom('product_picture').select(['product_id', 'hash']).where('product_id', 'in', known).execute()
  return Object.fromEntries(rows.flatMap(({ product_id, hash }) => (hash === null ? [] : [[product_id, hash]])))
}

/** Puts a picture in place of the one of a version, or takes it away (`files` null). Locks the product's row, so that two do not both win. */
export async function replacePicture(
  trx: Transaction<Database>,
  productId: string,
  expectedVersion: number,
  files: PictureFiles | null,
): Promise<Result<ProductPicture, PictureRefusal>> {
  const missing: PictureRefusal = { code: 'not_found', message: 'There is no such product.' }
  if (!isId(productId)) return refuse(missing)
  const product = await trx.selectFrom('product').select('id').where('id', '=', productId).forUpdate().executeTakeFirst()
  if (product === undefined) return refuse(missing)
  const before = (await findPicture(trx, productId)) ?? NONE
  if (before.version !== expectedVersion) return refuse({ code: 'stale', message: 'Someone else changed this picture meanwhile.' })
  const values = { ...(files ?? { hash: null, small: null, large: null, width: null, height: null }), version: before.version + 1 }
  await trx
    .insertInto('product_picture')
    .values({ product_id: productId, ...values })
    .onConflict((conflict) => conflict.column('product_id').doUpdateSet(values))
    .execute()
  return ok({ hash: values.hash, width: values.width, height: values.height, version: values.version })
}
