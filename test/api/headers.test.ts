import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readConfig } from '../../api/config.ts'
import { createWorld, type Answer, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

/** What every answer carries, whatever it says (OWASP ASVS 5.0, 3.4). */
function expectSafe(answer: Answer, what: string): void {
  const { headers } = answer
  const policy = headers.get('content-security-policy') ?? ''
  for (const part of ["default-src 'none'", "object-src 'none'", "base-uri 'none'", "frame-ancestors 'none'"])
    expect(policy, what).toContain(part)
  expect(policy, what).not.toMatch(/unsafe-(inline|eval)/)
  expect(headers.get('x-content-type-options'), what).toBe('nosniff')
  expect(headers.get('referrer-policy'), what).toBe('no-referrer')
  expect(headers.get('cross-origin-opener-policy'), what).toBe('same-origin')
  expect(headers.get('cross-origin-resource-policy'), what).toBe('same-origin')
  expect(headers.get('permissions-policy'), what).toContain('geolocation=()')
  expect(headers.get('cache-control'), what).not.toBeNull()
  expect(headers.get('x-powered-by'), what).toBeNull()
}

async function everyPath(): Promise<string[]> {
  const document = await manager.send<{ paths: Record<string, unknown> }>('GET', '/api/openapi.json')
  return Object.keys(document.body.paths).map((path) =>
    path
      .replace('{n}', '1')
      .replace('{token}', 'nothing')
      .replaceAll(/\{\w+\}/g, '0198c0de-0000-7000-8000-000000000000'),
  )
}
const OTHERS = [
  '/',
  '/prices',
  '/catalog/exchange',
  '/join/anything',
  '/pages.css',
  '/mark.svg',
  '/fonts/archivo.woff2',
  '/nothing/here',
  '/assets/missing-abc.js',
  '/q/forged',
  '/q/forged/pdf',
  '/q/forged/checks/A',
  '/s/forged',
  '/m/stop/forged',
  '/api/reference',
]

describe('every answer', () => {
  it('carries the whole set: good ones, refusals, pages, files, what is not there', async () => {
    for (const path of [...(await everyPath()), ...OTHERS]) {
      for (const method of ['GET', 'HEAD', 'POST', 'PUT', 'PATCH', 'DELETE']) {
        for (const [who, browser] of [
          ['manager', manager],
          ['visitor', world.visitor()],
        ] as const) {
          if (path === '/api/session' && method === 'DELETE') continue
          expectSafe(await browser.send(method, path), `${who} ${method} ${path}`)
        }
      }
    }
  })

  it('carries it too when it says that nothing changed, is malformed, too large, or broken', async () => {
    const seen = await manager.send('GET', '/api/install')
    const etag = seen.headers.get('etag') ?? ''
    const same = await manager.send('GET', '/api/install', { headers: { 'if-none-match': etag } })
    expect(same.status).toBe(304)
    expectSafe(same, '304')
    const malformed = await manager.send('POST', '/api/customers', { body: '{"name":', headers: { 'content-type': 'application/json' } })
    expect(malformed.status).toBe(400)
    expectSafe(malformed, '400')
    const large = await manager.send('POST', '/api/customers', {
      body: JSON.stringify({ name: 'x'.repeat(1_100_000) }),
      headers: { 'content-type': 'application/json' },
    })
    expect(large.status).toBe(413)
    expectSafe(large, '413')
    const type = await manager.send('POST', '/api/customers', { body: 'name=x', headers: { 'content-type': 'text/plain' } })
    expect(type.status).toBe(415)
    expectSafe(type, '415')
  })

  it('asks for https for a year only where https is spoken', async () => {
    expect((await manager.send('GET', '/')).headers.get('strict-transport-security')).toBeNull()
    const { config } = world.deps
    world.rebuild({ config: readConfig({ PUBLIC_URL: 'https://tanks.example.org' }) })
    for (const path of ['/', '/api/session', '/nothing', '/pages.css']) {
      expect((await world.visitor().send('GET', path)).headers.get('strict-transport-security'), path).toBe('max-age=31536000')
    }
    world.rebuild({ config })
  })
})

describe('the application’s document', () => {
  it('lets in scripts of this address alone, a fresh nonce for styles, one policy for drawings', async () => {
    const policies = [await manager.send('GET', '/prices'), await manager.send('GET', '/prices')].map(
      ({ headers }) => headers.get('content-security-policy') ?? '',
    )
    expect(policies[0]).toContain("script-src 'self';")
    expect(policies[0]).toContain("require-trusted-types-for 'script'; trusted-types driploop-plots")
    const nonce = (policy = ''): string => /'nonce-([^']+)'/.exec(policy)?.[1] ?? ''
    expect(nonce(policies[0]).length).toBeGreaterThanOrEqual(22)
    expect(nonce(policies[0])).not.toBe(nonce(policies[1]))
  })
  it('is never kept, while hashed files are kept for ever', async () => {
    expect((await manager.send('GET', '/')).headers.get('cache-control')).toBe('no-store')
    const script = /\/assets\/[\w-]+\.js/.exec((await manager.send('GET', '/')).text)?.[0]
    expect(script, 'the web application is built before the tests: npm run build').toBeDefined()
    const file = await manager.send('GET', script ?? '')
    expect([file.status, file.headers.get('content-type')]).toEqual([200, 'text/javascript; charset=utf-8'])
    expect(file.headers.get('cache-control')).toBe('public, max-age=31536000, immutable')
    const font = await manager.send('GET', '/fonts/archivo.woff2')
    expect(font.status).toBe(200)
    expect(font.headers.get('content-type')).toBe('font/woff2')
  })
})

