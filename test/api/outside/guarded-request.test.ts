import { readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:https'
import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { readEndpoint } from '../../../api/outside/endpoint.ts'
import { AddressRefused, AnswerTooLong, OPEN_INTERNET, type Reach } from '../../../api/outside/guarded-request.ts'
import { guardedGet } from '../../../api/other-clubs/guarded-get.ts'
import { guardedPost } from '../../../api/push/guarded-post.ts'

const fixture = (name: string): string => readFileSync(new URL(`../../fixtures/tls/${name}`, import.meta.url), 'utf8')
/** The certificate is for this name, which leads nowhere: only the checked address can have led here. */
const HOST = 'tanks.example.org'

let server: Server
let port: number
let asked: string[]
let answer: (send: (status: number, headers?: Record<string, string>, body?: string) => void) => void
beforeAll(async () => {
  server = createServer({ cert: fixture('first.crt'), key: fixture('first.key') }, (request, response) => {
    asked.push(`${request.method} ${request.headers.host} ${request.url}`)
    request.resume()
    answer((status, headers = {}, body = '') => response.writeHead(status, headers).end(body))
  })
  await new Promise<void>((resolve) => {
    server.listen(0, '127.0.0.1', resolve)
  })
  port = (server.address() as AddressInfo).port
})
afterAll(() => new Promise((resolve) => server.close(resolve)))
beforeEach(() => {
  asked = []
  answer = (send) => send(201)
})

const reach = (parts: Partial<Reach> = {}): Reach => ({
  resolve: async () => ['127.0.0.1'],
  mayReach: (address) => address === '127.0.0.1',
  port,
  ca: fixture('first.crt'),
  ...parts,
})
const post = (parts?: Partial<Reach>, path = '/send/abc?x=1') =>
  guardedPost(new URL(`https://${HOST}${path}`), { headers: { ttl: '60' }, body: new Uint8Array([1, 2]) }, reach(parts))

describe('the address that a browser gives for messages', () => {
  it('is https, at a host with a name, on the usual port, with nothing in front', () => {
    const read = readEndpoint('https://push.example.net/send/abc?x=1')
    expect(read).toMatchObject({ ok: true })
    expect(read.ok && read.value.hostname).toBe('push.example.net')
    expect(readEndpoint('https://push.example.net:443/x')).toMatchObject({ ok: true })
  })
  it.each([
    'http://push.example.net/x', 'https://push.example.net:8443/x', 'https://ida@push.example.net/x', 'https://ida:x@push.example.net/x',
    'https://127.0.0.1/x', 'https://127.1/x', 'https://0x7f.1/x', 'https://2130706433/x', 'https://[::1]/x', 'https://[::ffff:127.0.0.1]/x',
    'https://localhost/x', 'https://a.localhost/x', 'https://intranet/x', 'https://127.0.0.1./x', 'ftp://push.example.net/x', 'file:///etc/passwd', 'nothing', '',
  ])('is not %j', (text) => expect(readEndpoint(text)).toMatchObject({ ok: false, refusal: { code: 'endpoint_not_taken' } })) // prettier-ignore
})

describe('a message to it', () => {
  it('goes to the address that was checked, under the name that was given', async () => {
    expect(await post()).toEqual({ status: 201, retryAfter: null })
    expect(asked).toEqual([`POST ${HOST}:${port} /send/abc?x=1`])
  })

  it('goes nowhere where any address of the host is inside: no connection is made', async () => {
    const { mayReach } = OPEN_INTERNET
    for (const inside of ['127.0.0.1', '::1', '::ffff:127.0.0.1', '10.1.2.3', '169.254.169.254', 'fd00::1', '64:ff9b::7f00:1']) {
      await expect(post({ mayReach, resolve: async () => [inside] }), inside).rejects.toBeInstanceOf(AddressRefused)
      await expect(post({ mayReach, resolve: async () => ['93.184.215.14', inside] }), inside).rejects.toBeInstanceOf(AddressRefused)
    }
    await expect(post({ resolve: async () => [] })).rejects.toBeInstanceOf(AddressRefused)
    expect(asked).toEqual([])
  })

  it('is not led elsewhere by a name that answers differently a moment later', async () => {
    const answers = [['127.0.0.1'], ['10.0.0.1'], ['10.0.0.1']]
    let times = 0
    const resolve = async (): Promise<string[]> => answers[times++] ?? []
    expect(await post({ resolve })).toMatchObject({ status: 201 })
    expect(times).toBe(1)
    // The next message looks the name up anew: no connection of before is used again.
    await expect(post({ resolve })).rejects.toBeInstanceOf(AddressRefused)
    expect(asked).toHaveLength(1)
  })

  it('follows no redirect', async () => {
    answer = (send) => send(307, { location: 'https://127.0.0.1/inside' })
    expect(await post()).toMatchObject({ status: 307 })
    expect(asked).toHaveLength(1)
  })

  it('is not sent where the certificate is for another name, or nobody vouches for it', async () => {
    await expect(guardedPost(new URL('https://other.example.net/x'), { headers: {}, body: new Uint8Array() }, reach())).rejects.toThrow(
      /altnames/i,
    )
    await expect(post({ ca: undefined })).rejects.toThrow(/certificate/i)
    expect(asked).toEqual([])
  })

  it('hears when to come again, and ends an answer that does not end', async () => {
    answer = (send) => send(429, { 'retry-after': '120' })
    expect(await post()).toEqual({ status: 429, retryAfter: '120' })
    answer = (send) => send(200, {}, 'x'.repeat(100_000))
    await expect(post()).rejects.toThrow('too long')
  })
})

describe('another club’s address', () => {
  const get = (parts?: Partial<Reach>) => guardedGet(new URL(`https://${HOST}/api/open-prices`), { 'if-none-match': '"v1"' }, reach(parts))

  it('is read whole with its tag, over the address that was checked alone', async () => {
    answer = (send) => send(200, { etag: '"v2"' }, '{"@type":"DataFeed"}')
    const got = await get()
    expect([got.status, got.etag, got.body.toString()]).toEqual([200, '"v2"', '{"@type":"DataFeed"}'])
    expect(asked).toEqual([`GET ${HOST}:${port} /api/open-prices`])
    await expect(get({ mayReach: () => false })).rejects.toBeInstanceOf(AddressRefused)
    expect(asked).toHaveLength(1)
  })

  it('is not followed elsewhere, and read no further than a club’s prices can be', async () => {
    answer = (send) => send(302, { location: 'https://elsewhere.example.org/' })
    expect((await get()).status).toBe(302)
    answer = (send) => send(200, {}, 'x'.repeat(8_000_001))
    await expect(get()).rejects.toBeInstanceOf(AnswerTooLong)
  })
})
