import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { quotePaper } from '../../api/pdf/quote-paper.ts'
import type { QuotePaper } from '../../api/quotes/paper.ts'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, sayDate, yearOf } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import type { ImportReport } from '../../core/catalog/import-report.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import type { StockRow } from '../../db/price-list.ts'
import { sighting, store } from '../support/rows.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

const OUTSIDE = 'Quillon Basin'
/** A day and a price that nothing of the own store has. */
const outsideDay = addDays(today(), -23)
const OUTSIDE_PRICE = 13_371

let world: World
let manager: Browser
let shop: Shop
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
afterAll(() => world.close())

const importCsv = (csv: string, dryRun: boolean) => manager.send<ImportReport>('POST', '/api/price-list/import', { body: { csv, dryRun } })
const entry = (id: string) => manager.send<StockRow>('GET', `/api/price-list/${id}`)

describe('the own price list', () => {
  it('is tried first and changes nothing, then stored, and stored again changes nothing', async () => {
    const csv = `stock number;product;price;stock;valid from\nT-1;${shop.tank.name};189,50;4;2026-01-01\nH-9;${shop.heater.name};39,90;;2026-01-01\n`
    expect((await importCsv(csv, true)).body).toMatchObject({ applied: false, rows: 2, creates: 2, faults: [] })
    expect((await entry(shop.tank.id)).body).toMatchObject({ version: 0, prices: [] })
    expect((await importCsv(csv, false)).body).toMatchObject({ applied: true, creates: 2, updates: 0, unchanged: 0 })
    expect((await entry(shop.tank.id)).body).toMatchObject({
      stockNumber: 'T-1',
      stockCount: 4,
      prices: [{ validFrom: '2026-01-01', priceMinor: 18_950 }],
    })
    expect((await importCsv(csv, false)).body).toMatchObject({ creates: 0, updates: 0, unchanged: 2 })
  })

  it('says every fault by row and column, and stores nothing of the file', async () => {
    const csv = [
      'stock number,gtin,product,price,stock,valid from',
      `T-1,,,0,1,2026-02-01`,
      `T-1,,,12x,-3,soon`,
      `,,,10.00,,`,
      `,,No such thing,10.00,,`,
      `T-1,,${shop.heater.name},11.00,,2026-03-01`,
    ].join('\n')
    const { body } = await importCsv(csv, false)
    expect(body.applied).toBe(false)
    expect(body.faults.map(({ row, column }) => [row, column])).toEqual([
      [2, 'price'],
      [3, 'price'],
      [3, 'stock'],
      [3, 'valid from'],
      [4, 'product'],
    ])
    const late = await importCsv(csv.split('\n').toSpliced(1, 3).join('\n'), false)
    expect(late.body.faults).toEqual([{ row: 2, column: 'product', message: expect.stringContaining('not in the catalog') as string }])
    expect((await importCsv('price,colour\n1,2', true)).body.faults[0]).toMatchObject({ row: 1, column: 'colour' })
    expect((await importCsv('product\nx', true)).body.faults[0]).toMatchObject({ row: 1, column: 'price' })
    expect((await entry(shop.tank.id)).body.prices).toHaveLength(1)
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

  it.each([
    [{ taxBasisPoints: 10_000 }, 'taxBasisPoints', 'at most 3000'],
    [{ delivery: { kind: 'free_over', feeMinor: 990, freeOverMinor: 100, oversizeMinor: 0 } }, 'delivery.freeOverMinor', 'Check both'],
    [{ otherRates: [{ name: 'Low', basisPoints: 700 }] }, 'otherRates.0.kinds', 'No goods take'],
    [{ otherRates: [{ name: 'Low', basisPoints: 20_000, kinds: ['tank'] }] }, 'otherRates.0.basisPoints', 'at most 3000'],
    [{ deliveryRate: 'Low' }, 'deliveryRate', 'no rate called'],
    [{ currency: 'UDS' }, 'currency', 'no such currency'],
    [{ warrantyMonths: 9999 }, 'warrantyMonths', 'At most 600'],
  ])('refuses %o with the field and the fix', async (fields, field, words) => {
    const { id: _id, version: _version, own: _own, ...plain } = own
    const refused = await manager.send('POST', '/api/stores', { body: { ...plain, name: 'A slip', ...fields } })
    expect(refused.status).toBe(422)
    expect(refused.body).toMatchObject({ errors: [{ field, message: expect.stringContaining(words) as string }] })
  })
})
