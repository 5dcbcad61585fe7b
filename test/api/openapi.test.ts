import { Ajv2020 } from 'ajv/dist/2020.js'
import fc from 'fast-check'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PROBLEM_TITLES } from '../../api/http/problem.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { benchSubject } from '../bench/bench-subject.ts'
import { engine } from '../support/database.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { createWorld, type Answer, type Browser, type World } from './support/world.ts'

interface Schema {
  $ref?: string
  type?: string | string[]
  enum?: unknown[]
  const?: unknown
  properties?: Record<string, Schema>
  required?: string[]
  items?: Schema
  anyOf?: Schema[]
  oneOf?: Schema[]
  allOf?: Schema[]
  minimum?: number
  maximum?: number
  maxItems?: number
  format?: string
}
interface Operation {
  operationId: string
  'x-role'?: string
  parameters?: Array<{ in: string; name: string; schema: Schema; required?: boolean }>
  requestBody?: { content: Record<string, { schema: Schema }> }
  responses: Record<string, { content?: Record<string, { schema: Schema }>; headers?: Record<string, unknown> }>
}
interface Document {
  openapi: string
  paths: Record<string, Record<string, Operation>>
  components: { schemas: Record<string, Schema> }
}

let world: World
let document: Document
let shop: Shop
let manager: Browser
const ajv = new Ajv2020({ strict: false, validateFormats: false })
const ids: string[] = ['0198c0de-0000-7000-8000-000000000000', 'one', '', "1' or '1'='1", '%00']
const tokens: string[] = ['none', 'a'.repeat(43)]

beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  shop = await stockedShop(world, await world.signIn('member'))
  document = (await manager.send<Document & Record<string, unknown>>('GET', '/api/openapi.json')).body
  ajv.addSchema({ $id: 'document', components: document.components })
  const quote = (await issue(manager, await newQuote(manager, draftOf(shop)))).body
  ids.push(shop.heater.id, shop.tank.id, shop.shop.id, quote.id, quote.customer.id, manager.personId)
  tokens.push(pathOf(quote.links?.quote).slice(3), pathOf(quote.links?.setup).slice(3))
})
afterAll(() => world.close())

const operations = (): Array<{ method: string; path: string; operation: Operation }> =>
  Object.entries(document.paths).flatMap(([path, item]) =>
    Object.entries(item).map(([method, operation]) => ({ method: method.toUpperCase(), path, operation })),
  )

/** Every reference points into the document, so that a schema taken out of it is read with the document's own. */
const resolved = (schema: Schema): object =>
  JSON.parse(JSON.stringify(schema).replaceAll('"#/components', '"document#/components')) as object

/** Reading a schema costs a hundred times what using it does. */
const validators = new Map<string, ReturnType<typeof ajv.compile>>()
function validatorOf(schema: Schema): ReturnType<typeof ajv.compile> {
  const key = JSON.stringify(schema)
  const known = validators.get(key)
  if (known !== undefined) return known
  const made = ajv.compile(resolved(schema))
  validators.set(key, made)
  return made
}

/** Says what is wrong with an answer in the light of what the document promises; null where it keeps the promise. */
function brokenPromise(operation: Operation, answer: Answer): string | null {
  const promised = operation.responses[String(answer.status)]
  if (promised === undefined) return `status ${answer.status} is not described`
  const type = answer.headers.get('content-type')?.split(';')[0] ?? ''
  if (promised.content === undefined) return answer.text === '' ? null : 'a body where none is described'
  const media = promised.content[type]
  if (media === undefined) return `content type ${type} is not described`
  if (!type.includes('json') || media.schema.type === 'string') return null
  const validate = validatorOf(media.schema)
  return validate(answer.body) ? null : JSON.stringify(validate.errors?.slice(0, 3))
}

const schemaOf = (schema: Schema): Schema =>
  schema.$ref === undefined ? schema : (document.components.schemas[schema.$ref.split('/').pop() ?? ''] ?? {})

