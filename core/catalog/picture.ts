/** The picture of a product: what a screen needs to show it. The bytes are fetched by the hash. */
export interface ProductPicture {
  /** Of what is shown, so that an address never shows another picture; null where there is none. */
  hash: string | null
  /** Of the large size, pixels; null where there is none. */
  width: number | null
  height: number | null
  /** Counts every change; 0 where there never was one. */
  version: number
}

/** `small`: beside a name in a list. `large`: on a page of its own. */
export const PICTURE_SIZES = ['small', 'large'] as const
export type PictureSize = (typeof PICTURE_SIZES)[number]

/** Kinds of file a picture may come in, as its content type says. */
export const PICTURE_TYPES = ['image/jpeg', 'image/png', 'image/webp'] as const
export type PictureType = (typeof PICTURE_TYPES)[number]

/** The largest photographs of phones are 5 to 10 MB; above that somebody chose the wrong file. */
export const MOST_PICTURE_BYTES = 12_000_000
/** 40 million pixels are 160 MB once unpacked: what one picture may cost while it is made small. Phones take 12, some 50 by choice. */
export const MOST_PICTURE_PIXELS = 40_000_000
/** Below this nobody sees what it is. */
export const LEAST_PICTURE_SIDE_PX = 60

const ASCII = (bytes: Uint8Array, from: number, to: number): string => String.fromCharCode(...bytes.subarray(from, to))

/**
 * The kind of picture by its first bytes, whatever the file is called; null for anything else.
 *
 * Source: JPEG ITU-T T.81 B.1.1.3 (FF D8 then a marker), PNG ISO/IEC 15948 5.2, WebP RFC 9649 2.5.
 *
 * @example pictureTypeOf(new Uint8Array([0xff, 0xd8, 0xff, 0xe0])) // 'image/jpeg'
 */
export function pictureTypeOf(bytes: Uint8Array): PictureType | null {
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'image/jpeg'
  if (bytes[0] === 0x89 && ASCII(bytes, 1, 8) === 'PNG\r\n\u001a\n') return 'image/png'
  if (ASCII(bytes, 0, 4) === 'RIFF' && ASCII(bytes, 8, 12) === 'WEBP') return 'image/webp'
  return null
}

/**
 * What a file that is none of ours is, in words; null where it is nothing we know.
 *
 * @example otherFileWords(new TextEncoder().encode('<svg xmlns="…">')) // 'a drawing (SVG)'
 */
export function otherFileWords(bytes: Uint8Array): string | null {
  const start = ASCII(bytes, 0, 256).trimStart().toLowerCase()
  if (start.startsWith('gif8')) return 'a GIF'
  if (/^.{4}ftyp(?:heic|heix|mif1|msf1|hevc)/.test(ASCII(bytes, 0, 16))) return 'an HEIC photograph'
  if (/^.{4}ftypavif/.test(ASCII(bytes, 0, 16))) return 'an AVIF picture'
  if (start.includes('<svg')) return 'a drawing (SVG)'
  if (start.startsWith('<')) return 'a page'
  if (start.startsWith('%pdf')) return 'a PDF'
  if (start.startsWith('bm')) return 'a bitmap (BMP)'
  return null
}
