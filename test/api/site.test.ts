import { readFile } from 'node:fs/promises'
import { Hono } from 'hono'
import { describe, expect, it } from 'vitest'
import { readConfig } from '../../api/config.ts'
import type { Deps, Env } from '../../api/context.ts'
import { clientAddress } from '../../api/http/site.ts'

/** The address that counts for throttling, of a request whose peer is a trusted proxy. */
async function counted(forwardedFor: string, peer = '10.1.2.3'): Promise<string> {
  const deps = { config: readConfig({ TRUSTED_PROXIES: '10.0.0.0/8, 2001:db8::/32' }) } as Deps
  const app = new Hono<Env>().get('/', (c) => {
    c.set('deps', deps)
    return c.text(clientAddress(c))
  })
  const headers = new Headers(forwardedFor === '' ? [] : [['x-forwarded-for', forwardedFor]])
  return (await app.request('/', { headers }, { incoming: { socket: { remoteAddress: peer } } })).text()
}

describe('the address of a reader behind proxies', () => {
  it.each([
    ['', '10.1.2.3'],
    ['198.51.100.7', '198.51.100.7'],
    ['6.6.6.6, 198.51.100.7, 10.9.9.9', '198.51.100.7'],
    ['6.6.6.6, ::ffff:198.51.100.7', '198.51.100.7'],
    ['6.6.6.6, 198.51.100.7:4711', '198.51.100.7'],
    ['6.6.6.6, [2001:db9::7]:4711', '2001:db9::7'],
    // What stands before a hop that is no address was written by nobody known.
    ['6.6.6.6, unknown', '10.1.2.3'],
    ['6.6.6.6, unknown, 10.9.9.9', '10.1.2.3'],
    ['6.6.6.6, ', '10.1.2.3'],
  ])('X-Forwarded-For "%s" is %s', async (forwardedFor, address) => {
    expect(await counted(forwardedFor)).toBe(address)
  })
  it('is its own where it came by no proxy of ours', async () => {
    expect(await counted('198.51.100.7', '203.0.113.5')).toBe('203.0.113.5')
  })
})

describe('the proxies an operator names', () => {
  it.each(['10.0.0.0/', '10.0.0.0/33', '10.0.0.0/8/8', '10.0.0.0/x', '2001:db8::/129', 'proxy.local', '/8'])(
    'are refused as "%s"',
    (text) => {
      expect(() => readConfig({ TRUSTED_PROXIES: text })).toThrow(`"${text}" is no address or network`)
    },
  )
  it('reach the container with the link key, and may be empty', async () => {
    const compose = await readFile(new URL('../../docker-compose.yml', import.meta.url), 'utf8')
    expect(compose).toContain('LINK_KEY: ${LINK_KEY:-}')
    const proxies = /TRUSTED_PROXIES: \$\{TRUSTED_PROXIES:-(.+)\}/.exec(compose)?.[1] ?? ''
    expect(compose, 'the network that the proxy is in').toContain(`subnet: ${proxies}`)
    expect(readConfig({ TRUSTED_PROXIES: proxies }).trustedProxies.rules).toHaveLength(1)
    const publicUrl = /PUBLIC_URL: \$\{PUBLIC_URL:-(.+)\}/.exec(compose)?.[1] ?? ''
    expect(readConfig({ PUBLIC_URL: publicUrl }).publicUrl?.port).toBe('8080')
    const config = readConfig({ PUBLIC_URL: '', TRUSTED_PROXIES: '', LINK_KEY: '' })
    expect([config.publicUrl, config.linkKey, config.trustedProxies.rules]).toEqual([null, null, []])
  })
})
