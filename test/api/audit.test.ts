import { parse } from 'csv-parse/sync'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { install, storeFields } from '../support/rows.ts'
import { draftOf, issue, newQuote, stockedShop } from './support/quotes.ts'
import { createWorld, PASSWORD, type Browser, type World } from './support/world.ts'

let world: World
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

interface Entry {
  action: string
  actor: { id: string; name: string } | null
  subject: { kind: string; id: string | null; name: string | null }
  changes: Array<{ field: string; before?: unknown; after?: unknown }>
}
const trail = async (query = ''): Promise<Entry[]> =>
  (await manager.send<{ items: Entry[] }>('GET', `/api/audit?limit=500${query}`)).body.items
const newest = async (action: string): Promise<Entry | undefined> => (await trail()).find((entry) => entry.action === action)

describe('the trail', () => {
  it('tells of people: who joined, whose role changed, which links were made', async () => {
    const invited = await manager.send('POST', '/api/people/invitations', { body: { name: 'Ole Brandt', role: 'member' } })
    const token = String(invited.body['url']).split('/').at(-1)
    const joined = await world.visitor().send<{ person: { id: string } }>('POST', `/api/links/${token}`, {
      body: { name: 'Ole Brandt', signInName: 'ole', password: PASSWORD },
    })
    const { id } = joined.body.person
    await manager.send('PATCH', `/api/people/${id}`, { body: { role: 'advisor' }, headers: { 'if-match': '"1"' } })
    await manager.send('POST', `/api/people/${id}/password-link`)
    const told = (await trail('&subject=person')).filter((entry) => entry.subject.id === id)
    expect(told.map(({ action }) => action)).toEqual(['password_link_made', 'person_changed', 'person_joined'])
    expect(told[1]).toMatchObject({
      actor: { id: manager.personId },
      subject: { name: 'Ole Brandt' },
      changes: [{ field: 'role', before: 'member', after: 'advisor' }],
    })
    expect((await trail(`&person=${id}`)).map(({ action }) => action)).toEqual(['person_joined'])
  })

  it('tells of stores, products and settings, with what was and is', async () => {
    const created = await manager.send<{ id: string }>('POST', '/api/stores', { body: storeFields({ name: 'Tarnwick Aquatics' }) })
    await manager.send('PUT', `/api/stores/${created.body.id}`, {
      body: storeFields({ name: 'Tarnwick Aquatics', returnDays: 14 }),
      headers: { 'if-match': '"1"' },
    })
    expect(await newest('store_changed')).toMatchObject({
      subject: { kind: 'store', id: created.body.id, name: 'Tarnwick Aquatics' },
      changes: [{ field: 'returnDays', before: 30, after: 14 }],
    })
    await manager.send('PUT', '/api/install', { body: { ...install, paper: 'a4' }, headers: { 'if-match': '"1"' } })
    expect((await newest('install_changed'))?.changes).toEqual([{ field: 'paper', before: 'letter', after: 'a4' }])
  })

  it('names what was changed of regions and rates of exchange', async () => {
    const { id: storeId } = (await manager.send<{ id: string }>('POST', '/api/stores', { body: storeFields({ name: 'Mill Lane' }) })).body
    const region = { name: 'Estuary', storeIds: [storeId] }
    const { id } = (await manager.send<{ id: string }>('POST', '/api/regions', { body: region })).body
    await manager.send('PUT', `/api/regions/${id}`, { body: { ...region, name: 'Shore' }, headers: { 'if-match': '"1"' } })
    await manager.send('DELETE', `/api/regions/${id}`)
    const told = (await trail('&subject=region')).map(({ action, subject, changes }) => [action, subject.name, changes])
    expect(told).toEqual([
      ['region_deleted', 'Shore', []],
      ['region_changed', 'Shore', [{ field: 'name', before: 'Estuary', after: 'Shore' }]],
      ['region_added', 'Estuary', [{ field: 'stores', after: 'Mill Lane' }]],
    ])
    const rate = { currency: 'NOK', rate: 0.09, seenOn: '2026-01-05', source: 'noon rate' }
    await manager.send('POST', '/api/currency-rates', { body: rate })
    await manager.send('POST', '/api/currency-rates', { body: { ...rate, rate: 0.1 } })
    expect(await newest('currency_rate_entered')).toMatchObject({
      subject: { kind: 'currency_rate', name: 'NOK' },
      changes: [{ field: 'rate', before: 0.09, after: 0.1 }],
    })
  })

  it('says nothing of a change that was refused', async () => {
    const before = (await trail()).length
    await manager.send('PUT', '/api/install', { body: { ...install, name: 'Other' }, headers: { 'if-match': '"99"' } })
    await manager.send('POST', '/api/stores', { body: storeFields({ name: 'Tarnwick Aquatics' }) })
    expect((await trail()).length).toBe(before)
  })

  it('tells of customers and quotes by number, and keeps no name, no address and no word of theirs', async () => {
    const shop = await stockedShop(world, await world.signIn('member'))
    const customer = { name: 'Wilhelmina Quarry', reach: 'w.quarry@example.org', note: 'rings after six' }
    const made = await manager.send<{ id: string }>('POST', '/api/customers', { body: customer })
    await manager.send('PUT', `/api/customers/${made.body.id}`, {
      body: { ...customer, reach: '555-0199' },
      headers: { 'if-match': '"1"' },
    })
    expect(await newest('customer_changed')).toMatchObject({ subject: { id: made.body.id, name: null }, changes: [{ field: 'reach' }] })
    const quote = (await issue(manager, await newQuote(manager, draftOf(shop)))).body
    expect(await newest('quote_issued')).toMatchObject({ subject: { name: quote.number }, changes: [{ field: 'revision', after: 1 }] })
    await manager.send('POST', `/api/quotes/${quote.id}/withdraw`)
    expect((await newest('quote_withdrawn'))?.subject.name).toBe(quote.number)
    const rows = JSON.stringify(await world.db.selectFrom('audit_entry').selectAll().execute())
    for (const word of ['Quarry', 'example.org', '555-0199', 'after six', 'Ole Brandt']) expect(rows).not.toContain(word)
  })

  it('is read by day of the place, and by managers alone', async () => {
    expect((await trail('&day=2001-01-01')).length).toBe(0)
    expect((await (await world.signIn('advisor')).send('GET', '/api/audit')).status).toBe(403)
    for (const method of ['PUT', 'PATCH', 'DELETE', 'POST']) expect((await manager.send(method, '/api/audit')).status).toBe(405)
  })
})

