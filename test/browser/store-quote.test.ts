import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import type { Store } from '../../core/catalog/store.ts'
import type { Install } from '../../core/install.ts'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { LOOKS, openBrowser } from './support/browser.ts'
import { downloadOf, fillSlot, openDevice, PATIENCE_MS, saved, type Watched } from './support/counter.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { pdfText } from './support/pdf-text.ts'
import { signIn } from './support/sign-in.ts'

/** A place that is run as a store, once from its price list to the paper: nothing but its own prices, and nobody else's store. */
const KINDS = ['tank', 'stand', 'mat', 'lid', 'filter', 'heater', 'light', 'substrate', 'conditioner', 'test_kit', 'thermometer', 'power']
const TANK = 'Wendlemere 40 breeder'
/** Every price of the list ends so: no sighting of the scenario does. */
const CENTS = 37

let service: DemoService
let browser: Browser
let manager: Watched
let own: Store
let others: Store[]
const read = async <Value>({ context }: Watched, path: string): Promise<Value> =>
  (await (await context.request.get(`${service.origin}${path}`, { maxRetries: 2 })).json()) as Value

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  manager = await openDevice(browser, { width: 1280, height: 900 })
  await signIn(manager.page, service, 'manager')
  const { items } = await read<{ items: Store[] }>(manager, '/api/stores')
  ;[own, ...others] = items.filter(({ archived }) => !archived) as [Store, ...Store[]]
  await change(`/api/stores/${own.id}`, { own: true })
  await change('/api/install', { mode: 'store' })
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

async function change(path: string, part: Partial<Store> | Partial<Install>): Promise<void> {
  const { id: _id, version, ...body } = await read<{ id?: string; version: number }>(manager, path)
  const answer = await manager.context.request.put(service.origin + path, {
    data: { ...body, ...part },
    headers: { 'if-match': `"${version}"`, origin: service.origin, 'sec-fetch-site': 'same-origin' },
  })
  expect(answer.ok(), await answer.text()).toBe(true)
}

/** Every state of a screen is sound, and is kept as a picture where somebody asks for pictures. */
async function expectSound(page: Page, name: string): Promise<void> {
  for (const { width, scheme } of LOOKS) {
    await page.setViewportSize({ width, height: 900 })
    await page.emulateMedia({ colorScheme: scheme })
    await expectAccessible(page)
    await expectNoOverflow(page)
    const folder = process.env['LOOK_DIR']
    if (folder !== undefined) await page.screenshot({ path: `${folder}/${name}-${width}-${scheme}.png`, fullPage: true })
  }
  await page.setViewportSize({ width: 1440, height: 900 })
  await page.emulateMedia({ colorScheme: 'light' })
}

/** What came of an import has the focus, and its sentence stands in a line that is read out. */
async function expectTold(page: Page, words: RegExp): Promise<void> {
  await page.locator('[aria-live="polite"]').getByText(words).waitFor({ timeout: PATIENCE_MS })
  await expect.poll(() => page.locator('#current-head').evaluate((head) => head === document.activeElement)).toBe(true)
}

describe('a store', () => {
  it('tries its price list and writes it; each time the result is read out and has the focus', async () => {
    const lists = await Promise.all(KINDS.map((kind) => read<{ items: Product[] }>(manager, `/api/products?kind=${kind}&limit=100`)))
    const products = lists.flatMap(({ items }) => items)
    const rows = products.map(({ name }, index) => `"${name.replaceAll('"', '""')}",${10 + (index % 7) * 3}.${CENTS},5`)
    const { page, faults } = manager
    await page.goto(`${service.origin}/catalog/price-list/import`)
    await page.getByLabel('Or paste the rows').fill(`product,price,stock\n${rows.join('\n')}\n`)
    await page.getByRole('button', { name: 'Try it, write nothing' }).click()
    const write = page.getByRole('button', { name: /^Write \d+ new and \d+ changed$/ })
    await write.waitFor({ timeout: PATIENCE_MS })
    await expectTold(page, /^Tried, without a fault\. Waits to be written\.$/)
    await expectSound(page, 'store-import')
    await write.click()
    await expectTold(page, /^Written: \d+ new/)
    expect(faults).toEqual([])
  })

  it('quotes from its own list alone, from an empty desk to the paper', async () => {
    const advisor = await openDevice(browser, { width: 1440, height: 900 })
    const { page, faults } = advisor
    await signIn(page, service, 'advisor')
    await page.goto(`${service.origin}/quotes/new`)
    await page.getByLabel('Name', { exact: true }).fill('Perrin Saltmarsh')
    await page.getByLabel('How big').fill('36 in')
    await page.getByRole('button', { name: 'Start the quote' }).click()
    await page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
    await fillSlot(page, 'Hold water', 'A', TANK, TANK)
    await page.getByRole('button', { name: 'Fill the rest of build A' }).click()
    await page.getByRole('button', { name: /^Take it back/ }).waitFor({ timeout: PATIENCE_MS })
    await saved(page)
    await expectSound(page, 'store-desk')
    await page.getByRole('button', { name: 'Issue quote' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Issue quote' }).click()
    await page.getByRole('heading', { name: /^Version 1, issued/ }).waitFor({ timeout: PATIENCE_MS })
    const quoteId = new URL(page.url()).pathname.split('/')[2] ?? ''

    const { builds } = await read<RevisionDocument>(advisor, `/api/quotes/${quoteId}/revisions/1`)
    const lines = builds[0]?.cost.lines ?? []
    expect(lines.length).toBeGreaterThan(7)
    for (const line of lines) expect([line.storeId, (line.unitTodayMinor ?? 0) % 100]).toEqual([own.id, CENTS])
    const { links } = await read<QuoteView>(advisor, `/api/quotes/${quoteId}`)
    const customer = await openDevice(browser, { width: 390, height: 844, phone: true, script: false })
    await customer.page.goto(links?.quote ?? '')
    const shown = (await customer.page.locator('body').textContent()) ?? ''
    const download = await downloadOf(customer.page, () => customer.page.getByRole('link', { name: 'PDF, A4' }).click())
    const paper = await pdfText(await download.path())
    for (const text of [shown, paper]) {
      expect(text).toContain(TANK)
      for (const { name } of others) expect(text).not.toContain(name)
    }
    expect(paper).toMatch(/valid from/i)
    expect(faults).toEqual([])
  })
})
