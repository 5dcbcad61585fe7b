import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { quotePaper } from '../../api/pdf/quote-paper.ts'
import type { QuotePaper } from '../../api/quotes/paper.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, sayDate, yearOf } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import type { ListedPrice } from '../../core/pricing/listed-price.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { BoardRow, PriceRecord } from '../../core/pricing/record.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import type { StockRow } from '../../db/price-list.ts'
import { phoneId, product, sighting, store } from '../support/rows.ts'
import type { Worker } from '../../api/jobs/worker.ts'
import { importFile, workIn } from './support/imports.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { lookNow, setWatch, toldTo } from './support/watches.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

const OUTSIDE = 'Quillon Basin'
/** A day and a price that nothing of the own store has. */
const outsideDay = addDays(today(), -23)
const OUTSIDE_PRICE = 13_371

let world: World
let manager: Browser
let shop: Shop
let worker: Worker
let own: Store
let outside: Store
const printed: QuotePaper[] = []
beforeAll(async () => {
  world = await createWorld({
    pdf: async (paper) => {
      printed.push(paper)
      return new TextEncoder().encode('%PDF-1.7')
    },
  })
  worker = workIn(world)
  manager = await world.signIn('manager')
  const member = await world.signIn('member')
  shop = await stockedShop(world, member)
  outside = await store(world.db, { name: OUTSIDE, delivery: { kind: 'pickup_only' } })
  const seen = { seenOn: outsideDay, priceMinor: OUTSIDE_PRICE }
  const posted = await member.send('POST', '/api/sightings', { body: sighting(shop.tank.id, outside.id, seen) })
  expect(posted.status, posted.text).toBe(201)
  own = await store(world.db, {
    name: 'Brindle Aquatics',
    own: true,
    delivery: { kind: 'pickup_only' },
    returnDays: 21,
    warrantyMonths: 24,
  })
  const read = await manager.send<Install & { version: number }>('GET', '/api/install')
  const { version: _version, ...install } = read.body
  const headers = { 'if-match': read.headers.get('etag') ?? '' }
  expect((await manager.send('PUT', '/api/install', { body: { ...install, mode: 'store' }, headers })).status).toBe(200)
})
afterAll(async () => {
  await worker.stop()
  await world.close()
})

/** A price with a sale that has a last day. */
const SALE = { validFrom: '2026-02-01', priceMinor: 950, saleMinor: 800, saleUntil: '2026-02-14' }
const importList = (file: string, dryRun = false, type = 'text/csv') => importFile(manager, file, { set: 'price_list', dryRun, type })
const entry = (id: string) => manager.send<StockRow>('GET', `/api/price-list/${id}`)

