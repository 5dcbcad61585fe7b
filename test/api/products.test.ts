import { fc, test as property } from '@fast-check/vitest'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import { heater, product } from '../support/rows.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let advisor: Browser
let second: Browser
beforeAll(async () => {
  world = await createWorld()
  advisor = await world.signIn('advisor')
  second = await world.signIn('advisor')
})
afterAll(() => world.close())

type Refused = { errors: Array<{ field: string; message: string }>; detail: string }
const bodyOf = ({ id: _id, version: _version, ...fields }: Product) => fields
const put = (who: Browser, made: Product, change: object, tag: string | null) =>
  who.send<Product & Refused>('PUT', `/api/products/${made.id}`, {
    body: { ...bodyOf(made), ...change },
    headers: tag === null ? {} : { 'if-match': tag },
  })

describe('a product', () => {
  it('is made, read with its version, and not sent again to one who has it', async () => {
    const made = await advisor.send<Product>('POST', '/api/products', { body: heater() })
    expect(made.status, made.text).toBe(201)
    expect(made.headers.get('etag')).toBe('"1"')
    const read = await advisor.send<Product>('GET', `/api/products/${made.body.id}`)
    expect(read.body).toEqual(made.body)
    for (const tag of ['"1"', 'W/"1"', '"9", "1"', '*']) {
      const same = await advisor.send('GET', `/api/products/${made.body.id}`, { headers: { 'if-none-match': tag } })
      expect([same.status, same.text], tag).toEqual([304, ''])
    }
    expect((await advisor.send('GET', `/api/products/${made.body.id}`, { headers: { 'if-none-match': '"2"' } })).status).toBe(200)
  })

  it('is changed only by one who says which version the change was based on', async () => {
    const made = await product(world.db)
    expect((await put(advisor, made, { name: `${made.name} b` }, null)).status).toBe(428)
    expect((await put(advisor, made, { name: `${made.name} b` }, '*')).status).toBe(428)
    expect((await put(advisor, made, { name: `${made.name} b` }, 'W/"1"')).status).toBe(412)
    expect((await put(advisor, made, { name: `${made.name} b` }, '"7"')).status).toBe(412)
    const changed = await put(advisor, made, { name: `${made.name} b` }, '"1"')
    expect([changed.status, changed.headers.get('etag')]).toEqual([200, '"2"'])
  })

  property.prop([fc.array(fc.tuple(fc.boolean(), fc.boolean()), { minLength: 1, maxLength: 10 })], { numRuns: 12 })(
    'loses no change of two who edit it in turn, each with what they last read',
    async (turns) => {
      const made = await product(world.db)
      const known = { one: 1, two: 1 }
      let expected = 1
      for (const [isOne, readsFirst] of turns) {
        const name = isOne ? 'one' : 'two'
        if (readsFirst)
          known[name] = Number((await advisor.send('GET', `/api/products/${made.id}`)).headers.get('etag')?.replaceAll('"', ''))
        const answer = await put(isOne ? advisor : second, made, { note: `by ${name} over ${known[name]}` }, `"${known[name]}"`)
        expect(answer.status).toBe(known[name] === expected ? 200 : 412)
        if (answer.status === 200) expected = known[name] = expected + 1
      }
      expect((await advisor.send<Product>('GET', `/api/products/${made.id}`)).body.version).toBe(expected)
    },
  )

  it('is changed by one of two who save at the same moment', async () => {
    const made = await product(world.db)
    const both = await Promise.all([put(advisor, made, { note: 'mine' }, '"1"'), put(second, made, { note: 'yours' }, '"1"')])
    expect(both.map(({ status }) => status).sort()).toEqual([200, 412])
  })

  it.each([
    ['a tank of 5 mm', { kind: 'tank', spec: { lengthMm: 5, widthMm: 300, heightMm: 300 } }, 'spec.lengthMm'],
    ['a heater of 40 000 W', { spec: { powerW: 40_000 } }, 'spec.powerW'],
    ['a length as text', { kind: 'tank', spec: { lengthMm: '90 cm', widthMm: 300, heightMm: 300 } }, 'spec.lengthMm'],
    ['a tank without a depth', { kind: 'tank', spec: { lengthMm: 900, widthMm: 300 } }, 'spec.heightMm'],
    ['a number that its own check digit denies', { gtin: '4006381333932' }, 'gtin'],
    ['a kind that is none', { kind: 'spaceship' }, 'kind'],
    ['no name', { name: '  ' }, 'name'],
    ['a name with a zero byte', { name: 'Torvane \u0000' }, 'name'],
    ['a field of another kind', { spec: { lengthMm: 900, ratedLoadKg: 3 } }, 'spec'],
    ['parts in what is no kit', { parts: [{ productId: '0198c0de-0000-7000-8000-000000000000', quantity: 1 }] }, 'parts'],
  ])('refuses %s and names the field', async (_what, change, field) => {
    const answer = await advisor.send<Refused>('POST', '/api/products', { body: { ...heater(), ...change } })
    expect(answer.status).toBe(422)
    expect(answer.body.errors.map((error) => error.field)).toContain(field)
    expect(answer.body.errors.every(({ message }) => message.length > 10)).toBe(true)
  })

  it('keeps a name to itself within its kind', async () => {
    const made = await product(world.db)
    const twin = await advisor.send<Refused>('POST', '/api/products', { body: heater({ name: made.name.toUpperCase() }) })
    expect(twin.status).toBe(422)
    expect(twin.body.errors[0]).toMatchObject({ field: 'name' })
  })

  it('takes nothing from keys that reach for the prototype', async () => {
    const raw = JSON.stringify(heater()).replace('{', '{"__proto__":{"role":"manager"},"constructor":{"prototype":{"polluted":1}},')
    const answer = await advisor.send('POST', '/api/products', { body: raw, headers: { 'content-type': 'application/json' } })
    expect(answer.status).toBe(422)
    expect(({} as Record<string, unknown>)['polluted']).toBeUndefined()
    expect(({} as Record<string, unknown>)['role']).toBeUndefined()
  })
})

