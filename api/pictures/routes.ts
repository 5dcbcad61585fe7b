import { Hono } from 'hono'
import * as z from 'zod'
import { PICTURE_SIZES } from '../../core/catalog/picture.ts'
import { strict } from '../../core/schema.ts'
import { findPictureBytes } from '../../db/pictures.ts'
import type { Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { valid } from '../http/valid.ts'
import { unchanged } from '../http/versions.ts'

const tag = 'Products'
const ByHash = strict('Path', {
  hash: z.string().regex(/^[0-9a-f]{64}$/, { error: 'A picture is named by 64 hexadecimal digits.' }),
  size: z.enum(PICTURE_SIZES, { error: `Size is one of: ${PICTURE_SIZES.join(', ')}.` }),
})
/** What a hash names never changes; only the signed-in person's own browser keeps it. */
const FOR_EVER = 'private, max-age=31536000, immutable'

export const pictures = new Hono<Env>().get(
  '/:hash/:size',
  operation('showPicture', {
    summary: 'The bytes of a picture',
    tag,
    answers: { 200: 'image/webp', 304: null },
    refuses: [404],
  }),
  valid('param', ByHash),
  async (c) => {
    const { hash, size } = c.req.valid('param')
    const bytes = await findPictureBytes(c.get('db'), hash, size)
    if (bytes === undefined) return notFound(c, 'picture')
    const etag = `"${hash}-${size}"`
    c.header('ETag', etag)
    c.header('Cache-Control', FOR_EVER)
    if (unchanged(c, etag)) return c.body(null, 304)
    c.header('Content-Type', 'image/webp')
    c.header('Content-Disposition', 'inline; filename="picture.webp"')
    return c.body(new Uint8Array(bytes), 200)
  },
)
