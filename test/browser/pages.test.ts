import { readFileSync } from 'node:fs'
import { createServer, type Server } from 'node:http'
import type { AddressInfo } from 'node:net'
import { join, resolve } from 'node:path'
import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { apiReferencePage } from '../../web/pages/api-reference-page.ts'
import { linkGonePage } from '../../web/pages/link-gone-page.ts'
import { problemPage } from '../../web/pages/problem-page.ts'
import { quotePage } from '../../web/pages/quote-page.ts'
import { setupPage } from '../../web/pages/setup-page.ts'
import { sampleOpenApi } from '../web/pages/sample-openapi.ts'
import { quoteProps, setupProps } from '../web/pages/sample-pages.ts'
import { sampleQuote } from '../web/pages/sample-quote.ts'
import { expectAccessible, expectKeyboard, expectNoOverflow, expectReflow, smallTargets } from './support/accessible.ts'
import { LOOKS, openBrowser, openPage, type Look } from './support/browser.ts'

const web = resolve(import.meta.dirname, '../../web')
const POLICY =
  "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self' data:; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

const dripLoop = { neededMm: 1700, lowPointMm: 203, exitHeightMm: 1346, outletHeightMm: 305, distanceMm: 610 }
const stepOf = (id: string): number => setupProps(0).plan.steps.findIndex((step) => step.id === id)
const fault = { field: 'ammonia', message: 'Ammonia is 0 to 20 mg/L. "2o" has a letter in it.' }
const dayFault = { field: 'doneOn', message: 'Oct 1 is before this setup was made on Oct 20. Write the day on which it was done.' }
const answer = { revision: 1, answer: 'accepted', letter: 'A', note: 'see you Friday', at: '2026-10-22T10:00:00Z' } as const

/** With sums of four digits, whose range is the widest figure of a build. */
function datedQuote(): ReturnType<typeof sampleQuote> {
  const document = sampleQuote()
  const byDate = {
    until: '2026-11-14',
    learnedOn: '2026-10-20',
    expectedMinor: 128_400,
    low10Minor: 122_800,
    high90Minor: 133_100,
    waits: 2,
  }
  return { ...document, builds: document.builds.map((build) => ({ ...build, byDate })) }
}

const PAGES: Record<string, () => unknown> = {
  quote: () => quotePage(quoteProps({ document: datedQuote() })),
  'quote without a total': () =>
    quotePage(
      quoteProps({
        document: sampleQuote({ withoutPriceOf: 'kit-b' }),
        faults: [{ field: 'letter', message: 'Choose the build that you accept.' }],
        typed: { answer: 'declined', note: 'too big' },
      }),
    ),
  'quote accepted': () => quotePage(quoteProps({ state: 'accepted', answer })),
  'quote lapsed': () => quotePage(quoteProps({ state: 'lapsed' })),
  'quote replaced': () => quotePage(quoteProps({ supersededBy: 2 })),
  'setup at the drip loops': () => setupPage(setupProps(stepOf('drip-loops'), { dripLoop })),
  'setup at the level': () => setupPage(setupProps(stepOf('level'))),
  'setup with a fault': () =>
    setupPage(setupProps(2, { startedOn: null, readings: [], faults: [fault, dayFault], typed: { ammonia: '2o', doneOn: '2026-10-01' } })),
  'setup all done': () => setupPage(setupProps(setupProps(0).plan.steps.length)),
  'link gone': () => linkGonePage({ what: 'quote', installName: 'Tarnwick Aquarium Club', contact: 'ask the club, 555-0100' }),
  problem: () =>
    problemPage({
      status: 503,
      title: 'The database does not answer',
      detail: 'Nothing was changed. Try again in a minute.',
      contact: null,
      backPath: '/s/token',
    }),
  'problem that passes': () =>
    problemPage({
      status: 503,
      title: 'Not available right now',
      detail: 'Too many documents are being made at this moment. Try again shortly.',
      contact: null,
      backPath: '/q/token',
      again: { inS: 5, path: '/q/token/pdf?paper=a4' },
    }),
  'api reference': () => apiReferencePage(sampleOpenApi),
}
const names = Object.keys(PAGES)

let server: Server
let browser: Browser
let origin: string

beforeAll(async () => {
  const stylesheet = `${readFileSync(join(web, 'tokens.css'), 'utf8')}\n${readFileSync(join(web, 'pages/pages.css'), 'utf8')}`
  server = createServer((request, response) => {
    const path = decodeURIComponent(request.url ?? '/').split('?')[0] ?? '/'
    response.setHeader('content-security-policy', POLICY)
    if (path === '/pages.css') return response.setHeader('content-type', 'text/css').end(stylesheet)
    if (path === '/mark.svg') return response.setHeader('content-type', 'image/svg+xml').end(readFileSync(join(web, 'app', 'mark.svg')))
    if (/^\/fonts\/[a-z]+\.woff2$/.test(path)) return response.setHeader('content-type', 'font/woff2').end(readFileSync(join(web, path)))
    const page = PAGES[path.slice(1)]
    if (page === undefined) return response.writeHead(404).end()
    return response.setHeader('content-type', 'text/html; charset=utf-8').end(String(page()))
  })
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening))
  origin = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  server?.closeAllConnections()
  server?.close()
})

/** Pages that differ from these in words alone are looked at once on a phone and once, dark, on a desk. */
const IN_EVERY_LOOK = ['quote', 'quote without a total', 'setup at the drip loops', 'setup with a fault', 'api reference']
const seenAt = (look: Look): string[] =>
  names.filter((name) => IN_EVERY_LOOK.includes(name) || look.width < 720 === (look.scheme === 'light'))

