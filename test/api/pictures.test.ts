import sharp from 'sharp'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { MOST_PICTURE_BYTES } from '../../core/catalog/picture.ts'
import type { Product } from '../../core/catalog/product.ts'
import { listAudit } from '../../db/audit.ts'
import { product } from '../support/rows.ts'
import { fetchAs, jpeg, phonePhoto, pixelBomb, png, pngWithText, webp, type PictureAnswered } from './support/pictures.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let advisor: Browser
let member: Browser
beforeAll(async () => {
  world = await createWorld()
  advisor = await world.signIn('advisor')
  member = await world.signIn('member')
})
afterAll(() => world.close())

const put = (
  made: Product,
  body: Uint8Array,
  { version = 0, type = 'image/jpeg', who = advisor }: { version?: number; type?: string; who?: Browser } = {},
): Promise<PictureAnswered> =>
  fetchAs(world, who, 'PUT', `/api/products/${made.id}/picture`, { body, type, headers: { 'if-match': `"${version}"` } })
const shown = (answer: PictureAnswered, size = 'large', who = member): Promise<PictureAnswered> =>
  fetchAs(world, who, 'GET', `/api/pictures/${answer.body.hash}/${size}`)
const textIn = (bytes: Uint8Array): string => Buffer.from(bytes).toString('latin1')
/** How bright a spot is, 0 to 255. */
async function brightness(bytes: Uint8Array, left: number, top: number): Promise<number> {
  const { data } = await sharp(bytes).greyscale().extract({ left, top, width: 4, height: 4 }).raw().toBuffer({ resolveWithObject: true })
  return data[0] ?? NaN
}

