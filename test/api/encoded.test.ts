import { brotliDecompressSync, gunzipSync } from 'node:zlib'
import { describe, expect, it } from 'vitest'
import { staticRoutes } from '../../api/http/static.ts'

const routes = staticRoutes()
const ask = (path: string, taken?: string) => routes.request(path, taken === undefined ? {} : { headers: { 'Accept-Encoding': taken } })
const bytesOf = async (path: string, taken?: string) => Buffer.from(await (await ask(path, taken)).arrayBuffer())

describe('files that are the same for everybody', () => {
  it('come as short as the browser takes them, and say so (RFC 9110, section 12.5.3)', async () => {
    const whole = await bytesOf('/pages.css')
    for (const [taken, coding, read] of [
      ['gzip, deflate, br, zstd', 'br', brotliDecompressSync],
      ['gzip, deflate', 'gzip', gunzipSync],
      ['br;q=0, gzip;q=0.5', 'gzip', gunzipSync],
    ] as const) {
      const answer = await ask('/pages.css', taken)
      expect(answer.headers.get('content-encoding'), taken).toBe(coding)
      expect(answer.headers.get('vary'), taken).toBe('Accept-Encoding')
      const sent = Buffer.from(await answer.arrayBuffer())
      expect(sent.length, taken).toBeLessThan(whole.length / 2)
      expect(read(sent).equals(whole), taken).toBe(true)
    }
    expect(await bytesOf('/pages.css', 'br')).toEqual(await bytesOf('/pages.css', 'br'))
  })

  it('come as they are to whoever takes nothing else, a cache being told that others are sent otherwise', async () => {
    for (const taken of [undefined, 'identity', 'gzip;q=0', 'compress']) {
      const answer = await ask('/pages.css', taken)
      expect(answer.headers.get('content-encoding'), taken).toBeNull()
      expect(answer.headers.get('vary'), taken).toBe('Accept-Encoding')
      expect(answer.headers.get('content-type'), taken).toBe('text/css; charset=utf-8')
    }
  })

  it('are left alone where they are short already', async () => {
    const answer = await ask('/fonts/archivo.woff2', 'br')
    expect(answer.status).toBe(200)
    expect(answer.headers.get('content-encoding')).toBeNull()
    expect(
      Buffer.from(await answer.arrayBuffer())
        .subarray(0, 4)
        .toString(),
    ).toBe('wOF2')
  })
})
