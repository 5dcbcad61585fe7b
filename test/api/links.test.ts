import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { PdfBusyError } from '../../api/pdf/pdf-desk.ts'
import { addDays } from '../../core/dates.ts'
import type { QuoteView, Reading, SetupView } from '../../core/quote/quote-view.ts'
import { draftOf, issue, newQuote, pathOf, stockedShop, today, type Shop } from './support/quotes.ts'
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

const issued = async (change = {}): Promise<QuoteView> => (await issue(advisor, await newQuote(advisor, draftOf(shop, change)))).body
const tokenOf = (address: string | undefined): string => pathOf(address).slice(3)
const accept = { revision: 1, answer: 'accepted', letter: 'B', note: 'By Saturday, please.' }
const form = (fields: Record<string, string>) => ({
  body: new URLSearchParams(fields).toString(),
  headers: { 'content-type': 'application/x-www-form-urlencoded' },
})
const DAY_MS = 86_400_000
interface SetupSeen {
  quoteWithdrawn: boolean
  plan: { steps: Array<{ id: string }> }
}
const at = async <T>(days: number, work: () => Promise<T>): Promise<T> => {
  const { clock } = world.deps
  world.rebuild({ clock: () => Date.now() + days * DAY_MS })
  return work().finally(() => world.rebuild({ clock }))
}