describe.each(LOOKS)('at $width px, $scheme', (look) => {
  let opened: Awaited<ReturnType<typeof openPage>>
  beforeAll(async () => {
    opened = await openPage(browser, look)
  })
  afterAll(async () => {
    await opened.context.close()
  })

  it.each(seenAt(look))('%s has no accessibility fault, fits, and keeps to the policy', async (name) => {
    const { page, complaints } = opened
    await page.goto(`${origin}/${encodeURIComponent(name)}`)
    await page.evaluate(() => document.querySelectorAll('details').forEach((details) => details.setAttribute('open', '')))
    await expectAccessible(page)
    await expectNoOverflow(page)
    expect(complaints).toEqual([])
  })
})

describe('on a phone', () => {
  it.each(names)('%s reflows at 320 px and can be walked with the keyboard', async (name) => {
    const { page, context } = await openPage(browser, { width: 390, scheme: 'light' })
    await page.goto(`${origin}/${encodeURIComponent(name)}`)
    await expectReflow(page)
    if ((await page.locator('a, button, input, summary').count()) > 0) await expectKeyboard(page)
    expect(await smallTargets(page)).toEqual([])
    await context.close()
  })

  it('the button of the next step is at least 56 px high, and no other button is under 44', async () => {
    const { page, context } = await openPage(browser, { width: 390, scheme: 'light' })
    await page.goto(`${origin}/${encodeURIComponent('setup at the drip loops')}`)
    const heights = await page
      .locator('.btn:visible')
      .evaluateAll((buttons) => buttons.map((button) => button.getBoundingClientRect().height))
    expect(heights.length).toBeGreaterThan(1)
    expect((await page.locator('.btn.main').boundingBox())?.height).toBeGreaterThanOrEqual(56)
    for (const height of heights) expect(height).toBeGreaterThanOrEqual(44)
    await context.close()
  })

  it('a step is sent with the day that is opened and written, and without one where nobody did', async () => {
    const { page, context } = await openPage(browser, { width: 390, scheme: 'light' })
    // What is sent is read here and answered with nothing, so that the page stays.
    await page.route('**', (route, request) => (request.method() === 'POST' ? route.fulfill({ status: 204 }) : route.continue()))
    const sent = async (work: () => Promise<void>): Promise<string | null> => {
      await page.goto(`${origin}/${encodeURIComponent('setup at the level')}`)
      await work()
      const [request] = await Promise.all([page.waitForRequest((each) => each.method() === 'POST'), page.locator('.btn.main').click()])
      return new URLSearchParams(request.postData() ?? '').get('doneOn')
    }
    expect(await sent(async () => undefined)).toBe('')
    const opened = await sent(async () => {
      await page.locator('summary', { hasText: 'It was another day' }).click()
      await page.getByLabel('Day on which it was done').fill('2026-11-02')
    })
    expect(opened).toBe('2026-11-02')
    await context.close()
  })

  it('the button of a quote says what it accepts, and changes with the choice', async () => {
    const { page, context } = await openPage(browser, { width: 390, scheme: 'light' })
    await page.goto(`${origin}/quote`)
    const shown = page.locator('.confirm:visible button')
    expect(await shown.count(), 'nothing is chosen beforehand').toBe(0)
    await page.locator('input[value="A"]').check()
    expect(await shown.allTextContents()).toEqual([expect.stringMatching(/^Accept A: Long and deep, \$/)])
    await page.locator('input[value="B"]').check()
    expect(await shown.allTextContents()).toEqual([expect.stringMatching(/^Accept B: One box, \$/)])
    await context.close()
  })
})

describe('on a desk', () => {
  it('builds stand side by side with their tiers on one line', async () => {
    const { page, context } = await openPage(browser, { width: 1280, scheme: 'light' })
    await page.goto(`${origin}/quote`)
    const tops = await page
      .locator('.build .tiers')
      .evaluateAll((lists) => lists.map((list) => Math.round(list.getBoundingClientRect().top)))
    expect(tops).toHaveLength(3)
    expect(new Set(tops).size).toBe(1)
    const lefts = await page
      .locator('.build')
      .evaluateAll((builds) => builds.map((build) => Math.round(build.getBoundingClientRect().left)))
    expect([...lefts].sort((a, b) => a - b)).toEqual(lefts)
    await context.close()
  })
})

describe('on paper', () => {
  it('the setup is the list with boxes of 5 mm, and nothing that can only be pressed', async () => {
    const { page, context } = await openPage(browser, { width: 794, scheme: 'dark' })
    await page.goto(`${origin}/${encodeURIComponent('setup at the drip loops')}`)
    await page.emulateMedia({ media: 'print', colorScheme: 'dark' })
    expect(await page.locator('.btn:visible').count()).toBe(0)
    const boxes = await page.locator('.box:visible').evaluateAll((found) => found.map((box) => box.getBoundingClientRect().width))
    expect(boxes).toHaveLength(setupProps(0).plan.steps.length)
    // 5 mm at 96 px an inch
    for (const width of boxes) expect(width).toBeGreaterThanOrEqual((5 / 25.4) * 96 - 0.2)
    expect(await page.evaluate(() => getComputedStyle(document.body).backgroundColor)).toBe('rgb(255, 255, 255)')
    await context.close()
  })
})
