import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { expectAccessible, expectKeyboard, expectNoOverflow, expectReflow, smallTargets } from './support/accessible.ts'
import { LOOKS, openBrowser, openPage, type Look } from './support/browser.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { openScreen, readApi, signIn } from './support/sign-in.ts'

interface Ids {
  product: string
  kit: string
  store: string
  quote: string
  customer: string
}

/** Every screen behind the sign-in; the manager may open them all. */
const SCREENS: Record<string, (ids: Ids) => string> = {
  'prices board': () => '/prices',
  'prices board without a match': () => '/prices?q=nothing-has-this-name',
  'product page': ({ product }) => `/prices/${product}`,
  'post: which product': () => '/post',
  'post: the price': ({ product }) => `/post?product=${product}`,
  catalog: () => '/catalog',
  'new product': () => '/catalog/new',
  'edit product': ({ product }) => `/catalog/${product}`,
  'edit kit': ({ kit }) => `/catalog/${kit}`,
  import: () => '/catalog/import',
  stores: () => '/stores',
  'new store': () => '/stores/new',
  'edit store': ({ store }) => `/stores/${store}`,
  quotes: () => '/quotes',
  'new quote': () => '/quotes/new',
  desk: ({ quote }) => `/quotes/${quote}`,
  customers: () => '/customers',
  customer: ({ customer }) => `/customers/${customer}`,
  setups: () => '/setups',
  people: () => '/people',
  settings: () => '/settings',
  'an address that is none': () => '/nothing-here',
}

let service: DemoService
let browser: Browser
let ids: Ids
const opened = new Map<Look, { page: Page; context: BrowserContext; complaints: string[] }>()

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  for (const look of LOOKS) {
    const session = await openPage(browser, look)
    await signIn(session.page, service, 'manager')
    opened.set(look, session)
  }
  const { page } = sessionOf(LOOKS[0] as Look)
  const board = await readApi<{ rows: Array<{ sighting: { productId: string; storeId: string } }> }>(page, service, '/api/board?limit=1')
  const kits = await readApi<{ items: Array<{ id: string }> }>(page, service, '/api/products?kind=kit&limit=1')
  const quotes = await readApi<{ rows: Array<{ id: string }> }>(page, service, '/api/quotes')
  const customers = await readApi<{ items: Array<{ id: string }> }>(page, service, '/api/customers')
  const first = board.rows[0]?.sighting
  ids = {
    product: first?.productId ?? '',
    store: first?.storeId ?? '',
    kit: kits.items[0]?.id ?? '',
    quote: quotes.rows[0]?.id ?? '',
    customer: customers.items[0]?.id ?? '',
  }
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

function sessionOf(look: Look): { page: Page; context: BrowserContext; complaints: string[] } {
  const session = opened.get(look)
  if (!session) throw new Error('no session for this look')
  session.complaints.length = 0
  return session
}

describe.each(LOOKS)('on $width px, $scheme', (look) => {
  it.each(Object.keys(SCREENS))('%s: no violations, no complaints, nothing wider than the window', async (name) => {
    const { page, complaints } = sessionOf(look)
    await openScreen(page, service, SCREENS[name]?.(ids) ?? '')
    expect(await page.locator('h1').count()).toBe(1)
    await expectAccessible(page)
    await expectNoOverflow(page)
    if (look.width < 720) await expectReflow(page)
    expect(complaints).toEqual([])
  })

  it('the sign-in and a one-use link: no violations, no complaints', async () => {
    const { page } = sessionOf(look)
    const invited = await page.request.post(`${service.origin}/api/people/invitations`, {
      data: { name: 'Wil Harrow', role: 'member' },
      headers: { origin: service.origin, 'sec-fetch-site': 'same-origin' },
    })
    const { url } = (await invited.json()) as { url: string }
    const stranger = await openPage(browser, look)
    for (const path of ['/sign-in', new URL(url).pathname]) {
      await openScreen(stranger.page, service, path)
      await expectAccessible(stranger.page)
      await expectReflow(stranger.page)
    }
    expect(stranger.complaints).toEqual([])
    await stranger.context.close()
  })
})

describe('with the keyboard alone, at a desk', () => {
  const desk = LOOKS.find(({ width }) => width > 720) as Look
  it.each(['prices board', 'product page', 'post: the price', 'catalog', 'edit kit', 'import', 'edit store', 'people', 'settings'])(
    '%s: every stop shows its focus and nothing traps it',
    async (name) => {
      const { page } = sessionOf(desk)
      await openScreen(page, service, SCREENS[name]?.(ids) ?? '')
      await expectKeyboard(page)
      expect(await smallTargets(page)).toEqual([])
    },
  )
  it('moves the focus to the heading and names the page after a navigation', async () => {
    const { page } = sessionOf(desk)
    await openScreen(page, service, '/prices')
    await page.getByRole('link', { name: 'Stores' }).press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Stores' }).waitFor()
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Stores')
    expect(await page.title()).toBe('Stores · Driploop')
  })
  it('goes back to the place asked for after signing in, and nowhere outside', async () => {
    const { page, context } = await openPage(browser, desk)
    await page.goto(`${service.origin}/catalog?kind=tank`)
    await page.waitForURL((url) => url.pathname === '/sign-in')
    const { signInName, password } = service.signIn('advisor')
    await page.getByLabel('Sign-in name').fill(signInName)
    await page.getByLabel('Password', { exact: true }).fill(password)
    await page.keyboard.press('Enter')
    await page.waitForURL((url) => url.pathname === '/catalog' && url.searchParams.get('kind') === 'tank')
    await page.goto(`${service.origin}/people`)
    await page.waitForURL((url) => url.pathname === '/quotes')
    await context.close()
  })
})