describe('a quote link', () => {
  it('shows what was issued, and neither other stores’ sightings nor the advisor’s inputs', async () => {
    const quote = await issued()
    const seen = await visitor.send<{ document: Record<string, unknown>; state: string }>(
      'GET',
      `/api/quote-links/${tokenOf(quote.links?.quote)}`,
    )
    expect(seen.status, seen.text).toBe(200)
    expect(seen.body.state).toBe('issued')
    expect(seen.body.document).not.toHaveProperty('inputs')
    const page = await visitor.send('GET', pathOf(quote.links?.quote))
    expect(page.status).toBe(200)
    expect(page.text).toContain(quote.number ?? 'no number')
    expect(page.text).not.toContain('<script')
  })

  it('opens every check of a build with its formula, and leads back from a letter that no build has', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.quote)
    const page = await visitor.send('GET', `${path}/checks/A`)
    expect(page.status, page.text).toBe(200)
    expect(page.text).toContain('How it was reckoned:')
    const astray = await visitor.send('GET', `${path}/checks/Z`)
    expect([astray.status, astray.headers.get('location')]).toEqual([303, path])
    expect((await visitor.send('GET', '/q/forged/checks/A')).status).toBe(404)
  })

  it('takes one answer, of many at the same moment exactly one', async () => {
    const quote = await issued()
    const path = `/api/quote-links/${tokenOf(quote.links?.quote)}/answer`
    const all = await Promise.all(['A', 'B', 'A', 'B'].map((letter) => visitor.send('POST', path, { body: { ...accept, letter } })))
    expect(all.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409])
    expect((await advisor.send<QuoteView>('GET', `/api/quotes/${quote.id}`)).body.state).toBe('accepted')
    expect((await visitor.send('POST', path, { body: { revision: 1, answer: 'declined' } })).status).toBe(409)
  })

  it('leads to the checklist once it is accepted, and its paper is of the accepted build', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.quote)
    const asked: Array<string | undefined> = []
    const { pdf } = world.deps
    world.rebuild({ pdf: async (paper) => (asked.push(paper.letter), new TextEncoder().encode('%PDF-1.7')) })
    try {
      await visitor.send('GET', `${path}/pdf`)
      await visitor.send('POST', `/api/quote-links/${path.slice(3)}/answer`, { body: accept })
      await visitor.send('GET', `${path}/pdf`)
      await advisor.send('GET', `/api/quotes/${quote.id}/revisions/1/pdf`)
    } finally {
      world.rebuild({ pdf })
    }
    expect(asked).toEqual([undefined, 'B', 'B'])
    const setup = quote.links?.setup ?? 'no link'
    expect((await visitor.send('GET', path)).text).toContain(`href="${setup}">Open your startup checklist`)
    expect((await visitor.send<{ setupLink: string }>('GET', `/api/quote-links/${path.slice(3)}`)).body.setupLink).toBe(setup)
  })

  it('whose paper has to wait shows a page that asks again by itself; a form that was sent is not sent again', async () => {
    const path = pathOf((await issued()).links?.quote)
    const { pdf } = world.deps
    const html = { headers: { accept: 'text/html' } }
    let busy = true
    world.rebuild({ pdf: async () => (busy ? Promise.reject(new PdfBusyError('too many')) : new TextEncoder().encode('%PDF-1.7')) })
    try {
      const waits = await visitor.send('GET', `${path}/pdf?paper=letter`, html)
      expect([waits.status, waits.headers.get('retry-after'), waits.headers.get('refresh')]).toEqual([503, '5', '5'])
      expect(waits.text).toContain('This page asks again by itself in 5 seconds.')
      expect(waits.text).toContain(`<a href="${path}/pdf?paper=letter">Ask again now</a>`)
      expect((await visitor.send('GET', `${path}/pdf`)).headers.get('refresh')).toBeNull()
      busy = false
      const comes = await visitor.send('GET', `${path}/pdf?paper=letter`, html)
      expect([comes.status, comes.headers.get('content-type')]).toEqual([200, 'application/pdf'])
    } finally {
      world.rebuild({ pdf })
    }
  })

  it('takes the answer of a page without script, and shows it', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.quote)
    const unsaid = await visitor.send('POST', `${path}/answer`, form({ revision: '1', answer: 'accepted', note: 'kept <b>note</b>' }))
    expect(unsaid.status).toBe(422)
    expect(unsaid.text).toContain('kept &lt;b&gt;note&lt;/b&gt;')
    const said = await visitor.send('POST', `${path}/answer`, form({ revision: '1', answer: 'accepted', letter: 'A', note: 'Saturday' }))
    expect([said.status, said.headers.get('location')]).toEqual([303, path])
    expect((await advisor.send<QuoteView>('GET', `/api/quotes/${quote.id}`)).body.answer).toMatchObject({
      answer: 'accepted',
      letter: 'A',
      note: 'Saturday',
    })
    const again = await visitor.send('POST', `${path}/answer`, form({ revision: '1', answer: 'declined' }))
    expect([again.status, again.text.includes('answered already')]).toEqual([422, true])
  })

  it('refuses an answer to a version that a newer one replaced, and to a build there is not', async () => {
    const quote = await issued()
    const path = `/api/quote-links/${tokenOf(quote.links?.quote)}/answer`
    expect((await visitor.send('POST', path, { body: { ...accept, letter: 'D' } })).status).toBe(422)
    expect((await visitor.send('POST', path, { body: { ...accept, letter: null } })).status).toBe(422)
    await issue(advisor, quote)
    expect((await visitor.send('POST', path, { body: accept })).status).toBe(409)
    expect((await visitor.send('POST', path, { body: { ...accept, revision: 2 } })).status).toBe(200)
  })

  it('says that the quote lapsed on the day after its last, and is gone a month later', async () => {
    const quote = await issued({ standsUntil: today() })
    const token = tokenOf(quote.links?.quote)
    const read = () => visitor.send<{ state: string }>('GET', `/api/quote-links/${token}`)
    expect((await read()).body.state).toBe('issued')
    await at(1.1, async () => {
      expect((await read()).body.state).toBe('lapsed')
      expect((await visitor.send('POST', `/api/quote-links/${token}/answer`, { body: accept })).status).toBe(409)
      expect((await advisor.send<QuoteView>('GET', `/api/quotes/${quote.id}`)).body.state).toBe('lapsed')
    })
    await at(32, async () => {
      expect((await read()).status).toBe(410)
      const page = await visitor.send('GET', pathOf(quote.links?.quote))
      expect([page.status, page.text.includes('555-0100')]).toEqual([410, true])
    })
  })

  it('opens nothing when it was forged, cut, belongs to another thing, or was revoked', async () => {
    const [quote, other] = [await issued(), await issued()]
    const token = tokenOf(quote.links?.quote)
    const swap = (text: string, index: number): string => text.slice(0, index) + (text[index] === 'A' ? 'B' : 'A') + text.slice(index + 1)
    const forged = [
      swap(token, 0), swap(token, 30), swap(token, 40), token.slice(0, -1), `${token}A`, token.toUpperCase(), '', 'x', '%00', 'a'.repeat(43), 'a'.repeat(5000),
      token.slice(0, 21) + tokenOf(other.links?.quote).slice(21), tokenOf(quote.links?.setup),
    ] // prettier-ignore
    for (const wrong of forged) {
      expect([404, 422], wrong).toContain((await visitor.send('GET', `/api/quote-links/${wrong}`)).status)
      expect((await visitor.send('GET', `/q/${wrong}`)).status, wrong).toBe(404)
    }
    // 43 characters hold two bits that no byte uses: the same link spelt otherwise is none.
    const last = token.at(-1) ?? ''
    const alphabet = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_'
    const twin = token.slice(0, -1) + alphabet[alphabet.indexOf(last) ^ 1]
    expect((await visitor.send('GET', `/api/quote-links/${twin}`)).status).toBe(404)
    await world.db.updateTable('quote').set({ link_version: 2 }).where('id', '=', quote.id).execute()
    expect((await visitor.send('GET', `/api/quote-links/${token}`)).status).toBe(404)
    const fresh = (await advisor.send<QuoteView>('GET', `/api/quotes/${quote.id}`)).body
    expect((await visitor.send('GET', `/api/quote-links/${tokenOf(fresh.links?.quote)}`)).status).toBe(200)
  })

  it('is guessed at a hundred times from one place, then no more for a quarter of an hour; a right one opens all the same', async () => {
    const quote = await issued()
    const guesser = world.visitor('203.0.113.200')
    const guess = (number: number) => guesser.send('GET', `/q/${'A'.repeat(40)}${number}`)
    for (let number = 100; number < 200; number += 1) expect((await guess(number)).status).toBe(404)
    const refused = await guess(200)
    expect([refused.status, Number(refused.headers.get('retry-after')) > 800]).toEqual([429, true])
    expect((await guesser.send('GET', `/api/links/${'A'.repeat(43)}`)).status).toBe(429)
    expect((await guesser.send('GET', pathOf(quote.links?.quote))).status).toBe(200)
    expect((await guesser.send('GET', pathOf(quote.links?.setup))).status).toBe(200)
    expect((await visitor.send('GET', `/q/${'A'.repeat(43)}`)).status).toBe(404)
    await at(16 / 1440, async () => expect((await guess(201)).status).toBe(404))
  })

  it('counts every address of one IPv6 customer as one place', async () => {
    const wrong = (place: string) => world.visitor(place).send('GET', `/s/${'A'.repeat(43)}`)
    for (let host = 1; host <= 100; host += 1) expect((await wrong(`2001:db8:7:1::${host.toString(16)}`)).status).toBe(404)
    expect((await wrong('2001:db8:7:1:ffff::1')).status).toBe(429)
    expect((await wrong('2001:db8:7:2::1')).status).toBe(404)
  })

  it('stands in no log line', async () => {
    const quote = await issued()
    const token = tokenOf(quote.links?.quote)
    for (const path of [`/q/${token}`, `/q/${token}/pdf`, `/api/quote-links/${token}`, pathOf(quote.links?.setup)])
      await visitor.send('GET', path)
    const log = world.logged.join('')
    expect(log).toContain('/q/…/pdf')
    for (const secret of [token, tokenOf(quote.links?.setup)]) expect(log).not.toContain(secret)
    expect(log).not.toContain(quote.customer.name)
  })
})

