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
