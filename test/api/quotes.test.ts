import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sayAudit, type AuditLine } from '../../core/audit/say-audit.ts'
import { addDays } from '../../core/dates.ts'
import { assembleBuild } from '../../core/quote/assemble.ts'
import type { QuoteListRow, QuoteView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { draftOf, issue, newCustomer, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let advisor: Browser
let shop: Shop
beforeAll(async () => {
  world = await createWorld()
  advisor = await world.signIn('advisor')
  shop = await stockedShop(world, await world.signIn('member'))
})
afterAll(() => world.close())

type Refused = { errors: Array<{ field: string; message: string }>; detail: string }

describe('a quote', () => {
  it('begins empty and is saved as a whole with the version it was based on', async () => {
    const customer = await newCustomer(advisor)
    const made = await advisor.send<QuoteView>('POST', '/api/quotes', { body: { customerId: customer.id } })
    expect([made.status, made.body.number, made.body.state, made.body.links]).toEqual([201, null, 'draft', null])
    const path = `/api/quotes/${made.body.id}`
    const body = { customerId: customer.id, draft: draftOf(shop) }
    expect((await advisor.send('PUT', path, { body })).status).toBe(428)
    const saved = await advisor.send<QuoteView>('PUT', path, { body, headers: { 'if-match': '"1"' } })
    expect(saved.status, saved.text).toBe(200)
    expect(saved.body.draft).toEqual(body.draft)
    const late = await advisor.send('PUT', path, {
      body: { ...body, draft: draftOf(shop, { title: 'Too late' }) },
      headers: { 'if-match': '"1"' },
    })
    expect(late.status).toBe(412)
    expect((await advisor.send<QuoteView>('GET', path)).body.draft.title).toBe('A tank of 90 cm')
  })

  it('comes with all that its builds are worked out from, so that desk and server agree', async () => {
    const view = await newQuote(advisor, draftOf(shop))
    const issued = await issue(advisor, view)
    expect(issued.status, issued.text).toBe(200)
    const revision = await advisor.send<RevisionDocument>('GET', `/api/quotes/${view.id}/revisions/1`)
    expect(JSON.parse(JSON.stringify([0, 1].map((index) => assembleBuild(view, index))))).toEqual(revision.body.builds)
    expect(revision.body.builds[0]?.cost.today).toMatchObject({ complete: true, goodsMinor: 15900 + 3499 })
    // 6 % of 193.99 is 11.6394, rounded half away from zero once a receipt: 11.64.
    expect(revision.body.builds[0]?.cost.today).toMatchObject({ taxMinor: 1164, totalMinor: 20563 })
  })

  it('refuses a product, store, customer or livestock group that is not there, by its field', async () => {
    const nobody = '0198c0de-0000-7000-8000-000000000000'
    const customer = await newCustomer(advisor)
    const draft = draftOf(shop)
    const cases: Array<[object, string]> = [
      [{ customerId: nobody, draft }, 'customerId'],
      [
        { customerId: customer.id, draft: draftOf({ ...shop, heater: { ...shop.heater, id: nobody } }) },
        'draft.builds.0.lines.1.productId',
      ],
      [{ customerId: customer.id, draft: { ...draft, need: { ...draft.need, storeIds: [nobody] } } }, 'draft.need.storeIds.0'],
      [{ customerId: customer.id, draft: { ...draft, need: { ...draft.need, livestockId: 'dragons' } } }, 'draft.need.livestockId'],
      [{ customerId: customer.id, draft: { ...draft, need: { ...draft.need, lengthMm: 5 } } }, 'draft.need.lengthMm'],
      [{ customerId: customer.id, draft: { ...draft, builds: [] } }, 'draft.builds'],
    ]
    for (const [body, field] of cases) {
      const answer = await advisor.send<Refused>('POST', '/api/quotes', { body })
      expect([answer.status, answer.body.errors?.[0]?.field], field).toEqual([422, field])
    }
  })

  it('stands in the list, found by number, title and customer, with its newest totals', async () => {
    const issued = (await issue(advisor, await newQuote(advisor, draftOf(shop, { title: 'Found by title' })))).body
    for (const q of [issued.number ?? '', 'found by TITLE', issued.customer.name]) {
      const list = await advisor.send<{ rows: QuoteListRow[] }>('GET', `/api/quotes?q=${encodeURIComponent(q)}`)
      expect(
        list.body.rows.map(({ id }) => id),
        q,
      ).toContain(issued.id)
    }
    const row = (await advisor.send<{ rows: QuoteListRow[] }>('GET', `/api/quotes?q=Found&state=issued`)).body.rows[0]
    expect(row?.todayMinor).toEqual([20563, 24272])
  })
})

describe('issuing', () => {
  it('gives a number of the year, one after the other, whoever issues at the same moment', async () => {
    const drafts = await Promise.all([1, 2, 3, 4].map(() => newQuote(advisor, draftOf(shop))))
    const issued = await Promise.all(drafts.map((draft) => issue(advisor, draft)))
    const numbers = issued.map(({ body }) => body.number ?? '').sort()
    expect(new Set(numbers).size).toBe(4)
    const counts = numbers.map((number) => Number(number.split('-')[1]))
    expect(counts).toEqual([0, 1, 2, 3].map((step) => (counts[0] ?? NaN) + step))
    expect(numbers.every((number) => number.startsWith(`${today().slice(0, 4)}-`))).toBe(true)
  })

  it('freezes: what changes afterwards changes nothing that was issued', async () => {
    const first = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    const before = await advisor.send('GET', `/api/quotes/${first.id}/revisions/1`)
    const saved = await advisor.send<QuoteView>('PUT', `/api/quotes/${first.id}`, {
      body: { customerId: first.customer.id, draft: draftOf(shop, { title: 'Changed my mind' }) },
      headers: { 'if-match': `"${first.version}"` },
    })
    expect(saved.status, saved.text).toBe(200)
    const second = await issue(advisor, saved.body)
    expect([second.body.number, second.body.revisions.length, second.body.links]).toEqual([first.number, 2, first.links])
    expect((await advisor.send('GET', `/api/quotes/${first.id}/revisions/1`)).body).toEqual(before.body)
    expect((await advisor.send<RevisionDocument>('GET', `/api/quotes/${first.id}/revisions/2`)).body.title).toBe('Changed my mind')
    expect((await advisor.send('GET', `/api/quotes/${first.id}/revisions/3`)).status).toBe(404)
  })

  it('says in a later version what is otherwise than in the one before, in the answer and on the customer’s page', async () => {
    const first = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    expect((await advisor.send<RevisionDocument>('GET', `/api/quotes/${first.id}/revisions/1`)).body.since).toBeUndefined()
    const draft = draftOf(shop)
    const builds = draft.builds.map((build) => ({ ...build, lines: build.id === 'two' ? build.lines.slice(0, 1) : build.lines }))
    const saved = await advisor.send<QuoteView>('PUT', `/api/quotes/${first.id}`, {
      body: { customerId: first.customer.id, draft: { ...draft, builds } },
      headers: { 'if-match': `"${first.version}"` },
    })
    const second = await issue(advisor, saved.body)
    expect(second.status, second.text).toBe(200)
    const { since } = (await advisor.send<RevisionDocument>('GET', `/api/quotes/${first.id}/revisions/2`)).body
    expect(since?.inShort).toMatch(/^A as it was, B is \$\d+\.\d\d less\.$/)
    expect(since?.builds).toMatchObject([
      { letter: 'B', changes: [`Heater, taken out: 2 × ${shop.heater.name}.`, expect.stringContaining('less; it was')] },
    ])
    const page = await world.app.request(pathOf(second.body.links?.quote))
    const text = await page.text()
    expect(text).toContain('What changed since version 1 of ')
    expect(text).toContain(`2 × ${shop.heater.name}`)
  })

  it('happens once where the button was pressed twice', async () => {
    const draft = await newQuote(advisor, draftOf(shop))
    const both = await Promise.all([issue(advisor, draft), issue(advisor, draft)])
    expect(both.map(({ status }) => status).sort()).toEqual([200, 412])
    expect((await advisor.send<QuoteView>('GET', `/api/quotes/${draft.id}`)).body.revisions).toHaveLength(1)
  })

  it.each([
    ['without a last day', { standsUntil: null }, 'standsUntil'],
    ['with a last day that is past', { standsUntil: addDays(today(), -1) }, 'standsUntil'],
    ['without a title', { title: '' }, 'title'],
    ['with an empty build', { builds: [{ id: 'one', name: 'Empty', why: '', lines: [] }], suggestion: null }, 'builds.0.lines'],
  ])('is refused %s, by the field', async (_what, change, field) => {
    const answer = await issue(advisor, await newQuote(advisor, draftOf(shop, change)))
    expect(answer.status).toBe(422)
    expect((answer.body as unknown as Refused).errors.map((error) => error.field)).toEqual([field])
  })

  it('is refused for a build without a tank', async () => {
    const draft = draftOf(shop)
    const builds = draft.builds.map((build) => ({ ...build, lines: build.lines.filter(({ id }) => id !== 't') }))
    const answer = await issue(advisor, await newQuote(advisor, { ...draft, builds }))
    expect((answer.body as unknown as Refused).errors.map(({ field }) => field)).toEqual(['builds.0.lines', 'builds.1.lines'])
  })

  it('passes with a price that nobody knows, and then prints no total', async () => {
    const { product } = await import('../support/rows.ts')
    const unpriced = await product(world.db)
    const answer = await issue(advisor, await newQuote(advisor, draftOf({ ...shop, heater: unpriced })))
    expect(answer.status, answer.text).toBe(200)
    expect(answer.body.revisions[0]?.totals.map(({ todayMinor }) => todayMinor)).toEqual([null, null])
  })

  it('gives links here marked by their key, and none on plain http elsewhere', async () => {
    const issued = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    expect(issued.links?.quote).toMatch(/^http:\/\/localhost:8080\/q\/[\w-]{43}$/)
    expect(issued.links?.setup).toMatch(/^http:\/\/localhost:8080\/s\/[\w-]{43}$/)
    const elsewhere = await advisor.send<QuoteView>('GET', `http://192.168.1.20:8080/api/quotes/${issued.id}`, {
      headers: { cookie: advisor.cookie().replace('driploop', '__Host-driploop') },
    })
    expect(elsewhere.status).toBe(200)
    expect(elsewhere.body.links).toBeNull()
  })

  it('that was never issued is discarded, and the trail says so', async () => {
    const view = await newQuote(advisor, draftOf(shop))
    const path = `/api/quotes/${view.id}`
    const discard = (by: Browser, version: number) => by.send<Refused>('DELETE', path, { headers: { 'if-match': `"${version}"` } })
    expect((await discard(await world.signIn('member'), view.version)).status).toBe(403)
    expect((await advisor.send('DELETE', path)).status).toBe(428)
    expect((await discard(advisor, view.version + 1)).status).toBe(412)
    expect((await discard(advisor, view.version)).status).toBe(204)
    expect([(await advisor.send('GET', path)).status, (await discard(advisor, view.version)).status]).toEqual([404, 404])
    expect((await advisor.send('GET', `/api/customers/${view.customer.id}`)).status).toBe(200)
    const manager = await world.signIn('manager')
    const { items } = (await manager.send<{ items: Array<AuditLine> }>('GET', '/api/audit?subject=quote')).body
    expect(items.filter(({ subject }) => subject.id === view.id).map(sayAudit)).toEqual([
      `${items[0]?.actor?.name} discarded a quote that was never issued`,
    ])
  })

  it('that was issued is not discarded: it says what to do instead, and its link goes on', async () => {
    const issued = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    const answer = await advisor.send<Refused>('DELETE', `/api/quotes/${issued.id}`, { headers: { 'if-match': `"${issued.version}"` } })
    expect([answer.status, answer.body.detail]).toEqual([409, expect.stringMatching(/was issued.*Withdraw it instead/)])
    for (const kind of ['quote', 'setup'] as const) {
      const token = pathOf(issued.links?.[kind]).slice(3)
      expect((await world.visitor().send('GET', `/api/${kind}-links/${token}`)).status, kind).toBe(200)
    }
  })

  it('can be taken back, and then nothing more is issued', async () => {
    const issued = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    const withdrawn = await advisor.send<QuoteView>('POST', `/api/quotes/${issued.id}/withdraw`)
    expect([withdrawn.status, withdrawn.body.state]).toEqual([200, 'withdrawn'])
    expect((await issue(advisor, withdrawn.body)).status).toBe(409)
    const seen = await world.visitor().send<{ state: string }>('GET', `/api/quote-links/${pathOf(issued.links?.quote).slice(3)}`)
    expect(seen.body.state).toBe('withdrawn')
  })
})

describe('the paper', () => {
  it('is asked for with the version, the customer and the links, and comes as a file with a name of ours', async () => {
    const issued = (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
    const asked: unknown[] = []
    const { pdf } = world.deps
    world.rebuild({ pdf: async (paper) => (asked.push(paper), new TextEncoder().encode('%PDF-1.7')) })
    const answer = await advisor.send('GET', `/api/quotes/${issued.id}/revisions/1/pdf?paper=a4`)
    const draft = await advisor.send('GET', `/api/quotes/${issued.id}/draft.pdf`)
    world.rebuild({ pdf })
    expect(answer.headers.get('content-type')).toBe('application/pdf')
    expect(answer.headers.get('content-disposition')).toBe(`attachment; filename="quote-${issued.number}-version-1-a4.pdf"`)
    expect(asked[0]).toMatchObject({
      customerName: issued.customer.name,
      paper: 'a4',
      draft: false,
      links: { ...issued.links, thisComputerOnly: true },
    })
    expect(asked[1]).toMatchObject({ paper: 'letter', draft: true, links: null })
    expect(draft.headers.get('content-disposition')).toContain('-draft-letter.pdf')
    expect((await advisor.send('GET', `/api/quotes/${issued.id}/revisions/1/pdf?paper=a5`)).status).toBe(422)
    expect((await advisor.send('GET', `/api/quotes/${issued.id}/revisions/0/pdf`)).status).toBe(422)
  })
})
