import type { Kysely } from 'kysely'
import sharp, { type OverlayOptions } from 'sharp'
import type { Database } from '../../db/database.ts'
import { productId } from '../../db/demo/product-entry.ts'
import { replacePicture } from '../../db/pictures.ts'
import { inTransaction } from '../../db/refusal.ts'
import { makePicture } from '../pictures/make-picture.ts'

/** A rectangle of a drawing: left, top, width, height in hundredths of the picture's width, and its colour. */
type Patch = readonly [left: number, top: number, width: number, height: number, colour: string]

const [GROUND, INK, GLASS, WATER, WOOD, LIGHT] = ['#f6f8f4', '#14211d', '#0b5d4c', '#cfe3dc', '#a9815a', '#f3e3ae']

/** Front views, drawn by us: no photograph of anything stands for a product that does not exist. */
const DRAWINGS: ReadonlyArray<readonly [name: string, patches: readonly Patch[]]> = [
  [
    'Wendlemere 40 breeder',
    [
      [8, 18, 84, 38, INK],
      [9, 22, 82, 30, WATER],
      [9, 21, 82, 1, GLASS],
      [8, 18, 84, 3, INK],
      [8, 53, 84, 3, INK],
    ],
  ],
  [
    'Thornby Frame 36',
    [
      [10, 8, 80, 5, INK],
      [10, 13, 4, 54, INK],
      [86, 13, 4, 54, INK],
      [14, 52, 72, 3, WOOD],
      [14, 30, 72, 2, INK],
    ],
  ],
  [
    'Halden Row 36',
    [
      [6, 30, 88, 7, INK],
      [8, 37, 84, 2, LIGHT],
      [10, 39, 2, 8, INK],
      [88, 39, 2, 8, INK],
    ],
  ],
]

const [WIDTH_PX, HEIGHT_PX] = [600, 450]
const SHARE_PX = WIDTH_PX / 100

async function draw(patches: readonly Patch[]): Promise<Uint8Array> {
  const layers = patches.map(([left, top, width, height, background]): OverlayOptions => {
    const size = { width: Math.round(width * SHARE_PX), height: Math.round(height * SHARE_PX) }
    return { input: { create: { ...size, channels: 3, background } }, left: Math.round(left * SHARE_PX), top: Math.round(top * SHARE_PX) }
  })
  const ground = sharp({ create: { width: WIDTH_PX, height: HEIGHT_PX, channels: 3, background: GROUND } })
  return new Uint8Array(await ground.composite(layers).png().toBuffer())
}

/** Gives some products of the demo scenario a picture, by the way that an uploaded one goes: a tenth of a second of work. */
export async function drawDemoPictures(db: Kysely<Database>): Promise<void> {
  for (const [name, patches] of DRAWINGS) {
    const made = await makePicture(await draw(patches))
    if (!made.ok) throw new Error(`The drawing of ${name} is no picture: ${made.refusal.message}`)
    const put = await inTransaction(db, (trx) => replacePicture(trx, productId(name), 0, made.value))
    if (!put.ok) throw new Error(`The drawing of ${name} was not kept: ${put.refusal.message}`)
  }
}
