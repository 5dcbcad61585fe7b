import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { Context } from 'hono'
import { accepts } from 'hono/accepts'

/** Better first: browsers ask for brotli over TLS and on their own computer, for gzip everywhere. */
const CODINGS = ['br', 'gzip'] as const
type Coding = (typeof CODINGS)[number]
const NOT_CODED = 'identity'

/** Of 0 to 11: the last steps shorten by some 7 % and keep the first who asks waiting ten times as long. */
const params = { [constants.BROTLI_PARAM_QUALITY]: 9 }
const CODERS: Record<Coding, (bytes: Uint8Array) => Promise<Buffer>> = {
  br: (bytes) => promisify(brotliCompress)(bytes, { params }),
  gzip: promisify(gzip),
}

/** Letters grow shorter; fonts, pictures and icons are compressed already. */
const SHORTENED = /^text\/|javascript|json|svg|wasm/

/** A file as it is sent: as it is, and coded once for all who ask for it so. */
export interface EncodedFile {
  bytes: Uint8Array<ArrayBuffer>
  type: string
  coded: Map<Coding, Promise<Uint8Array<ArrayBuffer>>>
}

/** @example encodedFile(bytes, 'image/svg+xml').coded.size // 0: nobody has asked yet */
export const encodedFile = (bytes: Uint8Array<ArrayBuffer>, type: string): EncodedFile => ({ bytes, type, coded: new Map() })

/** The content coding that a browser takes, `identity` where it takes none of ours (RFC 9110, section 12.5.3). */
const codingOf = (c: Context): string =>
  accepts(c, {
    header: 'Accept-Encoding',
    supports: [...CODINGS],
    default: NOT_CODED,
    match: (taken, { supports, default: none }) =>
      supports.find((coding) => taken.some(({ type, q }) => q > 0 && type.toLowerCase() === coding)) ?? none,
  })

/**
 * The bytes of a file as this browser takes them, with the headers that say so. For files that are the same for everybody alone: the length of a coded answer
 * tells of what is in it, so an answer with anything of a person's stays as it is.
 *
 * @example await encodedBytes(c, file) // with Accept-Encoding: gzip, some third of the bytes
 */
export async function encodedBytes(c: Context, { bytes, type, coded }: EncodedFile): Promise<Uint8Array<ArrayBuffer>> {
  if (!SHORTENED.test(type)) return bytes
  c.header('Vary', 'Accept-Encoding')
  const coding = CODINGS.find((each) => each === codingOf(c))
  if (coding === undefined) return bytes
  const made = coded.get(coding) ?? CODERS[coding](bytes).then((buffer) => new Uint8Array(buffer))
  coded.set(coding, made)
  // One that failed is tried again by the next who asks.
  made.catch(() => coded.delete(coding))
  c.header('Content-Encoding', coding)
  return made
}