describe('the own price list', () => {
  it('is tried first and changes nothing, then stored, and stored again changes nothing', async () => {
    const csv = `stock number;product;price;stock;valid from\nT-1;${shop.tank.name};189,50;4;2026-01-01\nH-9;${shop.heater.name};39,90;;2026-01-01\n`
    expect((await importList(csv, true)).outcome).toMatchObject({ applied: false, rows: 2, creates: 2, faults: 0 })
    expect((await entry(shop.tank.id)).body).toMatchObject({ version: 0, prices: [] })
    expect((await importList(csv)).outcome).toMatchObject({ applied: true, creates: 2, updates: 0, unchanged: 0 })
    expect((await entry(shop.tank.id)).body).toMatchObject({
      stockNumber: 'T-1',
      stockCount: 4,
      prices: [{ validFrom: '2026-01-01', priceMinor: 18_950, saleMinor: null, saleUntil: null }],
    })
    expect((await importList(csv)).outcome).toMatchObject({ creates: 0, updates: 0, unchanged: 2 })
  })

  it('says every fault by row and column, and stores nothing of the file', async () => {
    const csv = [
      'stock number,gtin,product,price,stock,valid from,sale price,sale until',
      `T-1,,,0,1,2026-02-01,,`,
      `T-1,,,12x,-3,soon,,`,
      `,,,10.00,,,,`,
      `,,No such thing,10.00,,,,`,
      `T-1,,${shop.heater.name},11.00,,2026-03-01,,`,
      `T-1,,,11.00,,2026-03-01,11.00,`,
      `T-1,,,11.00,,2026-03-01,9.00,2026-02-01`,
      `T-1,,,11.00,,2026-03-01,,2026-03-31`,
      `T-1,,,,,2026-03-01,,`,
    ].join('\n')
    const first = await importList(csv)
    expect(first.outcome?.applied).toBe(false)
    expect(first.faults.map(({ row, column }) => [row, column])).toEqual([
      [2, 'price'],
      [3, 'stock'],
      [3, 'validFrom'],
      [3, 'price'],
      [4, 'product'],
      [5, 'product'],
      [6, 'stockNumber'],
      [7, 'salePrice'],
      [8, 'saleUntil'],
      [9, 'salePrice'],
      [10, 'price'],
    ])
    const unknown = await importList(`product,price\nNo such thing,10.00\n`)
    expect(unknown.faults).toEqual([{ row: 2, column: 'product', message: expect.stringContaining('not in the catalog') as string }])
    expect((await importList('price,colour\n1,2')).faults[0]).toMatchObject({ row: 1, column: 'colour' })
    expect((await importList(`product,price,currency\n${shop.tank.name},5,EUR`)).faults[0]).toMatchObject({ row: 2, column: 'currency' })
    expect((await importList('productId,price\n00000000-0000-4000-8000-000000000000,5')).faults[0]).toMatchObject({ column: 'productId' })
    expect((await entry(shop.tank.id)).body.prices).toHaveLength(1)
  })

  it('takes nothing from a file whose rows contradict each other or what is here', async () => {
    const said = async (...rows: string[]) => {
      const csv = ['stock number,product,price,stock,valid from', ...rows].join('\n')
      return (await importList(csv, true)).faults.map(({ row, column }) => [row, column])
    }
    const [tank, heater] = [shop.tank.name, shop.heater.name]
    expect(await said(`,${tank},5,,2026-03-01`, `T-1,,6,,2026-03-01`)).toEqual([[3, 'validFrom']])
    expect(await said(`X-1,${tank},5,,2026-03-01`, `X-2,${tank},6,,2026-04-01`)).toEqual([[3, 'stockNumber']])
    expect(await said(`,${tank},5,1,2026-03-01`, `,${tank},6,2,2026-04-01`)).toEqual([[3, 'stock']])
    expect(await said(`X-1,${tank},5,,2026-03-01`, `x-1,${heater},6,,2026-04-01`)).toEqual([[3, 'stockNumber']])
    expect(await said(`H-9,${tank},5,,2026-03-01`)).toEqual([[2, 'stockNumber']])
    expect(await said(`X-1,${tank},5,,2026-03-01`, `X-1,,6,,2026-04-01`, `X-1,"Tank, as the wholesaler calls it",7,,2026-05-01`)).toEqual(
      [],
    )
  })

  it('takes a number or a count alone, and leaves the prices as they are', async () => {
    const before = await entry(shop.tank.id)
    expect((await importList('stock number,stock\nT-1,9\n')).outcome).toMatchObject({ updates: 1, applied: true })
    expect((await entry(shop.tank.id)).body).toMatchObject({ stockCount: 9, prices: before.body.prices })
    expect((await importList('stock number,stock\nT-1,4\n')).outcome).toMatchObject({ updates: 1, applied: true })
  })

  it.each([
    ['safe CSV', '?format=csv', 'text/csv'],
    ['raw CSV', '?format=csv&text=raw', 'text/csv'],
    ['JSON', '?format=json', 'application/json'],
  ])('is read back from its export as %s without a change, and runs nothing in a spreadsheet', async (_what, query, type) => {
    const [odd, bare] = [await product(world.db, { name: `=1+1 ${query}` }), await product(world.db)]
    const values = { stockCount: 3, prices: [{ validFrom: '2026-01-01', priceMinor: 900 }, SALE] }
    const put = (id: string, body: object) => manager.send('PUT', `/api/price-list/${id}`, { body, headers: { 'if-match': '"0"' } })
    expect((await put(odd.id, { ...values, stockNumber: `@${query}` })).status).toBe(200)
    expect((await put(bare.id, { stockNumber: `'=${query}`, stockCount: null, prices: [] })).status).toBe(200)
    const file = (await manager.send('GET', `/api/exports/price-list${query}`)).text
    if (query === '?format=csv') expect(file).toContain(`,'@${query},`)
    const before = await world.db.selectFrom('list_price').selectAll().orderBy('product_id').orderBy('valid_from').execute()
    const items = await world.db.selectFrom('stock_item').selectAll().orderBy('product_id').execute()
    const { outcome, faults } = await importList(file, false, type)
    expect(faults).toEqual([])
    expect(outcome).toMatchObject({ creates: 0, updates: 0, applied: true })
    expect(outcome?.unchanged).toBeGreaterThanOrEqual(5)
    expect(await world.db.selectFrom('list_price').selectAll().orderBy('product_id').orderBy('valid_from').execute()).toEqual(before)
    expect(await world.db.selectFrom('stock_item').selectAll().orderBy('product_id').execute()).toEqual(items)
    await world.db.deleteFrom('stock_item').execute()
    expect((await importList(file, false, type)).outcome).toMatchObject({ creates: outcome?.unchanged, applied: true })
    expect(await world.db.selectFrom('list_price').selectAll().orderBy('product_id').orderBy('valid_from').execute()).toEqual(before)
  })

  it('is edited on the version it was read at, and a number belongs to one product', async () => {
    const read = await entry(shop.heater.id)
    const body = { stockNumber: 'H-9', stockCount: 7, prices: read.body.prices }
    const path = `/api/price-list/${shop.heater.id}`
    const at = (version: number) => ({ 'if-match': `"${version}"` })
    expect((await manager.send('PUT', path, { body })).status).toBe(428)
    expect((await manager.send('PUT', path, { body, headers: at(read.body.version) })).status).toBe(200)
    expect((await manager.send('PUT', path, { body, headers: at(read.body.version) })).status).toBe(412)
    const taken = await manager.send('PUT', path, { body: { ...body, stockNumber: 't-1' }, headers: at(read.body.version + 1) })
    expect(taken.status).toBe(422)
    expect(taken.body).toMatchObject({ errors: [{ field: 'stockNumber', message: expect.stringContaining(shop.tank.name) as string }] })
    const twice = [read.body.prices[0], read.body.prices[0]]
    expect((await manager.send('PUT', path, { body: { ...body, prices: twice }, headers: at(read.body.version + 1) })).status).toBe(422)
  })

  it('does not age, and a price that is still to come does not count yet', async () => {
    const read = await entry(shop.tank.id)
    const prices = [{ validFrom: '2001-01-01', priceMinor: 17_000 }, ...read.body.prices, { validFrom: addDays(today(), 1), priceMinor: 1 }]
    const saved = await manager.send('PUT', `/api/price-list/${shop.tank.id}`, {
      body: { stockNumber: 'T-1', stockCount: 4, prices },
      headers: { 'if-match': `"${read.body.version}"` },
    })
    expect(saved.status, saved.text).toBe(200)
    const views = await manager.send<{ prices: PriceView[] }>('POST', '/api/price-views', { body: { productIds: [shop.tank.id] } })
    expect(views.body.prices).toEqual([
      expect.objectContaining({ storeId: own.id, today: expect.objectContaining({ priceMinor: 18_950, age: 'current' }) as object }),
    ])
  })
})

