import { createHash } from 'node:crypto'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { RULES, type OperationId } from '../../api/auth/rules.ts'
import { atLeast, ROLES, type Role } from '../../core/people/roles.ts'
import { product, sighting, store } from '../support/rows.ts'
import { draftOf, issue, newCustomer, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { lookNow, setWatch, toldTo } from './support/watches.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

/**
 * Every operation of the OpenAPI document that names one thing × every role × one's own thing and another's. Whose thing it is decides for the
 * few named here; for every other the role decides alone, and this test holds it to that.
 */
interface Operation {
  id: OperationId
  method: string
  path: string
  body: unknown
}
type Whose = 'own' | 'other'

let world: World
let shop: Shop
let operations: Operation[]
const callers = new Map<Role, Browser>()
let others: Record<'member' | 'manager', Browser>

beforeAll(async () => {
  world = await createWorld()
  for (const role of ROLES) callers.set(role, await world.signIn(role))
  others = { member: await world.signIn('member'), manager: await world.signIn('manager') }
  shop = await stockedShop(world, others.member)
  const document = await world.visitor().send<{
    paths: Record<string, Record<string, { operationId: OperationId }>>
  }>('GET', '/api/openapi.json')
  operations = Object.entries(document.body.paths).flatMap(([path, item]) =>
    Object.entries(item)
      .filter(([, { operationId }]) => path.includes('{id}') && RULES[operationId] !== 'public')
      .map(([method, { operationId }]) => ({ id: operationId, method: method.toUpperCase(), path, body: BODIES[operationId] })),
  )
})
afterAll(() => world.close())

/** What these need to be sent before they ask whose it is. */
const BODIES: Partial<Record<OperationId, unknown>> = {
  judgeSighting: { decision: 'accept' },
  answerNotice: { answer: 'still_there', sightingId: '0198c0de-0000-7000-8000-000000000000' },
}

/** A sighting of a product of its own, posted by its reporter. */
async function sightingOf(reporter: Browser): Promise<string> {
  const { id: productId } = await product(world.db)
  const { id: storeId } = await store(world.db)
  const answer = await reporter.send<{ id: string }>('POST', '/api/sightings', { body: sighting(productId, storeId, { seenOn: today() }) })
  return answer.body.id
}
const watchOf = async (owner: Browser): Promise<string> => (await setWatch(owner, { productId: (await product(world.db)).id })).body.id
/** One's own watch told of a price that one posted oneself. */
async function noticeOf(owner: Browser): Promise<string> {
  const { id: productId } = await product(world.db)
  await setWatch(owner, { productId, limitMinor: 1_000_000 })
  const { id: storeId } = await store(world.db)
  await owner.send('POST', '/api/sightings', { body: sighting(productId, storeId, { seenOn: today() }) })
  await lookNow(world)
  return (await toldTo(owner)).find((notice) => notice.productId === productId)?.id ?? 'none'
}
const sessionOf = async (browser: Browser): Promise<string> =>
  (await browser.send<{ items: Array<{ id: string; current: boolean }> }>('GET', '/api/sessions')).body.items.find(({ current }) => current)
    ?.id ?? 'none'
async function deviceOf(owner: Browser): Promise<string> {
  const idHash = createHash('sha256').update(owner.personId).digest('hex')
  const device = { id_hash: idHash, person_id: owner.personId, endpoint: 'https://push.example.net/x', p256dh: 'x', auth: 'x' }
  await world.db
    .insertInto('push_device')
    .values({ ...device, device: 'phone', created_at: new Date() })
    .onConflict((conflict) => conflict.doNothing())
    .execute()
  return idHash
}
async function undoOf(reporter: Browser): Promise<string> {
  await sightingOf(reporter)
  const { reporters } = (await others.manager.send<{ reporters: Array<{ id: string; sightings: number }> }>('GET', '/api/moderation/undos'))
    .body
  const sightings = reporters.find(({ id }) => id === reporter.personId)?.sightings
  const body = { personId: reporter.personId, sightings }
  return (await others.manager.send<{ id: string }>('POST', '/api/moderation/undos', { body })).body.id
}
/** One's own where one may have one: a member has no quote, so that hers is another's. */
const maker = (owner: Browser): Browser => (owner === callers.get('advisor') || owner === callers.get('manager') ? owner : others.manager)
async function setupOf(advisor: Browser): Promise<string> {
  const quote = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
  const letter = { revision: 1, answer: 'accepted', letter: 'A' }
  await world.visitor().send('POST', `/api/quote-links/${pathOf(quote.links?.quote).slice(3)}/answer`, { body: letter })
  const { items } = (await advisor.send<{ items: Array<{ id: string; quoteNumber: string }> }>('GET', '/api/setups')).body
  return items.find(({ quoteNumber }) => quoteNumber === quote.number)?.id ?? 'none'
}
async function invitationOf(manager: Browser): Promise<string> {
  await manager.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'member' } })
  return (await manager.send<{ items: Array<{ id: string }> }>('GET', '/api/people/invitations')).body.items[0]?.id ?? 'none'
}

