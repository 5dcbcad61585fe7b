import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Region } from '../../core/catalog/region.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays } from '../../core/dates.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { BoardRow } from '../../core/pricing/record.ts'
import { assembleBuild } from '../../core/quote/assemble.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { sighting, store } from '../support/rows.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
let shop: Shop
let abroad: Store
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  const member = await world.signIn('member')
  shop = await stockedShop(world, member)
  abroad = await store(world.db, { name: 'Over the Strait', currency: 'CAD', taxBasisPoints: 0, delivery: { kind: 'pickup_only' } })
  const seen = { seenOn: today(), priceMinor: 10_000 }
  expect((await member.send('POST', '/api/sightings', { body: sighting(shop.tank.id, abroad.id, seen) })).status).toBe(201)
})
afterAll(() => world.close())

interface Refused {
  errors: Array<{ field: string; message: string }>
}

describe('a region', () => {
  let region: Region
  it('is made, changed on its version, and its name and stores are checked', async () => {
    const body = { name: 'The valley', storeIds: [abroad.id] }
    const made = await manager.send<Region>('POST', '/api/regions', { body })
    expect(made.status, made.text).toBe(201)
    region = made.body
    const path = `/api/regions/${region.id}`
    expect((await manager.send('PUT', path, { body })).status).toBe(428)
    const changed = await manager.send<Region>('PUT', path, { body: { ...body, name: 'Far side' }, headers: { 'if-match': '"1"' } })
    expect(changed.body).toMatchObject({ name: 'Far side', version: 2 })
    expect((await manager.send('PUT', path, { body, headers: { 'if-match': '"1"' } })).status).toBe(412)
    const twin = await manager.send<Refused>('POST', '/api/regions', { body: { ...body, name: 'far side' } })
    expect([twin.status, twin.body.errors[0]?.field]).toEqual([422, 'name'])
    const nowhere = { name: 'Nowhere', storeIds: ['0198c0de-0000-7000-8000-000000000000'] }
    expect((await manager.send<Refused>('POST', '/api/regions', { body: nowhere })).body.errors[0]?.field).toBe('storeIds.0')
    expect((await manager.send<Refused>('POST', '/api/regions', { body: { name: 'Empty', storeIds: [] } })).status).toBe(422)
  })

  it('narrows the board and the prices', async () => {
    const board = await manager.send<{ rows: BoardRow[] }>('GET', `/api/board?regionId=${region.id}`)
    expect(board.body.rows.map(({ sighting: { storeId } }) => storeId)).toEqual([abroad.id])
    const body = { productIds: [shop.tank.id], regionId: region.id }
    const views = await manager.send<{ prices: PriceView[] }>('POST', '/api/price-views', { body })
    expect(views.body.prices.map(({ storeId }) => storeId)).toEqual([abroad.id])
  })

  it('is where a quote buys that names it; one that is gone leaves all stores', async () => {
    const draft = draftOf(shop)
    const view = await newQuote(manager, { ...draft, need: { ...draft.need, regionId: region.id } })
    expect(assembleBuild(view, 0).cost.today).toMatchObject({ complete: false, missing: [{ why: 'no_rate' }, { why: 'no_price' }] })
    expect((await manager.send('DELETE', `/api/regions/${region.id}`)).status).toBe(204)
    const again = await manager.send<typeof view>('GET', `/api/quotes/${view.id}`)
    expect(assembleBuild(again.body, 0).cost.today.complete).toBe(true)
    const save = (regionId: string, version: number) =>
      manager.send<Refused>('PUT', `/api/quotes/${view.id}`, {
        body: { customerId: view.customer.id, draft: { ...draft, need: { ...draft.need, regionId } } },
        headers: { 'if-match': `"${version}"` },
      })
    expect((await save(region.id, 1)).status, 'it named this one before').toBe(200)
    const unknown = '0198c0de-0000-7000-8000-000000000000'
    const refused = await save(unknown, 2)
    expect([refused.status, refused.body.errors[0]?.field]).toEqual([422, 'draft.need.regionId'])
    const begun = { customerId: view.customer.id, draft: { ...draft, need: { ...draft.need, regionId: region.id } } }
    const fresh = await manager.send<Refused>('POST', '/api/quotes', { body: begun })
    expect([fresh.status, fresh.body.errors[0]?.field]).toEqual([422, 'draft.need.regionId'])
  })
})