describe('a quote in store mode', () => {
  it('has the list price as its full price, and a sale of the list as today’s while it lasts', async () => {
    const read = await entry(shop.heater.id)
    const save = (saleMinor: number | null, version: number) =>
      manager.send('PUT', `/api/price-list/${shop.heater.id}`, {
        body: {
          stockNumber: 'H-9',
          stockCount: 7,
          prices: [{ validFrom: '2026-01-01', priceMinor: 3_990, saleMinor, saleUntil: saleMinor === null ? null : addDays(today(), 1) }],
        },
        headers: { 'if-match': `"${version}"` },
      })
    expect((await save(3_000, read.body.version)).status).toBe(200)
    const view = await newQuote(manager, draftOf(shop))
    expect((await issue(manager, view)).status).toBe(200)
    const { body } = await manager.send<RevisionDocument>('GET', `/api/quotes/${view.id}/revisions/1`)
    expect(body.builds[0]?.cost.today).toMatchObject({ complete: true, goodsMinor: 18_950 + 3_000 })
    expect(body.builds[0]?.cost.full).toMatchObject({ complete: true, goodsMinor: 18_950 + 3_990 })
    expect(body.builds[0]?.cost.lines[1]).toMatchObject({ condition: 'sale', holdsUntil: addDays(today(), 1) })
    expect((await save(null, read.body.version + 1)).status).toBe(200)
  })

  it('is made of the own list, whatever stores the draft names', async () => {
    const draft = draftOf(shop)
    const named = draft.builds.map((build) => ({ ...build, lines: build.lines.map((line) => ({ ...line, storeId: outside.id })) }))
    const view = await newQuote(manager, {
      ...draft,
      builds: named,
      need: { ...draft.need, storeIds: [outside.id] },
    })
    expect(view.stores.map(({ name }) => name)).toEqual(['Brindle Aquatics'])
    const issued = await issue(manager, view)
    expect(issued.status, issued.text).toBe(200)
    const { body } = await manager.send<RevisionDocument>('GET', `/api/quotes/${view.id}/revisions/1`)
    expect(body.builds[0]?.cost.today).toMatchObject({ complete: true, goodsMinor: 18_950 + 3_990 })
    expect(body.builds[0]?.cost.lines[0]).toMatchObject({ storeId: own.id, returnDays: 21, warrantyMonths: 24, reporters: 0 })
  })

  it('names no outside store, price or date on any paper: revision, PDF, page, link', async () => {
    const draft = draftOf(shop)
    const lines = draft.builds[0]?.lines.map((line) => ({ ...line, storeId: outside.id })) as (typeof draft.builds)[0]['lines']
    const view = await newQuote(manager, {
      ...draft,
      need: { ...draft.need, storeIds: [outside.id] },
      builds: [{ ...(draft.builds[0] as (typeof draft.builds)[0]), lines }, draft.builds[1] as (typeof draft.builds)[0]],
      discount: { kind: 'share', basisPoints: 500, storeId: outside.id, reason: 'opening week' },
    })
    const issued = await issue(manager, view)
    expect(issued.status, issued.text).toBe(200)
    const path = pathOf(issued.body.links?.quote)
    const visitor = world.visitor()
    printed.length = 0
    await manager.send('GET', `/api/quotes/${view.id}/revisions/1/pdf`)
    await manager.send('GET', `/api/quotes/${view.id}/draft.pdf`)
    await visitor.send('GET', `${path}/pdf`)
    expect(printed).toHaveLength(3)
    const papers = [
      (await manager.send('GET', `/api/quotes/${view.id}/revisions/1`)).text,
      (await visitor.send('GET', path)).text,
      (await visitor.send('GET', `/api/quote-links/${path.split('/').at(-1)}`)).text,
      ...printed.map((paper) => JSON.stringify(quotePaper({ ...paper, links: null }))),
    ]
    const traces = [OUTSIDE, outside.id, '133.71', String(OUTSIDE_PRICE), outsideDay, sayDate(outsideDay, yearOf(today()))]
    for (const paper of papers) {
      expect(paper.includes('Brindle Aquatics') || paper.includes(own.id)).toBe(true)
      for (const trace of [...traces, shop.shop.name, shop.shop.id]) expect(paper).not.toContain(trace)
    }
  })
})

