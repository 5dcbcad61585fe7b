import { createHash } from 'node:crypto'
import sharp, { type SharpOptions } from 'sharp'
import {
  LEAST_PICTURE_SIDE_PX, MOST_PICTURE_PIXELS, otherFileWords, pictureTypeOf,
} from '../../core/catalog/picture.ts' // prettier-ignore
import { ok, refuse, type Result } from '../../core/result.ts'
import type { PictureFiles } from '../../db/pictures.ts'

// Only the three readers that are wanted: what is not compiled in or is switched off cannot be attacked.
sharp.block({ operation: ['VipsForeignLoad'] })
sharp.unblock({ operation: ['VipsForeignLoadJpegBuffer', 'VipsForeignLoadPngBuffer', 'VipsForeignLoadWebpBuffer'] })
/** One thread a picture: the desk says how many are made at once. Nothing is kept between them. */
sharp.concurrency(1)
sharp.cache(false)

/** Twice the 64 px that a list shows, for screens of double density, and some air. */
const SMALL_PX = 160
/** A product page's column at double density. */
const LARGE_PX = 1280
const QUALITY = 82
/** A picture of 40 million pixels takes about two; beyond this something is wrong with it. */
const TIMEOUT_S = 20

export type PictureRefusal = { code: 'not_a_picture' | 'too_many_pixels' | 'too_small' | 'broken'; message: string; limit: string }

const TYPES_WORDS = 'JPEG, PNG or WebP'
const READING: SharpOptions = { limitInputPixels: MOST_PICTURE_PIXELS, failOn: 'error', pages: 1 }

const millions = (count: number): string => (count / 1e6).toFixed(1)

async function faultOf(bytes: Uint8Array): Promise<PictureRefusal | null> {
  const limit = TYPES_WORDS
  if (pictureTypeOf(bytes) === null) {
    const found = otherFileWords(bytes)
    return { code: 'not_a_picture', limit, message: `The file is ${found ?? 'no picture'}. Choose a photograph in ${TYPES_WORDS}.` }
  }
  const read = await sharp(bytes, { ...READING, limitInputPixels: false }).metadata().catch(() => null) // prettier-ignore
  if (read === null || !read.width || !read.height) return BROKEN
  if (read.width * read.height > MOST_PICTURE_PIXELS) {
    return {
      code: 'too_many_pixels',
      limit: `${MOST_PICTURE_PIXELS / 1e6} million pixels`,
      message: `The picture has ${millions(read.width * read.height)} million pixels. At most ${MOST_PICTURE_PIXELS / 1e6} million fit: save it smaller first.`,
    }
  }
  if (Math.min(read.width, read.height) >= LEAST_PICTURE_SIDE_PX) return null
  return {
    code: 'too_small',
    limit: `${LEAST_PICTURE_SIDE_PX} pixels a side`,
    message: `The picture is ${read.width} by ${read.height} pixels. Each side has at least ${LEAST_PICTURE_SIDE_PX}: choose a larger one.`,
  }
}

const BROKEN: PictureRefusal = {
  code: 'broken',
  limit: TYPES_WORDS,
  message: 'The picture is damaged and could not be read to its end. Save it again, or choose another.',
}

/**
 * Makes the two sizes of a product's picture out of a file that anybody may have sent. Only pixels go through: the place it was taken, the camera, a
 * script in its tail and everything else that is no pixel stays behind. Runs beside the event loop.
 *
 * Errors: not a picture of ours, too many pixels, too small, damaged; each says what to do.
 */
export async function makePicture(bytes: Uint8Array): Promise<Result<PictureFiles, PictureRefusal>> {
  const fault = await faultOf(bytes)
  if (fault !== null) return refuse(fault)
  try {
    const { data: large, info } = await sharp(bytes, READING)
      .autoOrient()
      .resize({ width: LARGE_PX, height: LARGE_PX, fit: 'inside', withoutEnlargement: true })
      .flatten({ background: '#ffffff' })
      .webp({ quality: QUALITY })
      .timeout({ seconds: TIMEOUT_S })
      .toBuffer({ resolveWithObject: true })
    const small = await sharp(large).resize({ width: SMALL_PX, height: SMALL_PX, fit: 'inside' }).webp({ quality: QUALITY }).toBuffer()
    return ok({ hash: createHash('sha256').update(large).digest('hex'), small, large, width: info.width, height: info.height })
  } catch {
    // Whatever the reader of the file says about it, the sender can only send another.
    return refuse(BROKEN)
  }
}
