import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Store } from '../../core/catalog/store.ts'
import type { Install } from '../../core/install.ts'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { store } from '../support/rows.ts'
import { draftOf, issue, newQuote, stockedShop, type Shop } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
let shop: Shop
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  shop = await stockedShop(world, await world.signIn('member'))
  await runAs('store')
})
afterAll(() => world.close())

async function runAs(mode: Install['mode']): Promise<void> {
  const read = await manager.send<Install & { version: number }>('GET', '/api/install')
  const { version: _version, ...install } = read.body
  const headers = { 'if-match': read.headers.get('etag') ?? '' }
  expect((await manager.send('PUT', '/api/install', { body: { ...install, mode }, headers })).status).toBe(200)
}
/** The draft names the store where every part of it was seen. */
const outsideDraft = () => {
  const draft = draftOf(shop)
  const builds = draft.builds.map((build) => ({ ...build, lines: build.lines.map((line) => ({ ...line, storeId: shop.shop.id })) }))
  return { ...draft, builds, need: { ...draft.need, storeIds: [shop.shop.id] } }
}
const NO_STORE = {
  status: 422,
  body: { errors: [{ field: 'ownStore', message: expect.stringContaining('no store is marked as its own') as string }] },
}

/** Refused, and nothing of it is there: no revision, no link, no number, no line in the trail. */
async function expectRefused(quote: QuoteView): Promise<void> {
  expect(await issue(manager, quote)).toMatchObject(NO_STORE)
  const { body } = await manager.send<QuoteView>('GET', `/api/quotes/${quote.id}`)
  expect(body).toMatchObject({ state: 'draft', version: quote.version, links: null })
  expect((await manager.send('GET', `/api/quotes/${quote.id}/revisions/1`)).status).toBe(404)
  expect(await world.db.selectFrom('audit_entry').select('id').where('action', '=', 'quote_issued').where('subject_id', '=', quote.id).execute()).toEqual([]) // prettier-ignore
}
const ownStore = (fields: Partial<Store> = {}) =>
  store(world.db, { name: 'Brindle Aquatics', own: true, delivery: { kind: 'pickup_only' }, ...fields })

describe('a quote of a place that is run as a store', () => {
  it('is not issued on what members saw elsewhere while no store is its own, nor while that one is archived', async () => {
    const quote = await newQuote(manager, outsideDraft())
    await expectRefused(quote)
    const own = await ownStore({ archived: true })
    await expectRefused(quote)
    await world.db.deleteFrom('store').where('id', '=', own.id).execute()
  })

  it('is not issued to an advisor either, and is in club mode', async () => {
    const advisor = await world.signIn('advisor')
    const quote = await newQuote(advisor, outsideDraft())
    expect(await issue(advisor, quote)).toMatchObject(NO_STORE)
    await runAs('club')
    const issued = await issue(advisor, quote)
    expect(issued.status, issued.text).toBe(200)
    const { body } = await advisor.send<RevisionDocument>('GET', `/api/quotes/${quote.id}/revisions/1`)
    expect(body.builds[0]?.cost.today).toMatchObject({ complete: true, goodsMinor: 15_900 + 3_499 })
    await runAs('store')
    // What was issued stays; the next version rests on the store's own prices, and there are none.
    const revised = await manager.send<QuoteView>('GET', `/api/quotes/${quote.id}`)
    expect(await issue(manager, revised.body)).toMatchObject(NO_STORE)
    expect((await manager.send('GET', `/api/quotes/${quote.id}/revisions/1`)).status).toBe(200)
  })

  it('takes no price that was seen elsewhere for one that the own list lacks: the line has none, and no total is whole', async () => {
    const own = await ownStore()
    const listed = await manager.send('PUT', `/api/price-list/${shop.heater.id}`, {
      body: { stockNumber: null, stockCount: null, prices: [{ validFrom: '2026-01-01', priceMinor: 4_200 }] },
      headers: { 'if-match': '"0"' },
    })
    expect(listed.status, listed.text).toBe(200)
    const quote = await newQuote(manager, outsideDraft())
    const issued = await issue(manager, quote)
    expect(issued.status, issued.text).toBe(200)
    const { body, text } = await manager.send<RevisionDocument & Record<string, unknown>>('GET', `/api/quotes/${quote.id}/revisions/1`)
    const [tank, heater] = body.builds[0]?.cost.lines ?? []
    expect(heater).toMatchObject({ storeId: own.id, todayMinor: 4_200 })
    expect(tank).toMatchObject({ todayMinor: null })
    for (const { cost } of body.builds) for (const tier of [cost.today, cost.full]) expect(tier.complete).toBe(false)
    for (const trace of [shop.shop.id, shop.shop.name, '15900', '159.00', '3499']) expect(text).not.toContain(trace)
  })
})