/** How to make a thing for an owner, by where its operations live; longest first. What is not here is asked for under an id that names nothing. */
const MAKERS: Array<[prefix: string, make: (owner: Browser) => Promise<string>]> = [
  ['/api/people/invitations/', (owner) => invitationOf(owner === callers.get('manager') ? owner : others.manager)],
  ['/api/people/', async (owner) => owner.personId],
  ['/api/sessions/', sessionOf],
  ['/api/hearing/devices/', deviceOf],
  ['/api/moderation/sightings/', sightingOf],
  ['/api/moderation/undos/', undoOf],
  ['/api/sightings/', sightingOf],
  ['/api/watches/', watchOf],
  ['/api/notices/', noticeOf],
  ['/api/customers/', async (owner) => (await newCustomer(maker(owner))).id],
  ['/api/quotes/', async (owner) => (await issue(maker(owner), await newQuote(maker(owner), draftOf(shop)))).body.id],
  ['/api/setups/', (owner) => setupOf(maker(owner))],
  ['/api/products/', async () => (await product(world.db)).id],
  ['/api/stores/', async () => (await store(world.db)).id],
]
const NOTHING = '0198c0de-0000-7000-8000-000000000000'

/** Where whose it is decides: the answer to the owner and to anybody else, for those whom the rule lets in. */
const BY_OWNER: Partial<Record<OperationId, (whose: Whose, role: Role) => number>> = {
  endSession: (whose) => (whose === 'own' ? 204 : 404),
  removeOwnDevice: (whose) => (whose === 'own' ? 204 : 404),
  confirmSighting: (whose) => (whose === 'own' ? 409 : 200),
  disputeSighting: (whose) => (whose === 'own' ? 409 : 200),
  judgeSighting: (whose) => (whose === 'own' ? 409 : 200),
  withdrawSighting: (whose, role) => (whose === 'own' || role === 'manager' ? 200 : 409),
  getWatch: (whose) => (whose === 'own' ? 200 : 404),
  endWatch: (whose) => (whose === 'own' ? 204 : 404),
  answerNotice: (whose) => (whose === 'own' ? 200 : 404),
  takeBackGone: (whose) => (whose === 'own' ? 200 : 404),
  makePasswordLink: (whose) => (whose === 'own' ? 409 : 201),
}

async function ask({ method, path, body }: Operation, caller: Browser, owner: Browser): Promise<number> {
  const make = MAKERS.find(([prefix]) => path.startsWith(prefix))?.[1]
  const id = make === undefined ? NOTHING : await make(owner)
  const address = path.replace('{id}', id).replaceAll(/\{\w+\}/g, '1')
  return (await caller.send(method, address, body === undefined ? {} : { body })).status
}

/** One who may be signed out by what is asked: made for the purpose. */
const stranger = (role: Role): Promise<Browser> => world.signIn(role)

describe('every operation that names a thing, by every role, on one’s own and on another’s', () => {
  it('is refused below its role and let in from it on, and asks whose it is only where that is said', async () => {
    expect(operations.length).toBeGreaterThan(25)
    let asked = 0
    for (const operation of operations) {
      const rule = RULES[operation.id] as Role
      for (const role of ROLES) {
        for (const whose of ['own', 'other'] as const) {
          const caller = operation.id === 'endSession' ? await stranger(role) : callers.get(role)!
          const owner = whose === 'own' ? caller : others.member
          const status = await ask(operation, caller, owner)
          const told = `${role} ${operation.method} ${operation.path} (${operation.id}), ${whose}: ${status}`
          asked += 1
          if (!atLeast(role, rule)) expect(status, told).toBe(403)
          else if (BY_OWNER[operation.id]) expect(status, told).toBe(BY_OWNER[operation.id]?.(whose, role))
          else expect([401, 403, 409, 500, 503], told).not.toContain(status)
        }
      }
    }
    expect(asked).toBe(operations.length * ROLES.length * 2)
  }, 240_000)

  it('knows every exception by an operation that there is', () => {
    const known = new Set(operations.map(({ id }) => id))
    for (const id of Object.keys(BY_OWNER)) expect(known.has(id as OperationId), id).toBe(true)
  })
})

describe('a link', () => {
  it('of one thing opens no other, nor one of its own kind under another number', async () => {
    const advisor = callers.get('advisor')!
    const [one, two] = [
      await issue(advisor, await newQuote(advisor, draftOf(shop))),
      await issue(advisor, await newQuote(advisor, draftOf(shop))),
    ]
    const token = (answer: typeof one, kind: 'quote' | 'setup'): string => pathOf(answer.body.links?.[kind]).slice(3)
    const visitor = world.visitor()
    for (const answer of [one, two]) {
      expect((await visitor.send('GET', `/api/quote-links/${token(answer, 'setup')}`)).status).toBe(404)
      expect((await visitor.send('GET', `/api/setup-links/${token(answer, 'quote')}`)).status).toBe(404)
    }
    // The id of one with the proof of the other.
    const bytes = [token(one, 'quote'), token(two, 'quote')].map((text) => Buffer.from(text, 'base64url'))
    const mixed = Buffer.concat([bytes[0]!.subarray(0, 16), bytes[1]!.subarray(16)]).toString('base64url')
    expect((await visitor.send('GET', `/api/quote-links/${mixed}`)).status).toBe(404)
    expect((await visitor.send('GET', `/api/quote-links/${token(one, 'quote')}`)).status).toBe(200)
  })
})
