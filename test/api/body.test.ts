import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { createWorld, ORIGIN, type Browser, type World } from './support/world.ts'

let world: World
let member: Browser
let manager: Browser
beforeAll(async () => {
  world = await createWorld()
  member = await world.signIn('member')
  manager = await world.signIn('manager')
})
afterAll(() => world.close())

const KB = 1_000
const CHUNK = new TextEncoder().encode(' '.repeat(10 * KB))
const JSON_TYPE = { 'content-type': 'application/json' }

/** Sends a body in chunks without saying how long it is, as far as it is asked for; says how much that was. */
async function pour(path: string, chunks: number, headers: Record<string, string> = {}, broken = false) {
  const state = { taken: 0 }
  const body = new ReadableStream<Uint8Array>(
    {
      pull(controller) {
        if (state.taken < chunks) controller.enqueue(CHUNK)
        else if (broken) controller.error(Object.assign(new Error('aborted'), { code: 'ECONNRESET' }))
        else controller.close()
        state.taken += 1
      },
    },
    { highWaterMark: 0 },
  )
  const init = { method: 'POST', body, duplex: 'half', headers: { 'sec-fetch-site': 'same-origin', ...JSON_TYPE, ...headers } }
  const answer = await world.app.request(ORIGIN + path, init, { incoming: { socket: { remoteAddress: '192.0.2.77' } } })
  return { status: answer.status, takenKb: (state.taken * CHUNK.length) / KB, text: await answer.text() }
}
const as = (browser: Browser) => ({ cookie: browser.cookie() })

describe('a body of unknown length', () => {
  it('is not read at all without a session, nor below the role', async () => {
    expect(await pour('/api/imports?set=customers', 3000)).toMatchObject({ status: 401, takenKb: 0 })
    expect(await pour('/api/imports?set=customers', 3000, as(member))).toMatchObject({ status: 403, takenKb: 0 })
    expect(await pour('/api/customers', 3000)).toMatchObject({ status: 401, takenKb: 0 })
    expect(await pour('/api/nothing', 3000)).toMatchObject({ status: 404, takenKb: 0 })
  })
  it('is counted: 64 kB where anyone may send, 1 MB with a session, 100 MB of a file to import', async () => {
    for (const [path, headers, mostKb] of [
      ['/api/session', {}, 64],
      ['/api/customers', as(manager), 1_000],
      ['/api/imports?set=customers', { ...as(manager), 'content-type': 'text/csv' }, 100_000],
    ] as const) {
      const { status, takenKb, text } = await pour(path, 12_000, headers)
      expect(status, path).toBe(413)
      expect(text).toContain(mostKb < 1_000 ? `${mostKb} kB` : `${mostKb / 1_000} MB`)
      expect(takenKb, path).toBeLessThanOrEqual(mostKb + 200)
    }
  })
  it('is read whole below its limit', async () => {
    // White space alone is no JSON: it was read, and not refused for its size.
    expect(await pour('/api/customers', 90, as(manager))).toMatchObject({ status: 400, takenKb: 910 })
  })
  it('that breaks off is the sender’s doing, and no word of the database', async () => {
    const before = world.logged.length
    const answer = await pour('/api/customers', 3, as(manager), true)
    expect(answer.status).toBe(400)
    expect(answer.text).toContain('broke off')
    expect(world.logged.slice(before).join('')).not.toContain('database')
  })
})

describe('a body that says its length', () => {
  it('is refused by it, before it comes', async () => {
    const answer = await world.visitor().send('POST', '/api/session', { body: `{"signInName":"${'x'.repeat(70_000)}"}`, headers: { ...JSON_TYPE, 'content-length': '70017' } }) // prettier-ignore
    expect(answer.status).toBe(413)
  })
})

describe('a form that is none', () => {
  const html = { accept: 'text/html,application/xhtml+xml' }
  /** No link is needed to see that broken forms are the sender's; an opened one is shown in the tests of links. */
  it.each(['/q/anything/answer', '/s/anything/reading'])('is refused on %s with a page, by its type and by its size', async (path) => {
    const type = await world.visitor().send('POST', path, { body: '{}', headers: { ...html, ...JSON_TYPE } })
    const large = await world.visitor().send('POST', path, {
      body: `note=${'x'.repeat(70_000)}`,
      headers: { ...html, 'content-type': 'application/x-www-form-urlencoded' },
    })
    const elsewhere = await world.visitor().send('POST', path, { headers: { ...html, 'sec-fetch-site': 'cross-site' } })
    const method = await world.visitor().send('PUT', path, { headers: html })
    for (const [answer, status] of [[type, 415], [large, 413], [elsewhere, 403], [method, 405]] as const) {
      expect(answer.status).toBe(status)
      expect(answer.headers.get('content-type')).toBe('text/html; charset=UTF-8')
      expect(answer.headers.get('content-security-policy')).toContain("style-src 'self'")
      expect(answer.text).toContain(`href="${path.split('/').slice(0, 3).join('/')}"`)
    } // prettier-ignore
    expect(method.headers.get('allow')).toBe('POST')
  })
})
