import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readConfig } from '../../api/config.ts'
import { createWorld, ORIGIN, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

const METHODS = ['POST', 'PUT', 'PATCH', 'DELETE']
const TYPES = ['application/json', 'text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x', undefined]
const SITES = ['same-origin', 'same-site', 'cross-site', 'none', undefined]
const ORIGINS = [ORIGIN, 'https://evil.example', 'null', undefined]

/** As a browser would send it, with the session's cookie. An unknown path shows that the guard comes before every route. */
async function write(
  method: string,
  type: string | undefined,
  site: string | undefined,
  origin: string | undefined,
  cookie: string | undefined,
) {
  const given = { cookie, 'content-type': type, 'sec-fetch-site': site, origin }
  const headers = Object.fromEntries(Object.entries(given).filter((pair): pair is [string, string] => pair[1] !== undefined))
  return world.app.request(`${ORIGIN}/api/customers`, { method, headers, body: method === 'DELETE' ? undefined : '{}' })
}

/** What the rule says in words: only this very site, told by Sec-Fetch-Site; where that is missing, by Origin; neither, only without a cookie. */
function mayPass(site: string | undefined, origin: string | undefined, hasCookie: boolean): boolean {
  if (site !== undefined) return site === 'same-origin'
  if (origin !== undefined) return origin === ORIGIN
  return !hasCookie
}

describe('a write', () => {
  for (const method of METHODS) {
    it(`${method} passes from this site only, whatever its content type`, async () => {
      let refused = 0
      for (const type of TYPES) {
        for (const site of SITES) {
          for (const origin of ORIGINS) {
            for (const cookie of [manager.cookie(), undefined]) {
              const answer = await write(method, type, site, origin, cookie)
              const body = (await answer.json()) as { type: string }
              const isRefused = body.type.endsWith('#cross_site')
              expect(isRefused, `${method} ${type} site=${site} origin=${origin} cookie=${cookie !== undefined}`).toBe(
                !mayPass(site, origin, cookie !== undefined),
              )
              if (isRefused) {
                refused += 1
                expect(answer.status).toBe(403)
                expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'")
              }
            }
          }
        }
      }
      // Three sites that are not this one, with any origin, with and without a cookie; no site: two foreign origins, and a cookie alone.
      expect(refused).toBe(TYPES.length * 2 * (3 * ORIGINS.length) + TYPES.length * (2 * 2 + 1))
    })
  }

  it('reaches pages without script by the same rule', async () => {
    const headers = { 'content-type': 'application/x-www-form-urlencoded', 'sec-fetch-site': 'cross-site' }
    expect((await world.app.request(`${ORIGIN}/q/anything/answer`, { method: 'POST', headers, body: 'answer=accepted' })).status).toBe(403)
    // A page with "no-referrer" sends Origin: null with its own form; Sec-Fetch-Site is what tells them apart.
    const own = { ...headers, 'sec-fetch-site': 'same-origin', origin: 'null' }
    expect((await world.app.request(`${ORIGIN}/q/anything/answer`, { method: 'POST', headers: own, body: 'answer=accepted' })).status).toBe(
      404,
    )
  })

  it('takes the public address as its own behind a proxy, and no other', async () => {
    const { config } = world.deps
    world.rebuild({ config: readConfig({ PUBLIC_URL: 'https://tanks.example.org' }) })
    const from = (origin: string) => world.app.request('http://127.0.0.1:8080/api/session', { method: 'DELETE', headers: { origin } })
    expect((await from('https://tanks.example.org')).status).toBe(204)
    expect((await from('http://127.0.0.1:8080')).status).toBe(403)
    expect((await from('https://tanks.example.org.evil.example')).status).toBe(403)
    world.rebuild({ config })
  })

  it('never reads: safe methods pass from anywhere and change nothing', async () => {
    const answer = await world.app.request(`${ORIGIN}/api/session`, {
      headers: { 'sec-fetch-site': 'cross-site', cookie: manager.cookie() },
    })
    expect(answer.status).toBe(200)
    expect(answer.headers.get('access-control-allow-origin')).toBeNull()
  })
})