describe('a rate of exchange', () => {
  const rate = { currency: 'CAD', rate: 0.7312, seenOn: addDays(today(), -40), source: 'the bank’s noon rate' }

  it.each([
    [{ rate: 0 }, 'rate', 'above 0'],
    [{ rate: -1 }, 'rate', 'above 0'],
    [{ rate: 2_000_000 }, 'rate', 'at most 1000000'],
    [{ rate: 0.123456789 }, 'rate', '8 decimals'],
    [{ currency: 'USD' }, 'currency', 'needs no rate'],
    [{ seenOn: addDays(today(), 2) }, 'seenOn', 'still to come'],
    [{ source: '' }, 'source', 'empty'],
  ])('is refused with %o, its field and the fix', async (fields, field, words) => {
    const refused = await manager.send<Refused>('POST', '/api/currency-rates', { body: { ...rate, ...fields } })
    expect(refused.status).toBe(422)
    expect(refused.body.errors[0]).toMatchObject({ field, message: expect.stringContaining(words) as string })
  })

  it('is a manager’s, makes a foreign price count, and is printed with its day, source and age', async () => {
    const before = await newQuote(manager, draftOf(shop))
    expect((await manager.send('POST', '/api/currency-rates', { body: rate })).status).toBe(200)
    expect((await (await world.signIn('advisor')).send('POST', '/api/currency-rates', { body: rate })).status).toBe(403)
    const view = await manager.send<typeof before>('GET', `/api/quotes/${before.id}`)
    // By hand: 100.00 CAD at 0.7312 is 73.12.
    expect(assembleBuild(view.body, 0).cost.lines[0]).toMatchObject({ storeId: abroad.id, unitTodayMinor: 7312 })
    const issued = await issue(manager, view.body)
    const { body } = await manager.send<RevisionDocument>('GET', `/api/quotes/${before.id}/revisions/1`)
    expect(body.moneyNotes).toEqual([expect.stringContaining('1 CAD = 0.7312 USD') as string])
    expect(body.moneyNotes?.[0]).toContain('which is 40 days old')
    const page = await world.visitor().send('GET', pathOf(issued.body.links?.quote))
    expect(page.text).toContain('1 CAD = 0.7312 USD')
  })

  it('is the newest of its currency', async () => {
    await manager.send('POST', '/api/currency-rates', { body: { ...rate, rate: 0.75, seenOn: today() } })
    await manager.send('POST', '/api/currency-rates', { body: { ...rate, rate: 0.7, seenOn: addDays(today(), -90) } })
    const { body } = await manager.send<{ items: unknown[] }>('GET', '/api/currency-rates')
    expect(body.items).toEqual([{ ...rate, rate: 0.75, seenOn: today() }])
  })
})

describe('the terms of a quote', () => {
  it('take the discount off before tax, ask for a deposit, and want a reason at issue', async () => {
    const terms = {
      discount: { kind: 'amount' as const, amountMinor: 2_000, storeId: null, reason: '' },
      deposit: { kind: 'share' as const, basisPoints: 2_500 },
    }
    const draft = draftOf(shop)
    const view = await newQuote(manager, { ...draft, ...terms, need: { ...draft.need, storeIds: [shop.shop.id] } })
    const built = assembleBuild(view, 0)
    // By hand: 159.00 + 34.99 − 20.00 = 173.99, 6 % of it 10.4394; 25 % of 184.43 is 46.1075.
    expect(built.cost.today).toMatchObject({ goodsMinor: 19_399, discountMinor: 2_000, taxMinor: 1_044, totalMinor: 18_443 })
    expect(built.depositMinor).toBe(4_611)
    const refused = await issue(manager, view)
    expect(refused.status).toBe(422)
    expect(refused.body).toMatchObject({ errors: [{ field: 'discount.reason' }] })
  })
})