describe('a picture of a product', () => {
  it.each([
    ['image/jpeg', jpeg],
    ['image/png', png],
    ['image/webp', webp],
  ])('is taken as %s and shown in two sizes, kept by the browser alone, never read as something else', async (type, make) => {
    const made = await product(world.db)
    const answer = await put(made, await make(2000, 1000), { type })
    expect(answer.status, answer.body.detail).toBe(200)
    expect(answer.body).toMatchObject({ width: 1280, height: 640, version: 1 })
    for (const [size, width] of [['large', 1280], ['small', 160]] as const) {
      const file = await shown(answer, size)
      expect([file.status, file.headers.get('content-type')]).toEqual([200, 'image/webp'])
      expect(file.headers.get('cache-control')).toBe('private, max-age=31536000, immutable')
      expect(file.headers.get('x-content-type-options')).toBe('nosniff')
      expect(file.headers.get('content-security-policy')).toContain("default-src 'none'")
      expect(file.headers.get('content-disposition')).toBe('inline; filename="picture.webp"')
      const read = await sharp(file.bytes).metadata()
      expect([read.format, read.width]).toEqual(['webp', width])
    }
    const list = await member.send<{ pictures: Record<string, string> }>('GET', `/api/products?q=${encodeURIComponent(made.name)}`)
    expect(list.body.pictures[made.id]).toBe(answer.body.hash)
  }) // prettier-ignore

  it('is not sent again to a browser that has it', async () => {
    const answer = await put(await product(world.db), await jpeg())
    const { headers } = await shown(answer)
    const again = await fetchAs(world, member, 'GET', `/api/pictures/${answer.body.hash}/large`, {
      headers: { 'if-none-match': headers.get('etag') ?? '' },
    })
    expect([again.status, again.bytes.length]).toEqual([304, 0])
  })

  it('stands upright and says nothing of where, when, by whom and with what it was taken', async () => {
    const photo = await phonePhoto()
    const before = await sharp(photo).metadata()
    expect([before.width, before.height, before.orientation, textIn(photo).includes('Somebody')]).toEqual([600, 400, 6, true])
    const answer = await put(await product(world.db), photo)
    expect(answer.body).toMatchObject({ width: 400, height: 600 })
    const { bytes } = await shown(answer)
    const { exif, xmp, iptc, icc, orientation } = await sharp(bytes).metadata()
    expect({ exif, xmp, iptc, icc, orientation }).toEqual({ exif: undefined, xmp: undefined, iptc: undefined, icc: undefined, orientation: undefined }) // prettier-ignore
    expect(textIn(bytes)).not.toMatch(/Somebody|A phone|Exif|GPS/)
    // Exif orientation 6 (CIPA DC-008): the left of the stored rows is the top of the scene. The dark half was left.
    expect(await brightness(bytes, 200, 20)).toBeLessThan(await brightness(bytes, 200, 560))
  })

  it('is replaced and taken away only on the version that was seen; the old one is gone then', async () => {
    const made = await product(world.db)
    const first = await put(made, await jpeg(610, 410))
    expect(
      (await fetchAs(world, advisor, 'PUT', `/api/products/${made.id}/picture`, { body: await png(), type: 'image/png' })).status,
    ).toBe(428)
    expect((await put(made, await png(), { type: 'image/png' })).status).toBe(412)
    const second = await put(made, await png(500, 510), { type: 'image/png', version: 1 })
    expect(second.body).toMatchObject({ version: 2, width: 500, height: 510 })
    expect((await shown(first)).status).toBe(404)
    const remove = (version: number) =>
      fetchAs(world, advisor, 'DELETE', `/api/products/${made.id}/picture`, { headers: { 'if-match': `"${version}"` } })
    expect((await remove(1)).status).toBe(412)
    expect((await remove(2)).body).toEqual({ hash: null, width: null, height: null, version: 3 })
    expect((await shown(second)).status).toBe(404)
    expect((await put(made, await jpeg())).status).toBe(412)
    expect((await put(made, await jpeg(), { version: 3 })).body).toMatchObject({ version: 4 })
  })

  it('put by two at the same moment: one is kept, the other told', async () => {
    const made = await product(world.db)
    const answers = await Promise.all([put(made, await jpeg()), put(made, await png(), { type: 'image/png' })])
    expect(answers.map(({ status }) => status).toSorted()).toEqual([200, 412])
  })

  it('is for advisors to put and take away, for members to see, for nobody else', async () => {
    const made = await product(world.db)
    expect((await put(made, await jpeg(), { who: member })).status).toBe(403)
    const answer = await put(made, await jpeg())
    expect((await fetchAs(world, member, 'DELETE', `/api/products/${made.id}/picture`, { headers: { 'if-match': '"1"' } })).status).toBe(
      403,
    )
    expect((await shown(answer, 'large', world.visitor())).status).toBe(401)
    expect((await shown(answer)).status).toBe(200)
  })

  it('leaves a line in the trail', async () => {
    const manager = await world.signIn('manager')
    const made = await product(world.db)
    const { body } = await put(made, await jpeg())
    const { items } = await listAudit(world.db, { id: manager.personId, role: 'manager' }, { subject: 'product', limit: 50, offset: 0 })
    const line = items.find(({ subject }) => subject.id === made.id)
    expect(line).toMatchObject({ action: 'product_changed', changes: [{ field: 'picture', before: null, after: body.hash }] })
  })
})