describe('a store', () => {
  it('that sightings or quotes name is not deleted but archived, and says what names it', async () => {
    const refused = await manager.send<{ detail: string; title: string; type: string }>('DELETE', `/api/stores/${outside.id}`)
    expect(refused.body).toMatchObject({ type: '/api/reference#in_use', title: 'Something still names it' })
    expect(refused.status).toBe(409)
    expect(refused.body.detail).toMatch(/2 quotes and 1 sighting name "Quillon Basin".*Archive it/)
    const owned = await manager.send<{ detail: string }>('DELETE', `/api/stores/${own.id}`)
    expect(owned.body.detail).toMatch(/quotes name "Brindle Aquatics"/)
  })

  it('that nothing names is deleted, by a manager alone', async () => {
    const spare = await store(world.db)
    expect((await (await world.signIn('advisor')).send('DELETE', `/api/stores/${spare.id}`)).status).toBe(403)
    expect((await manager.send('DELETE', `/api/stores/${spare.id}`)).status).toBe(204)
    expect((await manager.send('DELETE', `/api/stores/${spare.id}`)).status).toBe(404)
  })

  it('is the own one of an install once', async () => {
    const { id: _id, version: _version, ...fields } = own
    const second = await manager.send('POST', '/api/stores', { body: { ...fields, name: 'Second branch' } })
    expect(second.status).toBe(422)
    expect(second.body).toMatchObject({ errors: [{ field: 'own' }] })
  })

  it('its mark is not taken over by a store of another currency while list prices stand in this one', async () => {
    const listed = await world.db
      .selectFrom('list_price')
      .select((eb) => eb.fn.countAll().as('count'))
      .executeTakeFirstOrThrow()
    expect(Number(listed.count)).toBeGreaterThan(0)
    const put = (of: Store, change: Partial<Store>) => {
      const { id, version, ...fields } = { ...of, ...change }
      return manager.send<Store & { errors?: Array<{ field: string; message: string }> }>('PUT', `/api/stores/${id}`, { body: fields, headers: { 'if-match': `"${version}"` } }) // prettier-ignore
    }
    const now = (await manager.send<Store>('GET', `/api/stores/${own.id}`)).body
    const unmarked = await put(now, { own: false })
    expect(unmarked.status, unmarked.text).toBe(200)
    const { id: _id, version: _version, ...fields } = own
    const other = await manager.send<Store & { errors: unknown }>('POST', '/api/stores', {
      body: { ...fields, own: false, name: 'Over the river', currency: 'CAD' },
    })
    expect(other.status, other.text).toBe(201)
    const refused = await put(other.body, { own: true })
    expect([refused.status, refused.body.errors?.[0]?.field]).toEqual([422, 'own'])
    expect(refused.body.errors?.[0]?.message).toMatch(/list prices? (is|are) stored in USD, and "Over the river" prints its prices in CAD/)
    const made = await manager.send<{ errors: Array<{ field: string }> }>('POST', '/api/stores', {
      body: { ...fields, own: true, name: 'New over the river', currency: 'CAD' },
    })
    expect([made.status, made.body.errors[0]?.field]).toEqual([422, 'own'])
    const again = await put(unmarked.body, { own: true })
    expect([again.status, again.body.own]).toEqual([200, true])
  })

  it.each([
    [{ taxBasisPoints: 10_000 }, 'taxBasisPoints', 'at most 3000'],
    [{ delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 100, oversizeMinor: 0 } }, 'delivery.freeOverMinor', 'Check both'],
    [{ otherRates: [{ name: 'Low', basisPoints: 700 }] }, 'otherRates.0.kinds', 'No goods take'],
    [{ otherRates: [{ name: 'Low', basisPoints: 20_000, kinds: ['tank'] }] }, 'otherRates.0.basisPoints', 'at most 3000'],
    [{ deliveryRate: 'Low' }, 'deliveryRate', 'no rate called'],
    [{ country: 'ZZ' }, 'country', 'No country has this code'],
    [{ country: 'us' }, 'country', 'two capital letters'],
    [{ currency: 'UDS' }, 'currency', 'no such currency'],
    [{ warrantyMonths: 9999 }, 'warrantyMonths', 'At most 600'],
  ])('refuses %o with the field and the fix', async (fields, field, words) => {
    const { id: _id, version: _version, own: _own, ...plain } = own
    const refused = await manager.send('POST', '/api/stores', { body: { ...plain, name: 'A slip', ...fields } })
    expect(refused.status).toBe(422)
    expect(refused.body).toMatchObject({ errors: [{ field, message: expect.stringContaining(words) as string }] })
  })
})

