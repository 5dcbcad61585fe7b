import { randomUUID } from 'node:crypto'
import { readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:https'
import type { AddressInfo } from 'node:net'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import type { HearingView } from '../../api/answers/hearing.ts'
import { deliver } from '../../api/delivery/deliver.ts'
import type { Postman } from '../../api/delivery/postman.ts'
import { planDeliveries, takeDueNotices, takeLetterTurns, type DueNotice } from '../../db/notice-deliveries.ts'
import { product, store } from '../support/rows.ts'
import { hearingWorld, linkIn, newSubscriber, SITE, type HearingWorld } from './support/hearing.ts'
import { bodyOf, headersOf } from './support/mailbox.ts'
import { openSealed } from './support/open-sealed.ts'
import type { Browser } from './support/world.ts'

const fixture = (name: string): string => readFileSync(new URL(`../fixtures/tls/${name}`, import.meta.url), 'utf8')
const [MINUTE, HOUR] = [60_000, 3_600_000]

let world: HearingWorld
let pushService: Server
let port: number
/** What the push service was sent, by the last part of the address, and what it answers. */
let pushed: Array<{ to: string; body: Buffer }>
let answers: Record<string, { status: number; headers?: Record<string, string> }>
let ida: Browser

beforeAll(async () => {
  world = await hearingWorld()
  pushService = createServer({ cert: fixture('first.crt'), key: fixture('first.key') }, (request, response) => {
    const chunks: Buffer[] = []
    request.on('data', (chunk: Buffer) => chunks.push(chunk))
    request.on('end', () => {
      const to = request.url?.split('/').at(-1) ?? ''
      pushed.push({ to, body: Buffer.concat(chunks) })
      const { status, headers } = answers[to] ?? { status: 201 }
      response.writeHead(status, headers).end()
    })
  })
  await new Promise<void>((resolve) => {
    pushService.listen(0, '127.0.0.1', resolve)
  })
  port = (pushService.address() as AddressInfo).port
})
afterAll(async () => {
  await new Promise((resolve) => pushService.close(resolve))
  await world.close()
})
beforeEach(async () => {
  world.begin()
  await world.db.deleteFrom('notice').execute()
  await world.db.deleteFrom('person_mail').execute()
  await world.db.deleteFrom('push_device').execute()
  pushed = []
  answers = {}
  world.box.refuse(null)
  ida = await world.signIn('member')
})

const now = (): Date => new Date(world.deps.clock())
const day = (ms = 0): string => new Date(now().getTime() + ms).toISOString().slice(0, 10)

async function withMail(address = 'ida@post.example'): Promise<void> {
  await ida.send('PUT', `${SITE}/api/hearing/mail`, { body: { address } })
  const form = { 'content-type': 'application/x-www-form-urlencoded' }
  await world.visitor().send('POST', SITE + linkIn(world.box.received.at(-1)?.raw ?? '', 'confirm'), { body: '', headers: form })
  world.box.received.length = 0
  world.later(1)
}
async function withDevice(name: string) {
  const { keys, body } = newSubscriber(name)
  const sent = { ...body, endpoint: `https://tanks.example.org/send/${name}` }
  expect((await ida.send('POST', `${SITE}/api/hearing/devices`, { body: sent })).status).toBe(201)
  world.later(1)
  return keys
}

/** A deal told to Ida now. */
async function told(change: { name?: string; shop?: string; used?: boolean; listed?: boolean; lastDay?: string } = {}): Promise<string> {
  const { id: productId } = await product(world.db, change.name === undefined ? {} : { name: change.name })
  const { id: storeId } = await store(world.db, change.shop === undefined ? {} : { name: change.shop })
  const watch = { id: randomUUID(), person_id: ida.personId, product_id: productId, limit_minor: 20_000, currency: 'USD' }
  await world.db
    .insertInto('watch')
    .values({ ...watch, conditions: ['new', 'used'] })
    .execute()
  const id = randomUUID()
  const amounts = { price_minor: 12_000, currency: 'USD', total_minor: 12_900, total_currency: 'USD' }
  await world.db
    .insertInto('notice')
    .values({
      id,
      watch_id: watch.id,
      person_id: ida.personId,
      product_id: productId,
      store_id: storeId,
      condition: change.used === true ? 'used' : 'sale',
      ...amounts,
      deal_key: id,
      sighting_id: change.listed === true ? null : randomUUID(),
      seen_on: day(),
      deal_from: change.lastDay ?? day(),
      deal_until: change.lastDay ?? day(),
      last_day_stated: change.lastDay !== undefined,
      told_at: now(),
    })
    .execute()
  return id
}
const round = (parts: Partial<Postman> = {}): Promise<void> =>
  deliver({
    db: world.db,
    clock: world.deps.clock,
    log: world.deps.log,
    linkKey: world.deps.linkKey,
    origin: SITE,
    sendLetter: world.deps.sendLetter ?? null,
    reach: { resolve: async () => ['127.0.0.1'], mayReach: () => true, port, ca: fixture('first.crt') },
    stopping: () => false,
    ...parts,
  })
const stateOf = async (id: string, channel: 'email' | 'push') =>
  world.db
    .selectFrom('notice_delivery')
    .select(['state', 'tries', 'reason'])
    .where('notice_id', '=', id)
    .where('channel', '=', channel)
    .executeTakeFirst()
const hearing = async (): Promise<HearingView> => (await ida.send<HearingView>('GET', `${SITE}/api/hearing`)).body

describe('deals by e-mail', () => {
  it('come in one letter, in plain words, with the way out of it', async () => {
    await withMail()
    await told({ name: 'Rimless 60 <b>&', shop: 'Harbour Aquatics' })
    await told({ name: 'Canister 250', used: true })
    await told({ name: 'Lid 60', shop: 'Own Shop', listed: true })
    await round()
    expect(world.box.received.map(({ to }) => to)).toEqual([['ida@post.example']])
    const raw = world.box.received[0]?.raw ?? ''
    expect(headersOf(raw).get('subject')).toBe('3 deals on what you watch')
    expect(headersOf(raw).get('list-unsubscribe-post')).toBe('List-Unsubscribe=One-Click')
    expect(headersOf(raw).get('list-unsubscribe')).toMatch(new RegExp(`^<${SITE}/m/stop/[\\w-]{43}\\.[0-9a-z]+\\.[0-9a-f]{16}>$`))
    const text = bodyOf(raw)
    expect(text).toContain('Rimless 60 <b>&: $129.00\r\nHarbour Aquatics, seen')
    expect(text).toContain('Canister 250, used: $129.00')
    expect(text).toContain('Lid 60: $129.00\r\nOwn Shop, in its price list from')
    expect(text).toContain('Rimless 60 &lt;b&gt;&amp;: $129.00')
    expect(text.match(/<img|<script|<link|utm_|src=/g)).toBeNull()
    const form = { 'content-type': 'application/x-www-form-urlencoded' }
    await world.visitor().send('POST', SITE + linkIn(raw, 'stop'), { body: 'List-Unsubscribe=One-Click', headers: form })
    expect((await hearing()).mail?.address).toBeNull()
  })

  it('come once an hour at the most, and each deal once', async () => {
    await withMail()
    const first = await told({ name: 'Heater 200' })
    await round()
    await round()
    const second = await told({ name: 'Heater 300' })
    world.later(HOUR - 1_000)
    await round()
    expect(world.box.received).toHaveLength(1)
    world.later(2_000)
    await round()
    expect(world.box.received.map(({ raw }) => headersOf(raw).get('subject'))).toEqual(['Heater 200: $129.00', 'Heater 300: $129.00'])
    expect([await stateOf(first, 'email'), await stateOf(second, 'email')]).toEqual([
      { state: 'sent', tries: 1, reason: null },
      { state: 'sent', tries: 1, reason: null },
    ])
  })

  it('come to nobody who has not confirmed, who looked already, whose deal is over, or who was disabled', async () => {
    await ida.send('PUT', `${SITE}/api/hearing/mail`, { body: { address: 'ida@post.example' } })
    world.box.received.length = 0
    await told()
    await round()
    world.later(1_000)
    await withMail()
    const [seen, over] = [await told(), await told({ lastDay: day(-2 * 24 * HOUR) })].map(String)
    await world.db
      .updateTable('notice')
      .set({ seen_at: now() })
      .where('id', '=', seen ?? '')
      .execute()
    await round()
    expect(await stateOf(over ?? '', 'email')).toMatchObject({ state: 'given_up', reason: 'seen already, or over' })
    await told()
    await world.db.updateTable('person').set({ disabled_at: now() }).where('id', '=', ida.personId).execute()
    world.later(2 * HOUR)
    await round()
    expect(world.box.received).toEqual([])
  })

  it('go to a few at a time: whoever never had a letter first, then whoever had none the longest, nobody twice within the hour', async () => {
    const people: Browser[] = []
    for (const hoursAgo of [0.5, 2, 3, null]) {
      ida = await world.signIn('member')
      people.push(ida)
      await withMail(`p${people.length}@post.example`)
      await told()
      await world.db
        .updateTable('person_mail')
        .set({ last_letter_at: hoursAgo === null ? null : new Date(now().getTime() - hoursAgo * HOUR) })
        .where('person_id', '=', ida.personId)
        .execute()
    }
    await planDeliveries(world.db, ['email'], now())
    const turns = async (most: number): Promise<number[]> => {
      const taken = await takeLetterTurns(world.db, { now: now(), everyMs: HOUR, most })
      return taken.map(({ personId }) => people.findIndex((one) => one.personId === personId))
    }
    expect([await turns(1), await turns(1), await turns(1), await turns(1)]).toEqual([[3], [2], [1], []])
    world.later(HOUR / 2)
    expect(await turns(2)).toEqual([0])
  })

  it('are tried once an hour where the mail server refuses, and given up after a day, which the account says', async () => {
    await withMail()
    const id = await told()
    world.box.refuse('mailbox full')
    await round()
    expect(await stateOf(id, 'email')).toMatchObject({ state: 'failed', tries: 1 })
    expect((await hearing()).mail?.failingSince).not.toBeNull()
    expect(world.logged.join('')).not.toContain('ida@post.example')
    await round()
    expect((await stateOf(id, 'email'))?.tries).toBe(1)
    world.later(25 * HOUR)
    await round()
    expect(await stateOf(id, 'email')).toMatchObject({ state: 'given_up', tries: 1 })
    world.box.refuse(null)
    await told()
    await round()
    expect((await hearing()).mail?.failingSince).toBeNull()
  })
})

describe('deals on a phone', () => {
  it('are read by the phone alone, and say where, how much and nothing of anyone', async () => {
    const keys = await withDevice('phone')
    const id = await told({ name: 'Rimless 60', shop: 'Quay Aquatics' })
    await round()
    expect(pushed.map(({ to }) => to)).toEqual(['phone'])
    const opened = openSealed(pushed[0]?.body ?? Buffer.alloc(0), keys)
    expect(JSON.parse(opened)).toMatchObject({
      title: 'Rimless 60: $129.00',
      body: expect.stringContaining('Quay Aquatics, seen'),
      tag: id,
    })
    expect((JSON.parse(opened) as { path: string }).path).toMatch(/^\/prices\/[0-9a-f-]{36}$/)
    expect(opened).not.toContain(ida.signInName)
    expect(await stateOf(id, 'push')).toEqual({ state: 'sent', tries: 1, reason: null })
    await round()
    expect(pushed).toHaveLength(1)
  })

  it('are one message where there are several', async () => {
    const keys = await withDevice('phone')
    for (const name of ['Alpha', 'Beta', 'Gamma', 'Delta']) await told({ name })
    await round()
    const opened = pushed.map(({ body }) => JSON.parse(openSealed(body, keys)) as { title: string; body: string; path: string })
    expect(opened.map(({ title, path }) => [title, path])).toEqual([['4 deals on what you watch', '/watches']])
    expect(opened[0]?.body.split('\n')).toHaveLength(3)
  })

  it('go no more to a browser that its push service no longer knows', async () => {
    await withDevice('gone')
    answers['gone'] = { status: 410 }
    const id = await told()
    await round()
    expect((await hearing()).push?.devices).toEqual([])
    expect(await stateOf(id, 'push')).toMatchObject({ state: 'given_up', reason: 'no device is left' })
  })

  it('are tried again where the service is busy, later each time and when it says, and given up after a day', async () => {
    await withDevice('busy')
    answers['busy'] = { status: 503 }
    const id = await told()
    await round()
    expect(await stateOf(id, 'push')).toMatchObject({ state: 'failed', tries: 1, reason: 'the push service answered 503' })
    expect((await hearing()).push?.devices[0]?.failingSince).not.toBeNull()
    await round()
    expect(pushed).toHaveLength(1)
    world.later(MINUTE + 1_000)
    answers['busy'] = { status: 429, headers: { 'retry-after': '1800' } }
    await round()
    world.later(25 * MINUTE)
    await round()
    expect(pushed, 'asked to wait for half an hour').toHaveLength(2)
    world.later(6 * MINUTE)
    answers['busy'] = { status: 201 }
    await round()
    expect(await stateOf(id, 'push')).toMatchObject({ state: 'sent', tries: 3 })
    expect((await hearing()).push?.devices[0]?.failingSince).toBeNull()
    answers['busy'] = { status: 500 }
    const late = await told()
    await round()
    world.later(25 * HOUR)
    await round()
    expect(await stateOf(late, 'push')).toMatchObject({ state: 'given_up', reason: 'the push service answered 500' })
  })

  it('go nowhere where the name leads inside by now', async () => {
    await withDevice('inside')
    const id = await told()
    await round({ reach: { resolve: async () => ['127.0.0.1'], mayReach: () => false, port } })
    expect(pushed).toEqual([])
    expect(await stateOf(id, 'push')).toMatchObject({ state: 'failed', reason: 'the push service was not reached (AddressRefused)' })
  })

  it('are told twice at the most where the service dies between handing over and noting', async () => {
    await withDevice('phone')
    const id = await told()
    // Planned and taken, then nothing: as far as a service came that died.
    await round({ stopping: () => true })
    const takeAndDie = (): Promise<DueNotice[]> => takeDueNotices(world.db, ida.personId, 'push', now())
    expect((await takeAndDie()).map((notice) => notice.id)).toEqual([id])
    expect(await takeAndDie(), 'taken by one alone').toEqual([])
    world.later(11 * MINUTE)
    expect(await takeAndDie()).toHaveLength(1)
    world.later(11 * MINUTE)
    await round()
    expect(pushed).toEqual([])
    expect(await stateOf(id, 'push')).toMatchObject({ state: 'given_up', tries: 2, reason: 'cut off twice' })
  })

  it('do not go out, nor are they noted, where the place offers no way', async () => {
    const id = await told()
    await round({ origin: null })
    await round({ origin: 'http://localhost:8080', sendLetter: null })
    expect(await stateOf(id, 'push')).toBeUndefined()
  })
})
