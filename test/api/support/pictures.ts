import { crc32, deflateSync } from 'node:zlib'
import sharp from 'sharp'
import type { ProductPicture } from '../../../core/catalog/picture.ts'
import { ORIGIN, type Browser, type World } from './world.ts'

/** A picture of one colour with a darker left half, so that a turn of it can be seen. */
const drawn = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#c8d8d0' } }).composite([
    { input: { create: { width: Math.max(1, Math.floor(width / 2)), height, channels: 3, background: '#0b5d4c' } }, left: 0, top: 0 },
  ])

export const jpeg = async (width = 600, height = 400): Promise<Uint8Array> => new Uint8Array(await drawn(width, height).jpeg().toBuffer())
export const png = async (width = 600, height = 400): Promise<Uint8Array> => new Uint8Array(await drawn(width, height).png().toBuffer())
export const webp = async (width = 600, height = 400): Promise<Uint8Array> => new Uint8Array(await drawn(width, height).webp().toBuffer())

/** As a phone held upright writes it: lying pixels, a mark to turn them, and where it was taken. */
export async function phonePhoto(): Promise<Uint8Array> {
  const image = drawn(600, 400)
    .withMetadata({ orientation: 6 })
    .withExifMerge({
      IFD0: { Make: 'A phone', Artist: 'Somebody' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '44/1 45/1 30/1', GPSLongitudeRef: 'W', GPSLongitude: '85/1 37/1 12/1' },
    })
  return new Uint8Array(await image.jpeg().toBuffer())
}

function chunk(type: string, data: Uint8Array): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data])
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)]
  length.writeUInt32BE(data.length)
  check.writeUInt32BE(crc32(body))
  return Buffer.concat([length, body, check])
}

/** A PNG of a few hundred bytes that says it has this many pixels: read without a limit it asks for gigabytes. */
export function pixelBomb(width: number, height: number): Uint8Array {
  const header = Buffer.alloc(13)
  header.writeUInt32BE(width, 0)
  header.writeUInt32BE(height, 4)
  header.set([8, 0, 0, 0, 0], 8)
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])
  const rows = deflateSync(Buffer.alloc(100_000))
  return new Uint8Array(Buffer.concat([signature, chunk('IHDR', header), chunk('IDAT', rows), chunk('IEND', Buffer.alloc(0))]))
}

/** A PNG with a text in a chunk of its own, which readers pass over. */
export async function pngWithText(text: string): Promise<Uint8Array> {
  const bytes = Buffer.from(await png())
  const afterHeader = 8 + 25
  return new Uint8Array(
    Buffer.concat([bytes.subarray(0, afterHeader), chunk('tEXt', Buffer.from(`Comment\0${text}`, 'latin1')), bytes.subarray(afterHeader)]),
  )
}

export interface PictureAnswered {
  status: number
  headers: Headers
  bytes: Uint8Array
  body: Partial<ProductPicture> & { errors?: Array<{ field: string; limit?: string; message: string }>; detail?: string }
}

/** Sends or asks for something that is no JSON, as this person. */
export async function fetchAs(
  world: Pick<World, 'app'>,
  who: Browser,
  method: string,
  path: string,
  sent: { body?: Uint8Array | ReadableStream; type?: string; headers?: Record<string, string> } = {},
): Promise<PictureAnswered> {
  const init: RequestInit & { duplex?: 'half' } = {
    method,
    headers: {
      'sec-fetch-site': 'same-origin',
      cookie: who.cookie(),
      ...(sent.type === undefined ? {} : { 'content-type': sent.type }),
      ...(sent.body instanceof Uint8Array ? { 'content-length': String(sent.body.length) } : {}),
      ...sent.headers,
    },
  }
  if (sent.body !== undefined) Object.assign(init, { body: sent.body, duplex: 'half' })
  const answer = await world.app.request(ORIGIN + path, init, { incoming: { socket: { remoteAddress: '192.0.2.1' } } })
  const bytes = new Uint8Array(await answer.arrayBuffer())
  const isJson = answer.headers.get('content-type')?.includes('json') === true
  return { status: answer.status, headers: answer.headers, bytes, body: isJson ? JSON.parse(new TextDecoder().decode(bytes)) : {} }
}