describe('a file that is no picture of ours', () => {
  const text = (words: string): Uint8Array => new TextEncoder().encode(words)
  const SCRIPTED = '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>'

  it.each([
    ['a scripted drawing', text(SCRIPTED), /a drawing \(SVG\)/],
    ['a scripted drawing after a prolog', text(`<?xml version="1.0"?>\n${SCRIPTED}`), /a drawing \(SVG\)/],
    ['a page', text('<!doctype html><script>alert(1)</script>'), /a page/],
    ['a GIF', text('GIF89a\u0001\u0000'), /a GIF/],
    ['a PDF', text('%PDF-1.7'), /a PDF/],
    ['an HEIC photograph', text('\u0000\u0000\u0000\u0018ftypheic'), /an HEIC photograph/],
    ['an archive', text('PK\u0003\u0004'), /no picture/],
    ['nothing', new Uint8Array(), /missing/],
  ])('is refused: %s, however it is called', async (_what, bytes, words) => {
    const made = await product(world.db)
    for (const type of ['image/jpeg', 'image/png', 'image/webp']) {
      const answer = await put(made, bytes, { type })
      expect([answer.status, answer.body.errors?.[0]?.field]).toEqual([422, 'picture'])
      expect(answer.body.errors?.[0]?.message).toMatch(words)
    }
    const seen = await member.send<{ version: number }>('GET', `/api/products/${made.id}/picture`)
    expect(seen.body.version, 'nothing was stored').toBe(0)
  })

  it.each(['image/svg+xml', 'image/gif', 'text/html', 'application/json', 'application/octet-stream'])(
    'is refused by its content type before it is read: %s',
    async (type) => {
      expect((await put(await product(world.db), text(SCRIPTED), { type })).status).toBe(415)
    },
  )

  it('is refused where it says another kind than it holds', async () => {
    const answer = await put(await product(world.db), await png(), { type: 'image/jpeg' })
    expect([answer.status, answer.body.errors?.[0]?.limit]).toEqual([422, 'image/jpeg, image/png, image/webp'])
  })

  it('is refused where it begins like a picture and is none, or ends too early', async () => {
    const made = await product(world.db)
    const whole = await jpeg(900, 900)
    const headed = new Uint8Array([...whole.subarray(0, 12), ...text(SCRIPTED)])
    for (const bytes of [headed, whole.subarray(0, Math.floor(whole.length / 2)), whole.subarray(0, 30)])
      expect((await put(made, bytes)).status).toBe(422)
    expect((await put(made, pixelBomb(300, 300), { type: 'image/png' })).status, 'its rows are there').toBe(200)
    const torn = Buffer.from(await png(900, 900))
    torn.fill(0x55, 200, 400)
    expect((await put(made, new Uint8Array(torn), { version: 1, type: 'image/png' })).status).toBe(422)
  })

  it('passes its pixels alone where it is a picture and something else as well', async () => {
    const payload = '<script>alert("both")</script>PK\u0003\u0004evil.php'
    const tail = new Uint8Array([...(await jpeg()), ...text(payload)])
    const chunked = await pngWithText(payload)
    for (const [bytes, type] of [[tail, 'image/jpeg'], [chunked, 'image/png']] as const) {
      expect(textIn(bytes)).toContain('<script>')
      const answer = await put(await product(world.db), bytes, { type })
      expect(answer.status).toBe(200)
      for (const size of ['small', 'large']) expect(textIn((await shown(answer, size)).bytes)).not.toMatch(/script|evil|php/)
    }
  }) // prettier-ignore
})

describe('a file that is too much', () => {
  it('is refused by its pixels before they are unpacked, with the limit', async () => {
    const made = await product(world.db)
    for (const [width, height] of [[60_000, 60_000], [2_000_000_000, 2_000_000_000], [6_400, 6_400]] as const) {
      const answer = await put(made, pixelBomb(width, height), { type: 'image/png' })
      expect(answer.status).toBe(422)
    }
    const answer = await put(made, pixelBomb(6_400, 6_400), { type: 'image/png' })
    expect(answer.body.errors?.[0]).toEqual({
      field: 'picture',
      limit: '40 million pixels',
      message: 'The picture has 41.0 million pixels. At most 40 million fit: save it smaller first.',
    })
  }) // prettier-ignore

  it('is refused by its bytes, said or not, with the limit', async () => {
    const made = await product(world.db)
    const large = new Uint8Array(MOST_PICTURE_BYTES + 1)
    expect((await put(made, large)).status).toBe(413)
    let sent = 0
    const endless = new ReadableStream<Uint8Array>({
      pull(controller) {
        sent += 1
        controller.enqueue(new Uint8Array(1_000_000))
      },
    })
    const answer = await fetchAs(world, advisor, 'PUT', `/api/products/${made.id}/picture`, {
      body: endless,
      type: 'image/jpeg',
      headers: { 'if-match': '"0"' },
    })
    expect([answer.status, answer.body.detail]).toEqual([413, 'This is more than 12 MB. Send less at once.'])
    expect(sent, 'it was not read to an end that never comes').toBeLessThan(20)
  })

  it('is refused where nobody could see what it is', async () => {
    const answer = await put(await product(world.db), await png(40, 40), { type: 'image/png' })
    expect(answer.body.errors?.[0]?.message).toBe('The picture is 40 by 40 pixels. Each side has at least 60: choose a larger one.')
  })
})
