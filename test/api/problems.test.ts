import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createWorld, PASSWORD, type Answer, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

const JSON_TYPE = { 'content-type': 'application/json' }
const NOBODY = '0198c0de-0000-7000-8000-000000000000'

/** RFC 9457, and our extension: what a person can act on. */
function expectProblem(answer: Answer, what: string): void {
  expect(answer.headers.get('content-type'), what).toBe('application/problem+json')
  const { type, title, status, detail, errors } = answer.body
  expect(type, what).toMatch(/^\/api\/reference#[a-z_]+$/)
  expect(status, what).toBe(answer.status)
  for (const words of [title, detail]) expect(String(words).length, what).toBeGreaterThan(8)
  expect(Array.isArray(errors), what).toBe(true)
  expect(answer.text, what).not.toMatch(/\bat .+:\d+:\d+|node_modules|Error:|select |insert /i)
}

describe('every refusal is problem details', () => {
  it.each<[string, number, () => Promise<Answer>]>([
    ['malformed JSON', 400, () => manager.send('POST', '/api/customers', { body: '{"name":', headers: JSON_TYPE })],
    ['no session', 401, () => world.visitor().send('GET', '/api/customers')],
    [
      'a wrong password',
      401,
      () => world.visitor('192.0.2.99').send('POST', '/api/session', { body: { signInName: 'x', password: PASSWORD } }),
    ],
    ['another site', 403, () => manager.send('POST', '/api/customers', { body: {}, headers: { 'sec-fetch-site': 'cross-site' } })],
    ['an unknown address', 404, () => manager.send('GET', '/api/nothing')],
    ['an unknown row', 404, () => manager.send('GET', `/api/products/${NOBODY}`)],
    ['a wrong method', 405, () => manager.send('DELETE', '/api/products')],
    ['a used link', 410, () => manager.send('GET', '/api/links/none')],
    [
      'a stale edit',
      412,
      () => manager.send('PATCH', `/api/people/${manager.personId}`, { body: { role: 'manager' }, headers: { 'if-match': '"99"' } }),
    ],
    [
      'too large a body',
      413,
      () => manager.send('POST', '/api/customers', { body: `{"name":"${'x'.repeat(1_100_000)}"}`, headers: JSON_TYPE }),
    ],
    [
      'another content type',
      415,
      () => manager.send('POST', '/api/customers', { body: '<name/>', headers: { 'content-type': 'application/xml' } }),
    ],
    ['a wrong field', 422, () => manager.send('POST', '/api/customers', { body: { name: 5 } })],
    ['an id that is none', 422, () => manager.send('GET', '/api/products/one')],
    ['no version', 428, () => manager.send('PATCH', `/api/people/${manager.personId}`, { body: { role: 'manager' } })],
  ])('%s', async (what, status, ask) => {
    const answer = await ask()
    expect(answer.status, answer.text).toBe(status)
    expectProblem(answer, what)
  })
})

describe('a refused body', () => {
  it('is never sent back: not a password, not anything', async () => {
    const secret = 'do-not-repeat-me-anywhere'
    for (const body of [
      { signInName: 5, password: secret },
      { signInName: 'x', password: [secret] },
      { signInName: 'x', password: secret, extra: secret },
      [secret],
      secret,
    ]) {
      const answer = await world.visitor('192.0.2.98').send('POST', '/api/session', { body: JSON.stringify(body), headers: JSON_TYPE })
      expect(answer.status).toBe(422)
      expect(answer.text).not.toContain(secret)
    }
    expect(world.logged.join('')).not.toContain(secret)
  })
  it('names every wrong field at once, nested ones by their path', async () => {
    const answer = await manager.send<{ errors: Array<{ field: string }> }>('POST', '/api/stores', {
      body: { name: '', kind: 'shop', delivery: { kind: 'flat', feeMinor: -1 } },
    })
    const fields = answer.body.errors.map(({ field }) => field)
    for (const field of ['name', 'kind', 'country', 'timeZone', 'taxBasisPoints', 'delivery.feeMinor', 'delivery.oversizeMinor'])
      expect(fields).toContain(field)
  })
})

describe('a mistake of ours', () => {
  it('is told with nothing but the id under which the log has it', async () => {
    const { pdf } = world.deps
    world.rebuild({
      clock: () => {
        throw new Error('select secret from table')
      },
    })
    const answer = await manager.send('GET', '/api/board')
    world.rebuild({ pdf, clock: () => Date.now() })
    expect(answer.status).toBe(500)
    expectProblem(answer, 'a bug')
    expect(answer.text).not.toContain('secret')
    const requestId = String(answer.body['requestId'])
    expect(answer.headers.get('x-request-id')).toBe(requestId)
    expect(world.logged.some((line) => line.includes(requestId) && line.includes('select secret from table'))).toBe(true)
  })
  it('is logged by what went wrong and where, never with the values of a statement or a row', async () => {
    const { clock } = world.deps
    const values = { params: ['Ines Tillish'], query: 'insert into person', detail: 'Key (name)=(Ines Tillish) exists', parameters: ['Ines Tillish'] } // prettier-ignore
    const cause = Object.assign(new Error('duplicate key value'), { code: '23505', constraint_name: 'person_name', ...values })
    world.rebuild({
      clock: () => {
        throw Object.assign(new Error('not stored', { cause }), { code: '23505', constraint: 'person_one_name', ...values })
      },
    })
    const answer = await manager.send('GET', '/api/board')
    world.rebuild({ clock })
    const line = world.logged.find((entry) => entry.includes(String(answer.body['requestId'])) && entry.includes('"failed"')) ?? ''
    for (const kept of ['not stored', 'duplicate key value', '23505', 'person_one_name', 'person_name', 'problems.test.ts'])
      expect(line).toContain(kept)
    for (const secret of ['Ines Tillish', 'insert into']) expect(line).not.toContain(secret)
  })
})

describe('a mistyped address', () => {
  const html = { accept: 'text/html,application/xhtml+xml' }
  it.each(['/pricess', '/catalog/a/b', '/nothing/here'])('%s shows a person a page that leads on', async (path) => {
    const answer = await world.visitor().send('GET', path, { headers: html })
    expect(answer.status).toBe(404)
    expect(answer.headers.get('content-type')).toContain('text/html')
    expect(answer.text).toContain('There is nothing at this address.')
    expect(answer.text).toContain('href="/"')
  })
  it.each([
    ['/api/nothing', html],
    ['/pricess', {}],
  ])('%s stays problem details for a program (%j)', async (path, headers) => {
    expectProblem(await world.visitor().send('GET', path, { headers }), path)
  })
})
