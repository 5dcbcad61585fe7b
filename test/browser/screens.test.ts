import type { Browser, Page } from 'playwright-core'
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
  'sale calendar': () => '/prices/sale-calendar',
  'product page': ({ product }) => `/prices/${product}`,
  'post: which product': () => '/post',
  'post: the price': ({ product }) => `/post?product=${product}`,
  'watches, a new one': ({ product }) => `/watches?product=${product}`,
  catalog: () => '/catalog',
  'new product': () => '/catalog/new',
  'edit product': ({ product }) => `/catalog/${product}`,
  'edit kit': ({ kit }) => `/catalog/${kit}`,
  'import and export': () => '/catalog/exchange',
  'price list': () => '/catalog/price-list',
  'price list: files': () => '/catalog/price-list/import',
  'price list: one product': ({ product }) => `/catalog/price-list/${product}`,
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
  backups: () => '/settings/backups',
  'livestock groups': () => '/settings/livestock',
  'other clubs': () => '/settings/other-clubs',
  'livestock group': () => '/settings/livestock/dwarf-shrimp',
  'own account': () => '/account',
  'kit page': ({ kit }) => `/prices/${kit}`,
}

let service: DemoService
let browser: Browser
let page: Page
let complaints: string[]
let ids: Ids
const DESK: Look = { width: 1280, scheme: 'light' }

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  ;({ page, complaints } = await openPage(browser, DESK))
  await signIn(page, service, 'manager')
  ids = await findIds()
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

async function findIds(): Promise<Ids> {
  const board = await readApi<{ rows: Array<{ sighting: { productId: string; storeId: string } }> }>(page, service, '/api/board?limit=1')
  const kits = await readApi<{ items: Array<{ id: string }> }>(page, service, '/api/products?kind=kit&limit=1')
  const quotes = await readApi<{ rows: Array<{ id: string }> }>(page, service, '/api/quotes')
  const customers = await readApi<{ items: Array<{ id: string }> }>(page, service, '/api/customers')
  const [sighting, kit, quote, customer] = [board.rows[0]?.sighting, kits.items[0], quotes.rows[0], customers.items[0]]
  if (!sighting || !kit || !quote || !customer) throw new Error('The scenario lacks a price, a kit, a quote or a customer')
  return { product: sighting.productId, store: sighting.storeId, kit: kit.id, quote: quote.id, customer: customer.id }
}

/** The screen that is open, in every look. A change of width or scheme needs two frames until what is drawn to measure is drawn anew. */
async function expectSound(shown: Page): Promise<void> {
  for (const { width, scheme } of LOOKS) {
    await shown.setViewportSize({ width, height: 844 })
    await shown.emulateMedia({ colorScheme: scheme })
    await shown.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))))
    await expectAccessible(shown)
    await expectNoOverflow(shown)
  }
  await expectReflow(shown)
}

describe('on a phone and a desk, light and dark', () => {
  it.each(Object.keys(SCREENS))('%s: no violations, no complaints, nothing wider than the window', async (name) => {
    complaints.length = 0
    await openScreen(page, service, SCREENS[name]?.(ids) ?? '')
    expect(await page.locator('h1').count()).toBe(1)
    await expectSound(page)
    expect(complaints).toEqual([])
  })

  it('the sign-in and a one-use link: no violations, no complaints', async () => {
    const invited = await page.request.post(`${service.origin}/api/people/invitations`, {
      data: { name: 'Wil Harrow', role: 'member' },
      headers: { origin: service.origin, 'sec-fetch-site': 'same-origin' },
    })
    const { url } = (await invited.json()) as { url: string }
    const stranger = await openPage(browser, DESK)
    for (const path of ['/sign-in', new URL(url).pathname]) {
      await openScreen(stranger.page, service, path)
      await expectSound(stranger.page)
    }
    expect(stranger.complaints).toEqual([])
    await stranger.context.close()
  })

  it('a product that is none says so, and what to do', async () => {
    await openScreen(page, service, '/prices/01980000-0000-7000-8000-0000000000ff')
    await page.getByRole('alert').waitFor()
    await expectSound(page)
  })
})

describe('with the keyboard alone, at a desk', () => {
  beforeAll(async () => {
    await page.setViewportSize({ width: DESK.width, height: 844 })
    await page.emulateMedia({ colorScheme: DESK.scheme })
  })
  it.each([
    'prices board',
    'product page',
    'post: the price',
    'catalog',
    'edit kit',
    'import and export',
    'edit store',
    'people',
    'settings',
  ])('%s: every stop shows its focus and nothing traps it', async (name) => {
    await openScreen(page, service, SCREENS[name]?.(ids) ?? '')
    await expectKeyboard(page)
    expect(await smallTargets(page)).toEqual([])
  })
  it('moves the focus to the heading and names the page after a navigation', async () => {
    await openScreen(page, service, '/prices')
    await page.getByRole('link', { name: 'Stores' }).press('Enter')
    await page.getByRole('heading', { level: 1, name: 'Stores' }).waitFor()
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Stores')
    expect(await page.title()).toBe('Stores · Driploop')
  })
  it('goes back to the place asked for after signing in, and nowhere outside', async () => {
    const { page: guest, context } = await openPage(browser, DESK)
    await guest.goto(`${service.origin}/catalog?kind=tank`)
    await guest.waitForURL((url) => url.pathname === '/sign-in')
    const { signInName, password } = service.signIn('advisor')
    await guest.getByLabel('Sign-in name').fill(signInName)
    await guest.getByLabel('Password', { exact: true }).fill(password)
    await guest.keyboard.press('Enter')
    await guest.waitForURL((url) => url.pathname === '/catalog' && url.searchParams.get('kind') === 'tank')
    await guest.goto(`${service.origin}/people`)
    await guest.waitForURL((url) => url.pathname === '/quotes')
    await context.close()
  })
})