const odd = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    -1,
    0,
    1e308,
    5.5,
    '',
    ' ',
    '\u0000',
    '\ud800',
    '2026-02-30',
    '__proto__',
    [],
    {},
    [null],
    "';drop table product;--",
    '𝕏'.repeat(300),
  ),
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.double(),
)

/** Values of a schema, mostly right and now and then anything at all. */
function valueOf(given: Schema, depth = 0): fc.Arbitrary<unknown> {
  const schema = schemaOf(given)
  const right = rightValueOf(schema, depth)
  return fc.oneof({ weight: 12, arbitrary: right }, { weight: 1, arbitrary: odd })
}

function rightValueOf(schema: Schema, depth: number): fc.Arbitrary<unknown> {
  const branches = schema.anyOf ?? schema.oneOf
  if (branches !== undefined && branches.length > 0) return fc.oneof(...branches.map((branch) => valueOf(branch, depth)))
  if (schema.const !== undefined) return fc.constant(schema.const)
  if (schema.enum !== undefined) return fc.constantFrom(...schema.enum)
  switch (Array.isArray(schema.type) ? schema.type[0] : schema.type) {
    case 'object':
      return fc.record(
        Object.fromEntries(Object.entries(schema.properties ?? {}).map(([key, property]) => [key, valueOf(property, depth + 1)])),
        { requiredKeys: schema.required ?? [] },
      )
    case 'array':
      return depth > 6
        ? fc.constant([])
        : fc.array(valueOf(schema.items ?? {}, depth + 1), { maxLength: Math.min(3, schema.maxItems ?? 3) })
    case 'integer':
    case 'number': {
      const [min, max] = [Math.max(schema.minimum ?? -10, -1e6), Math.min(schema.maximum ?? 100_000, 1e6)]
      return fc.integer({ min: Math.ceil(min), max: Math.max(Math.ceil(min), Math.floor(max)) })
    }
    case 'boolean':
      return fc.boolean()
    case 'null':
      return fc.constant(null)
    default:
      return stringOf(schema)
  }
}

function stringOf(schema: Schema): fc.Arbitrary<string> {
  if (schema.format === 'date') return fc.constantFrom(today(), '2026-01-31')
  if (schema.format === 'uuid' || schema.format === 'guid') return fc.oneof(fc.constantFrom(...ids), fc.uuid())
  return fc.oneof(
    fc.constantFrom('small-tropical', 'America/Detroit', 'US', 'USD', '12', 'true', 'a title'),
    fc.string({ maxLength: 20 }),
    fc.constantFrom(...ids),
  )
}

function requestOf({ method, path, operation }: ReturnType<typeof operations>[number]): fc.Arbitrary<{
  method: string
  address: string
  body: unknown
  headers: Record<string, string>
  operation: Operation
}> {
  const parameters = operation.parameters ?? []
  const segments = [...path.matchAll(/\{(\w+)\}/g)].map(([, name = '']) => name)
  const pathValues = fc.tuple(
    ...segments.map((name) =>
      name === 'token'
        ? fc.constantFrom(...tokens)
        : name === 'n'
          ? fc.constantFrom('1', '2', '0', 'x')
          : fc.constantFrom(...ids.filter((id) => id !== '')),
    ),
  )
  const query = fc.record(
    Object.fromEntries(parameters.filter((one) => one.in === 'query').map((one) => [one.name, valueOf(one.schema)])),
    { requiredKeys: [] },
  )
  const schema = operation.requestBody?.content['application/json']?.schema
  const body =
    schema === undefined ? fc.constant(undefined) : fc.oneof({ weight: 10, arbitrary: valueOf(schema) }, { weight: 1, arbitrary: odd })
  const match = fc.constantFrom<Record<string, string>>(
    {},
    { 'if-match': '"1"' },
    { 'if-match': '"2"' },
    { 'if-match': 'W/"1"' },
    { 'if-none-match': '"1"' },
  )
  return fc.tuple(pathValues, query, body, match).map(([values, asked, sent, headers]) => {
    const filled = segments.reduce(
      (text, name, index) => text.replace(`{${name}}`, encodeURIComponent(String(values[index]).toWellFormed())),
      path,
    )
    const search = Object.entries(asked).flatMap(([key, value]) => {
      const part = `${key}=${encodeURIComponent(String(value).toWellFormed())}`
      // A parameter that stands twice, now and then.
      return part.length % 11 === 0 ? [part, part] : [part]
    })
    return { method, address: search.length === 0 ? filled : `${filled}?${search.join('&')}`, body: sent, headers, operation }
  })
}