describe('the prices of a place that is a store', () => {
  it('are those of its own list, on the board and on the product’s page, also where members saw others', async () => {
    const tom = await world.signIn('member')
    const listed = await product(world.db, { name: 'Listed Heater 90' })
    await tom.send('POST', '/api/sightings', { body: sighting(listed.id, outside.id, { seenOn: today(), priceMinor: OUTSIDE_PRICE }) })
    const until = addDays(today(), 5)
    await importList(`product,price,valid from,sale price,sale until,stock\n${listed.name},30.00,${today()},20.00,${until},0\n`)
    const told = {
      productId: listed.id,
      storeId: own.id,
      priceMinor: 2000,
      fullMinor: 3000,
      saleUntil: until,
      validFrom: today(),
      inStock: false,
    }
    type Board = { rows: BoardRow[]; listed: ListedPrice[]; total: number }
    const board = async (query: string) => (await tom.send<Board>('GET', `/api/board?q=listed+heater${query}`)).body
    expect(await board('')).toMatchObject({ rows: [], listed: [told], total: 1 })
    expect(await board(`&storeId=${outside.id}`)).toEqual({ rows: [], listed: [], total: 0 })
    expect((await board('&kind=tank')).total).toBe(0)
    const { body } = await tom.send<PriceRecord>('GET', `/api/products/${listed.id}/record`)
    expect(body.listed).toMatchObject({ ...told, storeName: own.name })
    // How many there are is the price list's, which a member does not read.
    expect((await tom.send('GET', `/api/price-list/${listed.id}`)).status).toBe(403)
    expect(body.listed).not.toHaveProperty('stockCount')
    expect((await board('')).listed[0]).not.toHaveProperty('stockCount')
    const [read] = (await manager.send<Board>('GET', '/api/board?q=listed+heater')).body.listed
    expect(read).toMatchObject({ inStock: false, stockCount: 0 })
    expect((await manager.send<PriceRecord>('GET', `/api/products/${listed.id}/record`)).body.listed).toMatchObject({ stockCount: 0 })
    expect((await tom.send<PriceRecord>('GET', `/api/products/${(await product(world.db)).id}/record`)).body.listed).toBeNull()
  })

  it('begin on their day', async () => {
    const later = await product(world.db, { name: 'Later Heater 90' })
    await importList(`product,price,valid from\n${later.name},30.00,${addDays(today(), 1)}\n`)
    const { body } = await manager.send('GET', '/api/board?q=later+heater')
    expect(body).toEqual({ rows: [], listed: [], total: 0 })
  })
})