describe('a kit', () => {
  const kit = (parts: string[], name = `Kit of ${parts.length} ${Math.random()}`) => ({
    ...heater(),
    kind: 'kit',
    name,
    spec: {},
    parts: parts.map((productId) => ({ productId, quantity: 1 })),
  })
  it('contains products, and neither itself, another kit, nothing, nor the same twice', async () => {
    const part = await product(world.db)
    const made = await advisor.send<Product>('POST', '/api/products', { body: kit([part.id]) })
    expect(made.status, made.text).toBe(201)
    const itself = await put(advisor, made.body, { parts: [{ productId: made.body.id, quantity: 1 }] }, '"1"')
    expect([itself.status, itself.body.errors[0]?.field]).toEqual([422, 'parts.0.productId'])
    expect(itself.body.detail).toContain('itself')
    for (const parts of [[made.body.id], [], [part.id, part.id], ['0198c0de-0000-7000-8000-000000000000']]) {
      const answer = await advisor.send<Refused>('POST', '/api/products', { body: kit(parts) })
      expect(answer.status, JSON.stringify(parts)).toBe(422)
      expect(answer.body.errors[0]?.field).toMatch(/^parts/)
    }
  })
})

describe('finding products', () => {
  it('takes signs of patterns for themselves, quickly', async () => {
    const odd = 'Wedge 50%_(a+)+$[x]\\ \'quoted"'
    await product(world.db, { name: odd })
    const started = performance.now()
    const found = await advisor.send<{ items: Product[] }>('GET', `/api/products?q=${encodeURIComponent('50%_(a+)+$[x]\\ \'quoted"')}`)
    expect(found.body.items.map(({ name }) => name)).toEqual([odd])
    expect((await advisor.send<{ items: Product[] }>('GET', '/api/products?q=%25')).body.items.map(({ name }) => name)).toEqual([odd])
    expect(performance.now() - started).toBeLessThan(1000)
  })
  it('pages, and refuses a page that is none', async () => {
    const page = await advisor.send<{ items: Product[]; total: number }>('GET', '/api/products?limit=2&offset=1')
    expect(page.body.items).toHaveLength(2)
    expect(page.body.total).toBeGreaterThan(2)
    for (const query of ['limit=0', 'limit=9999', 'offset=-1', 'limit=ten', 'wrong=1', 'archived=maybe'])
      expect((await advisor.send('GET', `/api/products?${query}`)).status, query).toBe(422)
  })
})

describe('the list of products', () => {
  it('is narrowed by what makers state, and says what is wrong with a filter that cannot be', async () => {
    await product(world.db, { name: 'Ashlow 50', spec: { powerW: 50 } })
    await product(world.db, { name: 'Ashlow 100', spec: { powerW: 100 } })
    const list = (query: string) => advisor.send<{ items: Product[] } & Refused>('GET', `/api/products?q=ashlow&${query}`)
    expect((await list('kind=heater&spec=powerW:100..')).body.items.map(({ name }) => name)).toEqual(['Ashlow 100'])
    for (const [query, words] of [
      ['spec=powerW:100..', /Say the kind as well/],
      ['kind=heater&spec=powerW:5000..', /between 5 and 1000 W/],
      ['kind=heater&spec=colour:red', /It states: powerW/],
      [`kind=heater&spec=${'x'.repeat(501)}`, /at most 500 characters/],
    ] as const) {
      const refused = await list(query)
      expect([refused.status, refused.body.errors[0]?.field], query).toEqual([422, 'spec'])
      expect(refused.body.errors[0]?.message).toMatch(words)
    }
  })
})
