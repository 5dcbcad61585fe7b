import { Hono } from 'hono'
import type { ProductPicture } from '../../core/catalog/picture.ts'
import { ok, type Result } from '../../core/result.ts'
import { audit } from '../../db/audit.ts'
import { findPicture, replacePicture, type PictureFiles } from '../../db/pictures.ts'
import { findProduct } from '../../db/products.ts'
import { PictureAnswer } from '../answers/catalog.ts'
import { signedIn, type Ctx, type Env } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { invalid, notFound } from '../http/problem.ts'
import { refused, type SaidRefusal } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { makePicture } from '../pictures/make-picture.ts'
import { createPictureDesk } from '../pictures/picture-desk.ts'
import { PICTURE_TYPES, pictureTypeOf } from '../../core/catalog/picture.ts'
import { transact } from '../transact.ts'

const tag = 'Products'
const make = createPictureDesk(makePicture)

/** Stores a picture, or that there is none now, with its line in the trail. */
function store(c: Ctx, productId: string, version: number, files: PictureFiles | null): Promise<Result<ProductPicture, SaidRefusal>> {
  return transact<Result<ProductPicture, SaidRefusal>>(c.get('db'), async (trx) => {
    const before = await findPicture(trx, productId)
    const replaced = await replacePicture(trx, productId, version, files)
    if (!replaced.ok) return replaced
    const product = await findProduct(trx, productId)
    await audit(trx, {
      actor: signedIn(c),
      action: 'product_changed',
      subject: { kind: 'product', id: productId, ...(product && { name: product.name }) },
      before: { picture: before?.hash ?? null },
      after: { picture: replaced.value.hash },
    })
    return ok(replaced.value)
  })
}

/** What the file says it is must be what it holds: one that says another thing was made to be taken for it. */
function typeFault(c: Ctx, bytes: Uint8Array): string | null {
  if (bytes.length === 0) return 'The picture is missing. Send the file itself as the body.'
  const said = (c.req.header('content-type') ?? '').split(';')[0]?.trim().toLowerCase()
  const held = pictureTypeOf(bytes)
  if (held === null || held === said) return null
  return `The file says ${said ?? 'nothing'} and holds ${held}. Send it as what it is.`
}

export const productPictures = new Hono<Env>()
  .get(
    '/:id/picture',
    operation('getPicture', { summary: 'What is known of a product’s picture', tag, answers: { 200: PictureAnswer }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const picture = await findPicture(c.get('db'), c.req.valid('param').id)
      if (picture === undefined) return notFound(c, 'product')
      c.header('ETag', etagOf(picture.version))
      return c.json(picture, 200)
    },
  )
  .put(
    '/:id/picture',
    operation('putPicture', {
      summary: 'Put a picture on a product, in place of the one it had',
      tag,
      takes: PICTURE_TYPES,
      answers: { 200: PictureAnswer },
      refuses: [404, 412, 428],
    }),
    valid('param', ById),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const bytes = new Uint8Array(await c.req.arrayBuffer())
      const fault = typeFault(c, bytes)
      if (fault !== null) return invalid(c, 'picture', fault, PICTURE_TYPES.join(', '))
      const made = await make(bytes)
      if (!made.ok) return invalid(c, 'picture', made.refusal.message, made.refusal.limit)
      const stored = await store(c, c.req.valid('param').id, version, made.value)
      if (!stored.ok) return refused(c, stored.refusal)
      c.header('ETag', etagOf(stored.value.version))
      return c.json(stored.value, 200)
    },
  )
  .delete(
    '/:id/picture',
    operation('removePicture', {
      summary: 'Take the picture off a product',
      tag,
      answers: { 200: PictureAnswer },
      refuses: [404, 412, 428],
    }),
    valid('param', ById),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const stored = await store(c, c.req.valid('param').id, version, null)
      if (!stored.ok) return refused(c, stored.refusal)
      c.header('ETag', etagOf(stored.value.version))
      return c.json(stored.value, 200)
    },
  )