describe('a watch where the store’s own list is what things cost', () => {
  it('is told of a price that comes with an import, once, and of no other of the own store', async () => {
    const tom = await world.signIn('member')
    const watched = await product(world.db)
    const { body: watch } = await setWatch(tom, { productId: watched.id, limitMinor: 2500 })
    const before = sighting(watched.id, own.id, { seenOn: today(), priceMinor: 1500 })
    await tom.send('POST', '/api/sightings', { body: before })
    await lookNow(world)
    expect(await toldTo(tom), 'what somebody saw at the own store counts for nothing there').toEqual([])
    const list = (sale: string): string => `product,price,valid from,sale price,sale until\n${watched.name},30.00,${today()},${sale}\n`
    expect((await importList(list(','))).outcome).toMatchObject({ applied: true, creates: 1 })
    await lookNow(world)
    expect(await toldTo(tom), '30.00 is over the limit').toEqual([])
    for (let times = 0; times < 2; times += 1) {
      await importList(list(`20.00,${addDays(today(), 5)}`))
      await lookNow(world)
    }
    const told = await toldTo(tom)
    expect(told).toHaveLength(1)
    const until = addDays(today(), 5)
    expect(told[0]).toMatchObject({ watchId: watch.id, storeId: own.id, priceMinor: 2000, condition: 'sale', sightingId: null, until })
    const { json } = (await tom.send<{ json: string }>('POST', '/api/feed-link')).body
    const feed = (await world.visitor().send('GET', json)).text
    expect(feed, 'of the store’s own words nobody says that they are no offer').toContain(`In its price list from ${sayDate(today())}.`)
    expect(feed).not.toMatch(/Seen on|not an offer/)
    const answer = { answer: 'still_there', sightingId: phoneId() }
    // The store's own word: a member has nothing to say of it.
    expect((await tom.send('POST', `/api/notices/${told[0]?.id}/answer`, { body: answer })).body).toMatchObject({ done: 'listed' })
  })

  it('is told of no price that somebody saw at another store, and of nothing that is out of stock until some is in', async () => {
    const tom = await world.signIn('member')
    const watched = await product(world.db)
    await setWatch(tom, { productId: watched.id, limitMinor: 2500 })
    await tom.send('POST', '/api/sightings', { body: sighting(watched.id, outside.id, { seenOn: today(), priceMinor: 1500 }) })
    await importList(`product,price,valid from,stock,stock number\n${watched.name},20.00,${today()},0,Z-0\n`)
    await lookNow(world)
    expect(await toldTo(tom)).toEqual([])
    expect((await importList('stock number,stock\nZ-0,3\n')).outcome).toMatchObject({ updates: 1 })
    await lookNow(world)
    expect((await toldTo(tom)).map(({ storeId, totalMinor }) => [storeId, totalMinor])).toEqual([[own.id, 2120]])
  })

  it('is told of what the list has already when the own store comes into its region', async () => {
    const tom = await world.signIn('member')
    const listed = await product(world.db)
    await importList(`product,price,valid from\n${listed.name},20.00,${today()}\n`)
    const { body: region } = await manager.send<{ id: string }>('POST', '/api/regions', {
      body: { name: 'Upper town', storeIds: [outside.id] },
    })
    await setWatch(tom, { productId: listed.id, limitMinor: 2500, regionId: region.id })
    await lookNow(world)
    expect(await toldTo(tom)).toEqual([])
    const body = { name: 'Upper town', storeIds: [outside.id, own.id] }
    expect((await manager.send('PUT', `/api/regions/${region.id}`, { body, headers: { 'if-match': '"1"' } })).status).toBe(200)
    await lookNow(world)
    expect((await toldTo(tom)).map(({ storeId }) => storeId)).toEqual([own.id])
  })

  it('is told of what the list has already when the place becomes a store', async () => {
    const tom = await world.signIn('member')
    const listed = await product(world.db)
    await importList(`product,price,valid from\n${listed.name},20.00,${today()}\n`)
    const run = async (mode: 'club' | 'store'): Promise<void> => {
      const read = await manager.send<Install & { version: number }>('GET', '/api/install')
      const { version: _version, ...install } = read.body
      const headers = { 'if-match': read.headers.get('etag') ?? '' }
      expect((await manager.send('PUT', '/api/install', { body: { ...install, mode }, headers })).status).toBe(200)
      await lookNow(world)
    }
    await run('club')
    await setWatch(tom, { productId: listed.id, limitMinor: 2500 })
    await lookNow(world)
    expect(await toldTo(tom), 'a club’s members go by what was seen').toEqual([])
    await run('store')
    expect((await toldTo(tom)).map(({ productId }) => productId)).toEqual([listed.id])
  })

  it('of any of a kind finds what the list alone knows', async () => {
    const tom = await world.signIn('member')
    const listed = await product(world.db, { spec: { powerW: 777 } })
    await importList(`product,price,valid from\n${listed.name},12.00,${today()}\n`)
    await setWatch(tom, { requirement: { kind: 'heater', spec: 'powerW:777..777' }, limitMinor: 2500 })
    await lookNow(world)
    expect((await toldTo(tom)).map(({ productId }) => productId)).toEqual([listed.id])
  })
})
