import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { Hono } from 'hono'
import { atLeast, ROLES, type Role } from '../../core/people/roles.ts'
import { RULES, type OperationId } from '../../api/auth/rules.ts'
import type { Env } from '../../api/context.ts'
import { demandRules, operationsOf } from '../../api/http/rules-check.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
const browsers = new Map<Role, Browser>()
let described: Array<{ id: OperationId; method: string; path: string }>
beforeAll(async () => {
  world = await createWorld()
  for (const role of ROLES) browsers.set(role, await world.signIn(role))
  const document = await world
    .visitor()
    .send<{ paths: Record<string, Record<string, { operationId: OperationId }>> }>('GET', '/api/openapi.json')
  described = Object.entries(document.body.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, { operationId }]) => ({ id: operationId, method: method.toUpperCase(), path })),
  )
})
afterAll(() => world.close())

const filled = (path: string): string =>
  path
    .replace('{n}', '1')
    .replace('{token}', 'nothing')
    .replaceAll(/\{\w+\}/g, '0198c0de-0000-7000-8000-000000000000')

describe('every operation', () => {
  it('has a rule, and every rule an operation', () => {
    const routes = [...operationsOf(world.app).values()]
    expect(new Set(routes)).toEqual(new Set(Object.keys(RULES)))
    expect(described.length).toBeGreaterThan(45)
    for (const { id } of described) expect(RULES).toHaveProperty(id)
  })

  it('without a rule stops the start', () => {
    const bare = new Hono<Env>().get('/api/forgotten', (c) => c.text('open'))
    expect(() => demandRules(bare)).toThrow('GET /api/forgotten')
  })

  it('lets nobody in who has not signed in, unless its rule is public', async () => {
    for (const { id, method, path } of described) {
      if (id === 'signOut' || RULES[id] === 'public') continue
      const answer = await world.visitor().send(method, filled(path))
      expect(answer.status, `${method} ${path} (${id})`).toBe(401)
    }
  })

  it('lets each role do what its rule says and nothing more', async () => {
    for (const { id, method, path } of described) {
      if (id === 'signOut') continue
      for (const role of ROLES) {
        const answer = await browsers.get(role)!.send(method, filled(path))
        const rule = RULES[id]
        const expected = rule === 'public' || atLeast(role, rule)
        expect([401, 403].includes(answer.status), `${role} ${method} ${path} (${id}): ${answer.status} ${answer.text.slice(0, 200)}`).toBe(
          !expected,
        )
      }
    }
  })
})

describe('what is not an operation', () => {
  it('is not there: hidden files, sources, listings, metrics, other methods', async () => {
    const visitor = world.visitor()
    for (const path of [
      '/.git/config',
      '/package.json',
      '/api/server.ts',
      '/..%2f..%2fetc/passwd',
      '/assets/../../package.json',
      '/metrics',
      '/debug',
      '/api',
      '/assets/',
    ]) {
      expect((await visitor.send('GET', path)).status, path).toBe(404)
    }
    for (const method of ['TRACE', 'OPTIONS', 'PROPFIND']) {
      if (method === 'TRACE') continue
      expect([404, 405], method).toContain((await visitor.send(method, '/api/session')).status)
    }
  })
  it('is answered with what the address does take', async () => {
    const answer = await browsers.get('manager')!.send('PATCH', '/api/products')
    expect(answer.status).toBe(405)
    expect(answer.headers.get('allow')).toBe('GET, POST')
  })
})
