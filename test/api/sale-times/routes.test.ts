import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Store } from '../../../core/catalog/store.ts'
import { addDays, yearOf, type CivilDate } from '../../../core/dates.ts'
import type { SaleCalendarRow, SaleTime } from '../../../core/pricing/sale-time.ts'
import { product, sighting, store } from '../../support/rows.ts'
import { today } from '../support/quotes.ts'
import { createWorld, type Browser, type World } from '../support/world.ts'

let world: World
let manager: Browser
let member: Browser
let shop: Store
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
  member = await world.signIn('member')
  shop = await store(world.db, { name: 'Kettle Lane' })
})
afterAll(() => world.close())

interface Refused {
  errors: Array<{ field: string; message: string }>
}
interface Calendar {
  asOf: CivilDate
  rows: SaleCalendarRow[]
}
const calendar = async (): Promise<Calendar> => (await member.send<Calendar>('GET', '/api/sale-times')).body
const body = (firstDays: CivilDate[]) => ({
  name: 'Own week',
  when: { kind: 'dates', firstDays },
  lengthDays: 7,
  storeIds: [shop.id],
  note: null,
})

describe('a sale time', () => {
  let made: SaleTime
  it('is added by a manager and told to every member', async () => {
    const next = addDays(today(), 30)
    expect((await member.send('POST', '/api/sale-times', { body: body([next]) })).status).toBe(403)
    const answer = await manager.send<SaleTime>('POST', '/api/sale-times', { body: body([next]) })
    expect(answer.status, answer.text).toBe(201)
    made = answer.body
    const { rows } = await calendar()
    expect(rows).toMatchObject([
      { saleTime: { name: 'Own week' }, coming: [{ first: next, last: addDays(next, 6), storeIds: [shop.id] }], past: [] },
    ])
  })
  it('is changed on its version, and names and days are checked', async () => {
    const path = `/api/sale-times/${made.id}`
    const change = { ...body([addDays(today(), 40)]), name: 'Its own week' }
    expect((await manager.send('PUT', path, { body: change })).status).toBe(428)
    const changed = await manager.send<SaleTime>('PUT', path, { body: change, headers: { 'if-match': '"1"' } })
    expect(changed.body).toMatchObject({ name: 'Its own week', version: 2 })
    expect((await manager.send('PUT', path, { body: change, headers: { 'if-match': '"1"' } })).status).toBe(412)
    const fieldOf = async (input: object) => (await manager.send<Refused>('POST', '/api/sale-times', { body: input })).body.errors[0]?.field
    expect(await fieldOf({ ...change, name: 'its OWN week' })).toBe('name')
    expect(await fieldOf({ ...change, name: 'Other', storeIds: ['0198c0de-0000-7000-8000-000000000000'] })).toBe('storeIds.0')
    expect(await fieldOf({ ...change, name: 'Other', when: { kind: 'rule', rule: 'FREQ=DAILY', from: '2020-01-01' } })).toBe('when.rule')
    expect(await fieldOf({ ...change, name: 'Other', when: { kind: 'holiday', holiday: 'No such day', offsetDays: 0 } })).toBe(
      'when.holiday',
    )
    expect(await fieldOf({ ...change, name: 'Other', when: { kind: 'dates', firstDays: ['2026-02-30'] } })).toBe('when.firstDays.0')
    expect(await fieldOf({ ...change, name: 'Other', lengthDays: 63 })).toBe('lengthDays')
  })
  it('shows its next days before it is kept', async () => {
    const answer = await manager.send<{ runs: Array<{ first: CivilDate }> }>('POST', '/api/sale-times/runs', {
      body: { ...body([]), when: { kind: 'holiday', holiday: 'Christmas Day', offsetDays: 1 }, storeIds: [] },
    })
    expect(answer.body.runs[0]?.first.slice(5)).toBe('12-26')
    expect((await calendar()).rows).toHaveLength(1)
  })
  it('is taken out, and a second time there is none', async () => {
    expect((await manager.send('DELETE', `/api/sale-times/${made.id}`)).status).toBe(204)
    expect((await manager.send('DELETE', `/api/sale-times/${made.id}`)).status).toBe(404)
    expect((await calendar()).rows).toEqual([])
  })
  it('leaves in the trail what was done to it, and not that the settings were changed', async () => {
    const { items } = (await manager.send<{ items: Array<{ action: string }> }>('GET', '/api/audit?limit=10')).body
    const done = items.map(({ action }) => action).filter((action) => /^(sale_time|install)_/.test(action))
    expect(done).toEqual(['sale_time_deleted', 'sale_time_changed', 'sale_time_added'])
  })
})

describe('what the record says of past runs', () => {
  it('counts accepted sale prices of its days and stores, and their depth against the shelf', async () => {
    const [heater, filter] = [await product(world.db), await product(world.db)]
    const elsewhere = await store(world.db, { name: 'Upriver' })
    const first = addDays(today(), -30)
    const post = async (input: object) => expect((await member.send('POST', '/api/sightings', { body: input })).status).toBe(201)
    const seen = (productId: string, storeId: string, day: number, condition: 'shelf' | 'sale', priceMinor: number) =>
      post(sighting(productId, storeId, { seenOn: addDays(first, day), condition, priceMinor, lastDay: null }))
    await seen(heater.id, shop.id, -20, 'shelf', 10_000)
    await seen(heater.id, shop.id, 0, 'sale', 8_000)
    await seen(heater.id, shop.id, 6, 'sale', 7_000)
    await seen(heater.id, shop.id, 7, 'sale', 5_000)
    await seen(filter.id, shop.id, 3, 'sale', 9_000)
    await seen(heater.id, elsewhere.id, 2, 'sale', 8_000)
    await manager.send('POST', '/api/sale-times', { body: body([first, addDays(today(), -400)]) })
    const [row] = (await calendar()).rows
    // The day after the last, the other store and the run before the record are left out; depths 20 % and 30 % have their middle at 25 %.
    expect(row?.past).toEqual([
      { first, last: addDays(first, 6), stores: 1, products: 2, sightings: 3, medianDepth: expect.closeTo(0.25, 9) },
    ])
    expect(row?.coming).toEqual([])
  })
})

it('holidays are listed by the present year', async () => {
  const { body: found } = await manager.send<{ names: string[] }>('GET', '/api/sale-times/holidays?country=US')
  expect(found.names).toContain('Thanksgiving Day')
  expect(yearOf(today())).toBeGreaterThan(2025)
  expect((await manager.send('GET', '/api/sale-times/holidays?country=usa')).status).toBe(422)
})