describe('a setup link', () => {
  it('of a quote that was withdrawn stays open, is told so, and still takes a tick', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.setup)
    const told = 'The quote for this setup was withdrawn.'
    expect((await visitor.send('GET', path)).text).not.toContain(told)
    expect((await advisor.send('POST', `/api/quotes/${quote.id}/withdraw`)).status).toBe(200)
    const page = await visitor.send('GET', path)
    expect([page.status, page.text.includes(told)]).toEqual([200, true])
    expect(page.text).toContain('Ask before you buy by it.')
    const seen = await visitor.send<SetupSeen>('GET', `/api/setup-links/${path.slice(3)}`)
    expect(seen.body.quoteWithdrawn).toBe(true)
    const ticked = await visitor.send('POST', `${path}/tick`, form({ step: seen.body.plan.steps[0]?.id ?? '', done: '1' }))
    expect(ticked.status).toBe(303)
  })

  it('shows the steps, and neither a name nor a price', async () => {
    const quote = await issued()
    const page = await visitor.send('GET', pathOf(quote.links?.setup))
    expect(page.status, page.text.slice(0, 300)).toBe(200)
    const json = await visitor.send('GET', `/api/setup-links/${tokenOf(quote.links?.setup)}`)
    for (const text of [page.text, json.text]) {
      expect(text).not.toContain(quote.customer.name)
      expect(text).not.toMatch(/159\.00|15900|205\.63|20563/)
    }
    expect(page.text).not.toContain('<script')
  })

  it('keeps ticks, the same twice as once, and takes them back', async () => {
    const quote = await issued()
    const token = tokenOf(quote.links?.setup)
    const read = () =>
      visitor.send<{ plan: { steps: Array<{ id: string }> }; ticks: Array<{ stepId: string; on: string }> }>(
        'GET',
        `/api/setup-links/${token}`,
      )
    const step = (await read()).body.plan.steps[0]?.id ?? ''
    for (let times = 0; times < 2; times += 1)
      expect((await visitor.send('PUT', `/api/setup-links/${token}/ticks/${step}`, { body: { done: true } })).status).toBe(204)
    expect((await read()).body.ticks).toEqual([{ stepId: step, on: today(), onWord: false }])
    const back = await visitor.send('POST', `${pathOf(quote.links?.setup)}/tick`, form({ step, done: '0' }))
    const path = pathOf(quote.links?.setup)
    expect([back.status, back.headers.get('location')]).toEqual([303, `${path}#${step}`])
    expect((await read()).body.ticks).toEqual([])
    const done = await visitor.send('POST', `${path}/tick`, form({ step, done: '1' }))
    expect([done.status, done.headers.get('location')], 'a step that is done leads to the next, at the top').toEqual([303, path])
    expect((await visitor.send('PUT', `/api/setup-links/${token}/ticks/none`, { body: { done: true } })).status).toBe(422)
    expect((await visitor.send('POST', `${pathOf(quote.links?.setup)}/tick`, form({ step: 'none', done: '1' }))).status).toBe(422)
  })

  it('keeps water tests, each once, in the reader’s unit, and refuses one of tomorrow', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.setup)
    const taken = { takenOn: today(), ammonia: '0,25', nitrite: '', nitrate: '5', ph: '7.4', temperature: '77', note: 'cloudy' }
    expect((await visitor.send('POST', `${path}/reading`, form(taken))).status).toBe(303)
    const read = await visitor.send<{ readings: Reading[] }>('GET', `/api/setup-links/${path.slice(3)}`)
    expect(read.body.readings[0]).toMatchObject({ ammoniaMgL: 0.25, nitriteMgL: null, nitrateMgL: 5, ph: 7.4, note: 'cloudy' })
    // 77 °F is 25 °C.
    expect(read.body.readings[0]?.temperatureC).toBeCloseTo(25, 6)
    const odd = await visitor.send('POST', `${path}/reading`, form({ ...taken, ammonia: 'a lot', takenOn: addDays(today(), 3) }))
    expect([odd.status, odd.text.includes('a lot')]).toEqual([422, true])
    expect((await visitor.send('POST', `${path}/reading`, form({ ...taken, takenOn: addDays(today(), 3) }))).status).toBe(422)
    const body = {
      id: '0198c0de-1111-7000-8000-000000000001',
      takenOn: today(),
      ammoniaMgL: 1,
      nitriteMgL: null,
      nitrateMgL: null,
      ph: null,
      khDegrees: null,
      temperatureC: null,
      note: '',
    }
    const api = `/api/setup-links/${path.slice(3)}/readings`
    expect([(await visitor.send('POST', api, { body })).status, (await visitor.send('POST', api, { body })).status]).toEqual([201, 200])
    expect((await visitor.send('POST', api, { body: { ...body, ammoniaMgL: 2 } })).status).toBe(422)
    expect((await visitor.send('POST', api, { body: { ...body, id: '0198c0de-1111-7000-8000-000000000002', ph: 70 } })).status).toBe(422)
  })

  it('warns of a dangerous test on the page it comes back to', async () => {
    const path = pathOf((await issued()).links?.setup)
    const taken = { takenOn: today(), ammonia: '6', nitrite: '8', ph: '6.1', kh: '2', temperature: '95', note: '' }
    expect((await visitor.send('POST', `${path}/reading`, form(taken))).status).toBe(303)
    const page = (await visitor.send('GET', path)).text
    for (const words of ['Ammonia reads 6 mg/L', 'Nitrite reads 8 mg/L', 'pH reads 6.1', 'KH reads 2 dKH', 'The water reads 95 °F'])
      expect(page).toContain(words)
  })

  it('refuses a figure in the unit it was typed in, and a day before the start or after today', async () => {
    const path = pathOf((await issued()).links?.setup)
    const send = (fields: Record<string, string>) =>
      visitor.send('POST', `${path}/reading`, form({ takenOn: today(), note: '', ...fields }))
    const cold = await send({ temperature: '25' })
    expect(cold.status).toBe(422)
    expect(cold.text).toContain('Temperature is 25 °F. It is between 28.4 °F and 113 °F.')
    expect(cold.text).not.toContain('3.88')
    const old = await send({ takenOn: addDays(today(), -900), ph: '7' })
    expect([old.status, old.text.includes('is before this setup was made on')]).toEqual([422, true])
    await visitor.send('POST', `${path}/start`, form({ on: addDays(today(), -3) }))
    const day = async (days: number) => (await send({ takenOn: addDays(today(), days), ph: '7' })).status
    expect([await day(-4), await day(-3), await day(0), await day(1), await day(2)]).toEqual([422, 303, 303, 422, 422])
    expect((await send({ takenOn: addDays(today(), -4), ph: '7' })).text).toContain('is before the start on')
    // What was written down last is told, though a test of a later day is right.
    const late = await send({ takenOn: addDays(today(), -2), ph: '6' })
    expect((await visitor.send('GET', late.headers.get('location') ?? '')).text).toContain('pH reads 6. Stop under 6.5.')
  })

  it('takes a test out of its own log, with a word that confirms it, and of no other', async () => {
    const [path, other] = [pathOf((await issued()).links?.setup), pathOf((await issued()).links?.setup)]
    const stored = async () => (await visitor.send<{ readings: Reading[] }>('GET', `/api/setup-links/${path.slice(3)}`)).body.readings
    const add = (ph: string) => visitor.send('POST', `${path}/reading`, form({ takenOn: today(), ph, note: '' }))
    await add('7')
    await add('8')
    const [first, second] = await stored()
    const remove = (on: string, fields: Record<string, string>) => visitor.send('POST', `${on}/reading/remove`, form(fields))
    expect((await remove(path, { reading: first?.id ?? '' })).status).toBe(422)
    expect((await remove(other, { reading: first?.id ?? '', confirm: '1' })).status).toBe(303)
    expect(await stored()).toHaveLength(2)
    expect((await remove(path, { reading: first?.id ?? '', confirm: '1' })).status).toBe(303)
    expect((await stored()).map(({ id }) => id)).toEqual([second?.id])
    const api = (on: string) => visitor.send('DELETE', `/api/setup-links/${on.slice(3)}/readings/${second?.id}`)
    expect([(await api(other)).status, (await api(path)).status, (await api(path)).status]).toEqual([404, 204, 404])
    expect(await stored()).toEqual([])
  })

  it('ticks a step for fish only with a dose seen eaten and two good days in the log, or with a word for them; none against a newer test', async () => {
    const path = pathOf((await issued()).links?.setup)
    const tick = async (step: string, more = {}) => (await visitor.send('POST', `${path}/tick`, form({ step, done: '1', ...more }))).status
    const api = async (body: Record<string, boolean>) =>
      (await visitor.send('PUT', `/api/setup-links/${path.slice(3)}/ticks/ready`, { body })).status
    expect([await tick('ready'), await api({ done: true })]).toEqual([422, 422])
    expect([await tick('ready', { tested: '1' }), await api({ done: true, tested: true })]).toEqual([303, 204])
    expect(await tick('first-fish')).toBe(422)
    const read = async (days: number, figures: Record<string, string>) => {
      const taken = { takenOn: addDays(today(), days), note: '', ...figures }
      expect((await visitor.send('POST', `${path}/reading`, form(taken))).status).toBe(303)
    }
    await visitor.send('POST', `${path}/start`, form({ on: addDays(today(), -9) })) // prettier-ignore
    expect(await tick('first-ammonia', { doneOn: addDays(today(), -3) })).toBe(303)
    await read(-1, { ammonia: '2', nitrite: '0' })
    expect([await tick('first-fish', { tested: '1' }), await api({ done: true, tested: true })], 'ammonia at 2').toEqual([422, 422])
    await read(-1, { ammonia: '0.25', nitrite: '0' })
    await read(0, { ammonia: '0.25', nitrite: '0', temperature: '60' })
    expect(await tick('first-fish', { tested: '1' }), 'too cold').toBe(422)
    await read(0, { temperature: '77' })
    expect(await tick('first-fish')).toBe(303)
  })

  it('believes the word that a tank stood full long enough, and warns of no hold ticked too soon', async () => {
    const path = pathOf((await issued()).links?.setup)
    const tick = async (step: string, more = {}) => (await visitor.send('POST', `${path}/tick`, form({ step, done: '1', ...more }))).status
    expect([await tick('leak-fill'), await tick('leak-hold')]).toEqual([303, 422])
    expect(await tick('leak-hold', { tested: '1' })).toBe(303)
    expect((await visitor.send('GET', path)).text).not.toContain('ticked too soon')
  })

  it('writes no day before the start on a word: the fill keeps its own, and the hold is told to stand on a word', async () => {
    const path = pathOf((await issued()).links?.setup)
    const tick = async (step: string, more = {}) => (await visitor.send('POST', `${path}/tick`, form({ step, done: '1', ...more }))).status
    await visitor.send('POST', `${path}/start`, form({ on: today() }))
    expect([await tick('leak-fill'), await tick('leak-hold', { tested: '1' })]).toEqual([303, 303])
    const { ticks } = (await visitor.send<{ ticks: unknown[] }>('GET', `/api/setup-links/${path.slice(3)}`)).body
    expect(ticks).toEqual([
      { stepId: 'leak-fill', on: today(), onWord: false },
      { stepId: 'leak-hold', on: today(), onWord: true },
    ])
    const html = (await visitor.send('GET', path)).text
    expect([html.includes('on your word'), html.includes('ticked too soon')]).toEqual([true, false])
  })

  it('asks for a word where steps of a month are ticked on one day, and for none on days that are named', async () => {
    const path = pathOf((await issued()).links?.setup)
    const tick = async (step: string, more = {}) => (await visitor.send('POST', `${path}/tick`, form({ step, done: '1', ...more }))).status
    await visitor.send('POST', `${path}/start`, form({ on: addDays(today(), -60) }))
    expect([await tick('fill'), await tick('run-in'), await tick('run-in', { tested: '1' })]).toEqual([303, 422, 303])
    expect([await tick('first-ammonia'), await tick('daily-readings'), await tick('second-dose')]).toEqual([303, 422, 422])
    expect([await tick('first-fish', { tested: '1' }), await tick('first-month')]).toEqual([303, 422])
    for (const step of ['fill', 'run-in', 'first-fish']) await visitor.send('POST', `${path}/tick`, form({ step, done: '0' }))
    const ago = (days: number) => ({ doneOn: addDays(today(), -days) })
    expect([await tick('fill', ago(50)), await tick('run-in', ago(50)), await tick('run-in', ago(49))]).toEqual([303, 422, 303])
  })

  it('takes the day on which a step was done, not after today, before the start or before a step that comes first', async () => {
    const path = pathOf((await issued()).links?.setup)
    const send = (step: string, doneOn: string) => visitor.send('POST', `${path}/tick`, form({ step, done: '1', doneOn }))
    const api = (step: string, on: string) =>
      visitor.send<{ errors: Array<{ field: string; message: string }> }>('PUT', `/api/setup-links/${path.slice(3)}/ticks/${step}`, {
        body: { done: true, on },
      })
    const day = (days: number) => addDays(today(), days)
    const old = await send('before-you-start', day(-20))
    expect([old.status, old.text.includes('set the day of the start first')]).toEqual([422, true])
    expect(old.text).toMatch(new RegExp(`name="doneOn"[^>]*value="${day(-20)}"[^>]*aria-invalid="true"`))
    await visitor.send('POST', `${path}/start`, form({ on: day(-20) }))
    for (const [on, words] of [
      ['soon', 'Write the day like 2026-10-20.'],
      [day(1), 'is in the future.'],
      [day(-21), 'is before the start on'],
    ] as const) {
      const odd = await send('before-you-start', on)
      expect([odd.status, odd.text.includes(words)], on).toEqual([422, true])
    }
    expect((await send('before-you-start', day(-10))).status).toBe(303)
    const before = await api('place-stand', day(-11))
    expect([before.status, before.body.errors[0]?.field]).toEqual([422, 'on'])
    expect(before.body.errors[0]?.message).toContain('when “Before you start” was done, which comes first.')
    expect([(await api('place-stand', day(-10))).status, (await send('level', '')).status]).toEqual([204, 303])
    const { ticks } = (await visitor.send<{ ticks: Array<{ stepId: string; on: string }> }>('GET', `/api/setup-links/${path.slice(3)}`))
      .body
    expect(new Map(ticks.map(({ stepId, on }) => [stepId, on]))).toEqual(
      new Map([['before-you-start', day(-10)], ['place-stand', day(-10)], ['level', day(0)]]), // prettier-ignore
    )
  })

  it('starts no later than the first step that is done and the first test, and within a year', async () => {
    const path = pathOf((await issued()).links?.setup)
    const start = async (days: number) => {
      const answer = await visitor.send('POST', `${path}/start`, form({ on: addDays(today(), days) }))
      return answer.status === 303 ? 'set' : (/class="fault" id="start-on-fault">([^<]*)/.exec(answer.text)?.[1] ?? answer.text)
    }
    for (const on of ['1900-01-01', '1989-12-31']) {
      const old = await visitor.send('POST', `${path}/start`, form({ on }))
      expect([old.status, old.text.includes(`${on} is before 1990. Check the year`)]).toEqual([422, true])
    }
    expect([await start(365), await start(7)], 'a start that is planned').toEqual(['set', 'set'])
    expect(await start(366)).toContain('is more than a year ahead. Write')
    const early = await visitor.send('POST', `${path}/tick`, form({ step: 'before-you-start', done: '1' }))
    expect(early.status, 'unpacked before the start').toBe(303)
    const wet = await visitor.send('POST', `${path}/tick`, form({ step: 'leak-fill', done: '1' }))
    expect([wet.status, wet.text.includes('is before the start on')]).toEqual([422, true])
    expect(await start(6)).toBe('set')
    await visitor.send('POST', `${path}/tick`, form({ step: 'before-you-start', done: '0' }))
    expect(await start(-5)).toBe('set')
    await visitor.send('POST', `${path}/tick`, form({ step: 'leak-fill', done: '1', doneOn: addDays(today(), -3) }))
    expect(await start(-2)).toMatch(
      /^\w+ \d+(, \d+)? is after .*, when “Leak test in four fills” was done\. .* write .* or an earlier day\.$/,
    )
    expect([await start(1), await start(-3)]).toEqual([expect.stringContaining('was done'), 'set'])
    await visitor.send('POST', `${path}/tick`, form({ step: 'leak-fill', done: '0' }))
    await visitor.send('POST', `${path}/reading`, form({ takenOn: addDays(today(), -1), ph: '7', note: '' }))
    expect([await start(0), await start(-1)]).toEqual([expect.stringContaining('when a water test was taken'), 'set'])
  })

  it('stores a form that is sent twice once, and one that was changed after as another test', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.setup)
    const idIn = (html: string): string => /<input type="hidden" name="id" value="([0-9a-f-]{36})">/.exec(html)?.[1] ?? ''
    const page = async (): Promise<string> => (await visitor.send('GET', path)).text
    const id = idIn(await page())
    expect(id).not.toBe('')
    expect(idIn(await page())).not.toBe(id)
    // 78 °F is 25.5 periodic °C: the same figure both times, or the second would be another test.
    const taken = { id, takenOn: today(), ammonia: '0,3', ph: '7.4', temperature: '78', note: '' }
    for (let times = 0; times < 3; times += 1) expect((await visitor.send('POST', `${path}/reading`, form(taken))).status).toBe(303)
    const stored = async (): Promise<number> =>
      (await visitor.send<{ readings: Reading[] }>('GET', `/api/setup-links/${path.slice(3)}`)).body.readings.length
    expect(await stored()).toBe(1)
    const wrong = await visitor.send('POST', `${path}/reading`, form({ ...taken, ph: 'sour' }))
    expect([wrong.status, idIn(wrong.text)]).toEqual([422, id])
    const changed = await visitor.send('POST', `${path}/reading`, form({ ...taken, ph: '7.6' }))
    expect([changed.status, changed.text.includes('as another test')]).toEqual([422, true])
    expect(idIn(changed.text)).not.toBe(id)
    expect((await visitor.send('POST', `${path}/reading`, form({ ...taken, ph: '7.6', id: idIn(changed.text) }))).status).toBe(303)
    expect(await stored()).toBe(2)
  })

  it('takes sixty changes a minute, whoever sends them, and reads go on', async () => {
    const [quote, other] = [await issued(), await issued()]
    const token = tokenOf(quote.links?.setup)
    const step = (await visitor.send<{ plan: { steps: Array<{ id: string }> } }>('GET', `/api/setup-links/${token}`)).body.plan.steps[0]?.id
    const tick = (of: string, from = visitor) => from.send('PUT', `/api/setup-links/${of}/ticks/${step}`, { body: { done: true } })
    const { clock } = world.deps
    const now = clock()
    world.rebuild({ clock: () => now })
    try {
      for (let times = 0; times < 60; times += 1) expect((await tick(token)).status).toBe(204)
      const refused = await tick(token, world.visitor('198.51.100.44'))
      expect([refused.status, refused.headers.get('retry-after')]).toEqual([429, '60'])
      const page = await visitor.send('POST', `/s/${token}/tick`, {
        ...form({ step: step ?? '', done: '1' }),
        headers: { ...form({}).headers, accept: 'text/html' },
      })
      expect([page.status, page.headers.get('content-type')]).toEqual([429, 'text/html; charset=UTF-8'])
      expect((await visitor.send('GET', `/s/${token}`)).status).toBe(200)
      expect((await tick(tokenOf(other.links?.setup))).status).toBe(204)
      world.rebuild({ clock: () => now + 60_000 })
      expect((await tick(token)).status).toBe(204)
    } finally {
      world.rebuild({ clock })
    }
  })

  it('refuses a form that is cut off, in words and without a mark in the log of mistakes', async () => {
    const quote = await issued()
    const before = world.logged.length
    const headers = { 'content-type': 'multipart/form-data; boundary=x', accept: 'text/html' }
    for (const path of [`${pathOf(quote.links?.setup)}/reading`, `${pathOf(quote.links?.quote)}/answer`]) {
      for (const body of ['--x\r\nContent-Disposition: form-data; name="ph"\r\n\r\n7', 'no form at all']) {
        const answer = await visitor.send('POST', path, { body, headers })
        expect([answer.status, answer.text.includes('did not arrive whole')], path).toEqual([400, true])
      }
    }
    expect(world.logged.slice(before).some((line) => line.includes('"failed"'))).toBe(false)
  })

  it('starts on a day, and is listed for the advisor once the quote is accepted', async () => {
    const quote = await issued()
    await visitor.send('POST', `/api/quote-links/${tokenOf(quote.links?.quote)}/answer`, { body: accept })
    expect((await visitor.send('POST', `${pathOf(quote.links?.setup)}/start`, form({ on: 'soon' }))).status).toBe(422)
    expect((await visitor.send('POST', `${pathOf(quote.links?.setup)}/start`, form({ on: today() }))).status).toBe(303)
    const setups = await advisor.send<{ items: SetupView[] }>('GET', '/api/setups')
    expect(setups.body.items.find(({ quoteNumber }) => quoteNumber === quote.number)).toMatchObject({
      startedOn: today(),
      letter: 'B',
      link: quote.links?.setup,
    })
  })

  it('is gone a year after its last use', async () => {
    const quote = await issued()
    const path = pathOf(quote.links?.setup)
    await at(364, async () => expect((await visitor.send('GET', path)).status).toBe(200))
    await at(367, async () => expect((await visitor.send('GET', path)).status).toBe(410))
  })
})