describe('private answers', () => {
  it('are kept by no cache, and links by no search', async () => {
    for (const path of ['/api/session', '/api/products', '/api/quotes', '/api/customers'])
      expect((await manager.send('GET', path)).headers.get('cache-control')).toBe('no-store')
    for (const path of ['/q/forged', '/s/forged']) {
      const { headers } = await manager.send('GET', path)
      expect(headers.get('cache-control')).toBe('no-store')
      expect(headers.get('x-robots-tag')).toBe('noindex, nofollow')
    }
  })
})

describe('headers that a client sends', () => {
  it('cannot make the address it comes from, its scheme or its host another', async () => {
    const headers = {
      'x-forwarded-for': '203.0.113.9',
      'x-forwarded-proto': 'https',
      'x-forwarded-host': 'evil.example',
      forwarded: 'for=203.0.113.9;proto=https;host=evil.example',
    }
    const invited = await manager.send('POST', '/api/people/invitations', { body: { name: 'A', role: 'member' }, headers })
    expect(String(invited.body['url'])).toMatch(/^http:\/\/localhost:8080\/join\//)
    for (let times = 0; times < 6; times += 1) {
      await world.visitor('203.0.113.50').send('POST', '/api/session', {
        body: { signInName: 'someone', password: 'wrong' },
        headers: { 'x-forwarded-for': `198.51.100.${times}` },
      })
    }
    const answer = await world
      .visitor('203.0.113.50')
      .send('POST', '/api/session', { body: { signInName: 'someone', password: 'wrong' }, headers: { 'x-forwarded-for': '198.51.100.99' } })
    expect(answer.status).toBe(429)
  })
  it('tell the reader’s address where the operator named the proxy that wrote them', async () => {
    const { config } = world.deps
    world.rebuild({ config: readConfig({ TRUSTED_PROXIES: '10.0.0.0/8' }) })
    const from = (address: string) =>
      world.visitor('10.1.2.3').send('POST', '/api/session', {
        body: { signInName: 'behind.proxy', password: 'wrong' },
        headers: { 'x-forwarded-for': `6.6.6.6, ${address}, 10.9.9.9` },
      })
    for (let times = 0; times < 5; times += 1) await from('198.51.100.1')
    expect((await from('198.51.100.1')).status).toBe(429)
    expect((await from('198.51.100.2')).status).toBe(401)
    world.rebuild({ config })
  })
  it('cannot write lines into the log', async () => {
    await manager.send('GET', '/nothing%0a{"level":60}')
    for (const line of world.logged) expect(() => JSON.parse(line)).not.toThrow()
    expect(world.logged.every((line) => line.trimEnd().split('\n').length === 1)).toBe(true)
  })
})
