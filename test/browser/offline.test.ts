import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PriceRecord, SightingRow } from '../../core/pricing/record.ts'
import { openBrowser, openPage } from './support/browser.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { openScreen, readApi, signIn } from './support/sign-in.ts'

let service: DemoService
let browser: Browser
let context: BrowserContext
let page: Page
let complaints: string[]
let productId: string
let productName: string

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  ;({ context, page, complaints } = await openPage(browser, { width: 390, scheme: 'light' }))
  await signIn(page, service, 'member')
  const board = await readApi<{ rows: Array<{ sighting: SightingRow }> }>(page, service, '/api/board?limit=1')
  const first = board.rows[0]?.sighting
  if (!first) throw new Error('The scenario has no prices')
  productId = first.productId
  productName = first.productName
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

/** Addresses that the worker keeps on this device. */
const keptPaths = (): Promise<string[]> =>
  page.evaluate(async () => {
    const paths: string[] = []
    for (const name of await caches.keys())
      for (const request of await (await caches.open(name)).keys()) paths.push(new URL(request.url).pathname)
    return paths
  })
const keptAnswers = (): Promise<string[]> =>
  page.evaluate(() => Object.keys(localStorage).filter((key) => key.startsWith('driploop.answer.')))

describe('a phone that loses its signal', () => {
  it('keeps the application’s files once it was opened, and nothing that the server says of anyone', async () => {
    await openScreen(page, service, '/post')
    await expect
      .poll(async () => (await keptPaths()).filter((path) => path.startsWith('/assets/')).length, { timeout: 20_000 })
      .toBeGreaterThan(5)
    const paths = await keptPaths()
    expect(paths).toContain('/')
    expect(paths.filter((path) => !/^\/(?:$|assets\/|fonts\/|mark\.svg$)/.test(path))).toEqual([])
  })

  it('opens the posting screen anew without one, takes a price, and posts it once when the signal is back', async () => {
    await context.setOffline(true)
    await page.goto(`${service.origin}/post`)
    await page.getByRole('button', { name: productName }).first().click()
    await page.getByLabel('Store').selectOption({ index: 1 })
    await page.getByLabel('Price', { exact: true }).fill('43.21')
    await page.getByRole('button', { name: /\$43\.21/ }).click()
    await page.reload()
    await page.getByText('$43.21').first().waitFor()
    await context.setOffline(false)
    const posted = async (): Promise<number> =>
      (await readApi<PriceRecord>(page, service, `/api/products/${productId}/record`)).sightings.filter(
        ({ own, priceMinor }) => own && priceMinor === 4321,
      ).length
    await expect.poll(posted, { timeout: 20_000 }).toBe(1)
  })

  it('breaks no rule of the content policy on the way', () =>
    expect(complaints.filter((line) => /content security policy|trusted/i.test(line))).toEqual([]))

  it('keeps an unchanged price once, says so in its row and over the list, and tells in the row that a vote is not kept', async () => {
    await openScreen(page, service, '/prices')
    const buttons = page.getByRole('button', { name: /^Price unchanged today: / })
    const name = (await buttons.last().getAttribute('aria-label')) ?? ''
    const row = page.getByRole('row').filter({ has: page.getByRole('button', { name, exact: true }) })
    const product = ((await row.getByRole('link').first().textContent()) ?? '').trim()
    await context.setOffline(true)
    await page.getByRole('button', { name, exact: true }).evaluate((button: HTMLElement) => {
      button.click()
      button.click()
    })
    const told = page.getByText('kept on this phone, waits to be sent')
    await told.waitFor()
    expect(await page.getByRole('row').filter({ has: told }).getByRole('link').first().textContent()).toBe(product)
    expect(await page.getByRole('button', { name, exact: true }).count()).toBe(0)
    await page.getByText('One sighting is kept on this phone and waits to be sent').waitFor()
    await page
      .getByRole('button', { name: /^Confirm (?!instead)/ })
      .last()
      .click()
    const fault = page.getByText('Not taken: no signal. Your word is not kept; say it again when the signal is back.')
    await fault.waitFor()
    expect(await page.getByRole('row').filter({ has: fault }).count()).toBe(1)
    expect(await page.getByText('What you typed is kept').count()).toBe(0)
    const folder = process.env['LOOK_DIR']
    if (folder !== undefined) {
      await told.scrollIntoViewIfNeeded()
      await page.screenshot({ path: `${folder}/kept-row.png` })
      await fault.scrollIntoViewIfNeeded()
      await page.screenshot({ path: `${folder}/vote-row.png` })
      await page.evaluate(() => window.scrollTo(0, 0))
      await page.screenshot({ path: `${folder}/prices-top.png` })
    }
    const queued = await page.evaluate(() =>
      Object.keys(localStorage)
        .filter((key) => key.startsWith('driploop.unsent.'))
        .flatMap((key) => JSON.parse(localStorage.getItem(key) ?? '[]') as unknown[]),
    )
    expect(queued).toHaveLength(1)
    await context.setOffline(false)
    await page.getByText('waits to be sent').first().waitFor({ state: 'detached', timeout: 20_000 })
  })

  it('shows a deal that arrives while nobody looks, and leads to it and to no other site', async () => {
    await context.grantPermissions(['notifications'], { origin: service.origin })
    await openScreen(page, service, '/prices')
    const devtools = await context.newCDPSession(page)
    const registered = new Promise<string>((resolve) => {
      devtools.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
        const [first] = registrations
        if (first) resolve(first.registrationId)
      })
    })
    await devtools.send('ServiceWorker.enable')
    const registrationId = await registered
    const arrive = (data: string) => devtools.send('ServiceWorker.deliverPushMessage', { origin: service.origin, registrationId, data })
    await arrive(JSON.stringify({ title: 'Rimless 60: $129.00', body: 'Harbour Aquatics', path: `/prices/${productId}`, tag: 'one' }))
    await arrive(JSON.stringify({ title: 'Elsewhere', body: '', path: 'https://elsewhere.example/x', tag: 'two' }))
    await arrive('no message of ours')
    const shown = (): Promise<string[]> =>
      page.evaluate(async () => {
        const worker = await navigator.serviceWorker.getRegistration()
        return ((await worker?.getNotifications()) ?? []).map(({ title }) => title).sort()
      })
    await expect.poll(shown, { timeout: 20_000 }).toEqual(['A deal on what you watch', 'Elsewhere', 'Rimless 60: $129.00'])
    const [worker] = context.serviceWorkers()
    // Nobody can press what a headless browser shows: the press is made here, and where it leads is caught.
    const led = await worker?.evaluate(async () => {
      const scope = self as unknown as {
        registration: ServiceWorkerRegistration
        clients: { matchAll: unknown; openWindow: unknown }
      }
      const opened: string[] = []
      scope.clients.matchAll = async () => []
      scope.clients.openWindow = async (url: string) => void opened.push(url)
      for (const notification of await scope.registration.getNotifications())
        dispatchEvent(Object.assign(new Event('notificationclick'), { notification, waitUntil: () => undefined }))
      await new Promise((resolve) => setTimeout(resolve, 200))
      return opened.sort()
    })
    expect(led).toEqual([`${service.origin}/`, `${service.origin}/`, `${service.origin}/prices/${productId}`])
    expect(await shown()).toEqual([])
  })

  it('leaves nothing on the device after signing out', async () => {
    await openScreen(page, service, '/post')
    expect((await keptAnswers()).length).toBeGreaterThan(0)
    await page
      .getByRole('link', { name: /Prices/ })
      .first()
      .click()
    await page.getByRole('button', { name: 'Menu' }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.waitForURL((url) => url.pathname.startsWith('/sign-in'))
    expect((await keptAnswers()).filter((key) => !key.endsWith('.session'))).toEqual([])
  })
})
