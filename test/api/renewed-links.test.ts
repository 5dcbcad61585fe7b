import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { QuoteView, SetupView } from '../../core/quote/quote-view.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, type Shop } from './support/quotes.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

let world: World
let advisor: Browser
let shop: Shop
let visitor: Browser
beforeAll(async () => {
  world = await createWorld()
  advisor = await world.signIn('advisor')
  shop = await stockedShop(world, await world.signIn('member'))
  visitor = world.visitor()
})
afterAll(() => world.close())

const issued = async (): Promise<QuoteView> => (await issue(advisor, await newQuote(advisor, draftOf(shop)))).body
const opens = async (path: string): Promise<number> => (await visitor.send('GET', path)).status
const tokenOf = (address: string | undefined): string => pathOf(address).slice(3)

describe('a quote link that was renewed', () => {
  it('opens nothing under its old address, on the page, the paper and the interface, and all under its new one', async () => {
    const quote = await issued()
    const renewed = await advisor.send<QuoteView & Record<string, unknown>>('POST', `/api/quotes/${quote.id}/link`)
    expect(renewed.status, renewed.text).toBe(200)
    const [before, after] = [tokenOf(quote.links?.quote), tokenOf(renewed.body.links?.quote)]
    expect(after).not.toBe(before)
    for (const path of [`/q/${before}`, `/q/${before}/pdf`, `/api/quote-links/${before}`]) expect(await opens(path), path).toBe(404)
    for (const path of [`/q/${after}`, `/q/${after}/pdf`, `/api/quote-links/${after}`]) expect(await opens(path), path).toBe(200)
    const answer = { revision: 1, answer: 'accepted', letter: 'A' }
    expect((await visitor.send('POST', `/api/quote-links/${before}/answer`, { body: answer })).status).toBe(404)
    expect((await visitor.send('POST', `/api/quote-links/${after}/answer`, { body: answer })).status).toBe(200)
    // The sheet on the tank hangs where it hung.
    expect(await opens(pathOf(quote.links?.setup))).toBe(200)
  })

  it('leaves the version that the desk edits as it is, so that no open desk is thrown back', async () => {
    const quote = await issued()
    const renewed = await advisor.send<QuoteView & Record<string, unknown>>('POST', `/api/quotes/${quote.id}/link`)
    expect(renewed.body.version).toBe(quote.version)
  })

  it('is none before anything was issued, and renewed by advisors alone', async () => {
    const draft = await newQuote(advisor, draftOf(shop))
    expect((await advisor.send('POST', `/api/quotes/${draft.id}/link`)).status).toBe(404)
    const member = await world.signIn('member')
    expect((await member.send('POST', `/api/quotes/${(await issued()).id}/link`)).status).toBe(403)
  })
})

describe('a setup link that was renewed', () => {
  it('opens nothing under its old address and all under its new one; the quote says the new one', async () => {
    const quote = await issued()
    const accepted = await visitor.send('POST', `/api/quote-links/${tokenOf(quote.links?.quote)}/answer`, {
      body: { revision: 1, answer: 'accepted', letter: 'A' },
    })
    expect(accepted.status, accepted.text).toBe(200)
    const listed = await advisor.send<{ items: SetupView[] }>('GET', '/api/setups')
    const setup = listed.body.items.find(({ link }) => link === quote.links?.setup)
    const renewed = await advisor.send<{ link: string }>('POST', `/api/setups/${setup?.id}/link`)
    expect(renewed.status, renewed.text).toBe(200)
    const [before, after] = [tokenOf(quote.links?.setup), tokenOf(renewed.body.link)]
    for (const path of [`/s/${before}`, `/api/setup-links/${before}`]) expect(await opens(path), path).toBe(404)
    for (const path of [`/s/${after}`, `/api/setup-links/${after}`]) expect(await opens(path), path).toBe(200)
    expect((await advisor.send<QuoteView & Record<string, unknown>>('GET', `/api/quotes/${quote.id}`)).body.links?.setup).toBe(
      renewed.body.link,
    )
    const trail = await world.db.selectFrom('audit_entry').selectAll().where('action', '=', 'setup_link_renewed').execute()
    expect(trail.map(({ subject_name }) => subject_name)).toEqual([quote.number])
  })
})