/** Each of the two database suites takes its own half of 20 000, from its own seed. */
const RUNS = 10_000
/** What would end the callers' own sessions, and what is slow and has tests of its own: paper, and the document itself. */
const SKIPPED = new Set([
  'signOut',
  'changePassword',
  'getRevisionPdf',
  'getDraftPdf',
  'getOpenApi',
  'showReference',
  'updatePerson',
  'makeBackup',
  'downloadBackup',
  'checkBackup',
])

/** JSON as anybody may write it: now and then with a key that JavaScript gives a meaning of its own. */
function jsonText(body: unknown): string {
  const text = JSON.stringify(body)
  return text.startsWith('{"') && text.length % 17 === 0 ? `{"__proto__":{"role":"manager"},${text.slice(1)}` : text
}

describe('the OpenAPI document', () => {
  it('is 3.1, describes every route with its refusals, and leaves no reference open', () => {
    expect(document.openapi).toBe('3.1.0')
    const text = JSON.stringify(document)
    for (const [, name = ''] of text.matchAll(/"#\/components\/schemas\/([^"]+)"/g))
      expect(document.components.schemas).toHaveProperty(name)
    for (const { path, method, operation } of operations()) {
      expect(
        Object.keys(operation.responses).some((status) => status.startsWith('2')),
        `${method} ${path}`,
      ).toBe(true)
      for (const [status, response] of Object.entries(operation.responses)) {
        if (Number(status) >= 400 && !path.startsWith('/health'))
          expect(response.content, `${method} ${path} ${status}`).toHaveProperty(['application/problem+json'])
      }
    }
  })

  it('says who may ask, and where a version is asked for and given', () => {
    const one = (id: string) => operations().find(({ operation }) => operation.operationId === id)?.operation
    for (const { operation } of operations())
      expect(operation['x-role'], operation.operationId).toMatch(/^(public|member|advisor|manager)$/)
    expect(one('updateInstall')).toMatchObject({ 'x-role': 'manager', parameters: [{ name: 'If-Match', in: 'header', required: true }] })
    expect(
      one('saveQuote')
        ?.parameters?.map(({ name }) => name)
        .toSorted(),
    ).toEqual(['If-Match', 'id'])
    expect(one('getProduct')?.responses['200']?.headers).toHaveProperty('ETag')
    expect(one('updateProduct')?.responses['200']?.headers).toHaveProperty('ETag')
    expect(one('postSighting')?.parameters ?? []).toEqual([])
    for (const { operation } of operations()) {
      const asks = operation.parameters?.some(({ name }) => name === 'If-Match') === true
      expect(asks, operation.operationId).toBe('428' in operation.responses)
    }
  })

  it('explains every kind of refusal where its type leads', async () => {
    const page = await world.visitor().send('GET', '/api/reference')
    for (const code of Object.keys(PROBLEM_TITLES)) expect(page.text).toContain(`id="${code}"`)
  })

  it('is true of good answers, the large ones too', async () => {
    const quote = (await issue(manager, await newQuote(manager, draftOf(shop)))).body
    const { gear, conditions } = benchSubject()
    const { assumed: _assumed, livestock, ...exact } = conditions
    const asked: Array<[string, string, string, unknown?]> = [
      ['getSession', 'GET', '/api/session'],
      ['listPeople', 'GET', '/api/people'],
      ['invitePerson', 'POST', '/api/people/invitations', { name: 'A', role: 'member' }],
      ['listInvitations', 'GET', '/api/people/invitations'],
      ['getInstall', 'GET', '/api/install'],
      ['listProducts', 'GET', '/api/products?limit=10'],
      ['getProduct', 'GET', `/api/products/${shop.tank.id}`],
      ['getPicture', 'GET', `/api/products/${shop.tank.id}/picture`],
      ['getPriceRecord', 'GET', `/api/products/${shop.tank.id}/record`],
      ['listStores', 'GET', '/api/stores'],
      ['listLivestockGroups', 'GET', '/api/livestock-groups'],
      ['getLivestockGroup', 'GET', '/api/livestock-groups/dwarf-shrimp'],
      ['getBoard', 'GET', '/api/board'],
      ['getPriceViews', 'POST', '/api/price-views', { productIds: [shop.tank.id, shop.heater.id] }],
      ['listCustomers', 'GET', '/api/customers'],
      ['getCustomer', 'GET', `/api/customers/${quote.customer.id}`],
      ['listQuotes', 'GET', '/api/quotes'],
      ['getQuote', 'GET', `/api/quotes/${quote.id}`],
      ['getRevision', 'GET', `/api/quotes/${quote.id}/revisions/1`],
      ['listSetups', 'GET', '/api/setups'],
      ['computeSizing', 'POST', '/api/sizing', { gear, conditions: exact, livestockId: livestock.id }],
      ['getQuoteByLink', 'GET', `/api/quote-links/${pathOf(quote.links?.quote).slice(3)}`],
      ['getSetupByLink', 'GET', `/api/setup-links/${pathOf(quote.links?.setup).slice(3)}`],
      [
        'answerQuoteByLink',
        'POST',
        `/api/quote-links/${pathOf(quote.links?.quote).slice(3)}/answer`,
        { revision: 1, answer: 'accepted', letter: 'A' },
      ],
    ]
    for (const [id, method, path, body] of asked) {
      const operation = operations().find((one) => one.operation.operationId === id)?.operation
      const answer = await manager.send(method, path, body === undefined ? {} : { body })
      expect(answer.status, `${id} ${answer.text.slice(0, 300)}`).toBeLessThan(300)
      expect(operation && brokenPromise(operation, answer), id).toBeNull()
    }
    const revision = await manager.send<RevisionDocument & Record<string, unknown>>('GET', `/api/quotes/${quote.id}/revisions/1`)
    expect(revision.body.builds[0]?.report.findings.length).toBeGreaterThan(10)
  })

  it('holds under 10 000 requests of every shape: no answer that it does not describe, none that says we broke', async () => {
    const callers = [
      ...Array.from({ length: 6 }, () => manager),
      await world.signIn('advisor'),
      await world.signIn('member'),
      world.visitor(),
    ]
    const tried = operations().filter(({ operation }) => !SKIPPED.has(operation.operationId))
    const answered = new Map<number, number>()
    // Made once: what describes a quote's draft is large, and to make it anew for each request took longer than answering.
    const any = fc.tuple(fc.oneof(...tried.map(requestOf)), fc.constantFrom(...callers))
    await fc.assert(
      fc.asyncProperty(any, async ([{ method, address, body, headers, operation }, caller]) => {
        const json = body === undefined ? {} : { body: jsonText(body), headers: { ...headers, 'content-type': 'application/json' } }
        const answer = await caller.send(method, address, { headers, ...json })
        answered.set(answer.status, (answered.get(answer.status) ?? 0) + 1)
        if (answer.status >= 500)
          throw new Error(
            `${method} ${address} answered ${answer.status}: ${answer.text}\n${world.logged
              .filter((line) => line.includes('"err"'))
              .at(-1)
              ?.slice(0, 1500)}`,
          )
        const broken = brokenPromise(operation, answer)
        if (broken !== null) throw new Error(`${method} ${address}: ${broken}\n${answer.text.slice(0, 800)}`)
      }),
      { numRuns: RUNS, seed: engine === 'embedded' ? 20261120 : 20261127 },
    )
    expect([...answered.values()].reduce((sum, count) => sum + count, 0)).toBeGreaterThanOrEqual(RUNS)
    // Not only refusals: the generator must reach the good answers too.
    expect((answered.get(200) ?? 0) + (answered.get(201) ?? 0)).toBeGreaterThan(100)
    expect(answered.get(422)).toBeGreaterThan(100)
  }, 600_000)
})