describe('the trail as a file', () => {
  type Row = Record<string, string>
  const file = async (query = '') => manager.send('GET', `/api/audit/file${query}`)
  const rows = (text: string): Row[] => parse(text, { columns: true, bom: true })

  it('holds the entries that the screen shows, in its order and in its words', async () => {
    const { id } = (await manager.send<{ id: string }>('POST', '/api/stores', { body: storeFields({ name: 'Reedmere Tanks' }) })).body
    const sent = await file('?subject=store')
    expect(sent.headers.get('content-type')).toBe('text/csv; charset=utf-8')
    expect(sent.headers.get('content-disposition')).toMatch(/^attachment; filename="changes-\d{4}-\d\d-\d\d\.csv"$/)
    const told = rows(sent.text)
    expect(told.map(({ about_id, action }) => [about_id, action])).toEqual(
      (await trail('&subject=store')).map(({ subject, action }) => [subject.id, action]),
    )
    expect(told[0]).toMatchObject({ about: 'store', about_id: id, about_name: 'Reedmere Tanks', done_by_id: manager.personId })
    expect(told[0]?.['what_was_done']).toMatch(/ added the store “Reedmere Tanks”$/)
    expect(told.find(({ action }) => action === 'store_changed')?.['changed']).toBe('return days: 30, now 14')
  })

  it('follows its filters', async () => {
    const all = rows((await file()).text)
    expect(all.length).toBe((await trail()).length)
    expect(rows((await file('?day=2001-01-01')).text)).toEqual([])
    const mine = rows((await file(`?person=${manager.personId}`)).text)
    expect(mine.length).toBeGreaterThan(0)
    expect(mine.length).toBe(all.filter((row) => row['done_by_id'] === manager.personId).length)
    expect((await file('?subject=nothing')).body).toMatchObject({ errors: [{ field: 'subject' }] })
  })

  // Source: OWASP, CSV Injection.
  it('has nothing in it that a spreadsheet runs', async () => {
    const name = '=HYPERLINK("https://example.org";"x")'
    await manager.send('POST', '/api/stores', { body: storeFields({ name }) })
    const [safe] = rows((await file('?subject=store')).text)
    expect(safe?.['about_name']).toBe(`'${name}`)
    const [raw] = rows((await file('?subject=store&text=raw')).text)
    expect(raw?.['about_name']).toBe(name)
    for (const cell of Object.values(safe ?? {})) expect(cell).not.toMatch(/^[=+@\t\r-]/)
  })

  it('is for managers alone', async () => {
    expect((await (await world.signIn('advisor')).send('GET', '/api/audit/file')).status).toBe(403)
    expect((await world.visitor().send('GET', '/api/audit/file')).status).toBe(401)
  })
})
