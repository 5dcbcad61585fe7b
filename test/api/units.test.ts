import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Install } from '../../core/install.ts'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import type { ReaderUnits } from '../../core/units/quantity.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
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

interface Session {
  person: { units: ReaderUnits | null } | null
  install: Install
}
const metric: ReaderUnits = { system: 'metric', gallon: 'imperial', decimal: ',', temperature: 'F' }

describe('the units of one person', () => {
  it('are nobody’s but theirs, and stay over a new sign-in', async () => {
    const [one, other] = [await world.signIn('member'), await world.signIn('member')]
    const set = await one.send<Session>('PUT', '/api/session/units', { body: { units: metric } })
    expect([set.status, set.body.person?.units]).toEqual([200, metric])
    expect((await one.send<Session>('GET', '/api/session')).body.person?.units).toEqual(metric)
    const others = await other.send<Session>('GET', '/api/session')
    expect(others.body.person?.units).toBeNull()
    expect(others.body.install.units.system).toBe('us')
  })
  it('are given back for those of everyone', async () => {
    const one = await world.signIn('member')
    await one.send('PUT', '/api/session/units', { body: { units: metric } })
    expect((await one.send<Session>('PUT', '/api/session/units', { body: { units: null } })).body.person?.units).toBeNull()
  })
  it.each([
    [{ ...metric, length: 'ft' }, 'units.length', 'cm, in'],
    [{ ...metric, decimal: ';' }, 'units.decimal', 'one of'],
    [{ system: 'metric', gallon: 'us' }, 'units.decimal', 'missing'],
    [{ ...metric, stone: 'st' }, 'units', 'no field "stone"'],
    ['metric', 'units', 'object'],
  ])('%j are refused by their field', async (units, field, words) => {
    const one = await world.signIn('member')
    const refused = await one.send<{ errors: Array<{ field: string; message: string }> }>('PUT', '/api/session/units', { body: { units } })
    expect(refused.status).toBe(422)
    expect(refused.body.errors).toMatchObject([{ field, message: expect.stringContaining(words) as string }])
  })
  it('need someone signed in', async () => {
    expect((await world.visitor().send('PUT', '/api/session/units', { body: { units: null } })).status).toBe(401)
  })
})

describe('a quote', () => {
  const linked = async (quote: QuoteView): Promise<{ page: string; setup: string; answered: ReaderUnits }> => {
    const issued = await issue(advisor, quote)
    expect(issued.status, issued.text).toBe(200)
    const { links } = issued.body
    const visitor = world.visitor()
    const setupPath = pathOf(links?.setup)
    const answered = await visitor.send<{ units: ReaderUnits }>('GET', setupPath.replace('/s/', '/api/setup-links/'))
    return {
      page: (await visitor.send('GET', pathOf(links?.quote))).text,
      setup: (await visitor.send('GET', setupPath)).text,
      answered: answered.body.units,
    }
  }

  it('is told in the customer’s units on its page and on the setup’s, whoever wrote it', async () => {
    const { page, setup, answered } = await linked(await newQuote(advisor, draftOf(shop, { units: 'metric' })))
    expect(page).toContain('91.4 × 45.7 × 45.7 cm outside')
    expect(page).not.toMatch(/\d (?:in|gal|°F)\b/)
    expect(setup).toMatch(/\d °C/)
    expect(setup).not.toMatch(/\d °F/)
    expect(answered).toMatchObject({ system: 'metric' })
  })
  it('is told in everyone’s where nobody chose, and stays so when those change later', async () => {
    const { page, answered } = await linked(await newQuote(advisor, draftOf(shop)))
    expect(page).toContain('36 × 18 × 18 in outside')
    expect(answered).toMatchObject({ system: 'us' })
  })
  it('takes a test of the water in the units its setup shows', async () => {
    const quote = await newQuote(advisor, draftOf(shop, { units: 'metric' }))
    const issued = await issue(advisor, quote)
    const path = pathOf(issued.body.links?.setup)
    const visitor = world.visitor()
    const form = new URLSearchParams({ takenOn: '2026-11-20', temperature: '60' }).toString()
    const refused = await visitor.send('POST', `${path}/reading`, {
      body: form,
      headers: { 'content-type': 'application/x-www-form-urlencoded' },
    })
    expect(refused.status).toBe(422)
    expect(refused.text).toContain('Temperature is 60.0 °C. It is between −2.0 °C and 45.0 °C.')
  })
  it('carries its units in the version that was issued', async () => {
    const quote = await newQuote(advisor, draftOf(shop, { units: 'metric' }))
    await issue(advisor, quote)
    const revision = await advisor.send<RevisionDocument>('GET', `/api/quotes/${quote.id}/revisions/1`)
    expect(revision.body.inputs.draft.units).toBe('metric')
  })
})

it('takes and tells hardness as the reader’s kit counts it', async () => {
  const manager = await world.signIn('manager')
  const read = await manager.send<Install & { version: number }>('GET', '/api/install')
  const { version: _version, ...house } = read.body
  const inPpm = { ...house, units: { ...house.units, hardness: 'ppm' as const } }
  await manager.send('PUT', '/api/install', { body: inPpm, headers: { 'if-match': read.headers.get('etag') ?? '' } })
  const issued = await issue(advisor, await newQuote(advisor, draftOf(shop)))
  const path = pathOf(issued.body.links?.setup)
  const visitor = world.visitor()
  const headers = { 'content-type': 'application/x-www-form-urlencoded' }
  const write = (kh: string) =>
    visitor.send('POST', `${path}/reading`, { body: new URLSearchParams({ takenOn: today(), kh }).toString(), headers })
  expect((await write('89')).status).toBe(303)
  expect((await visitor.send('GET', path)).text).toContain('89 ppm')
  // 40 German degrees are 713.92 mg/L as CaCO3.
  expect((await write('900')).text).toContain('KH is 900 ppm. It is between 0 ppm and 714 ppm.')
})
