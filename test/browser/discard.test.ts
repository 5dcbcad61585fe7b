import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
import { openDevice, saved, signIn, type Device, type Watched } from './support/counter.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'

let service: DemoService
let browser: Browser
beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

async function advisor(device: Device): Promise<Watched> {
  const watched = await openDevice(browser, device)
  await signIn(watched.page, service.origin, service.signIn('advisor'))
  return watched
}
const api = (path: string): string => `${service.origin}/api${path}`
const ORIGIN = (): Record<string, string> => ({ origin: service.origin })

/** A draft of its own for the customer of the showcase. */
async function newDraft({ context }: Watched, title: string): Promise<QuoteView> {
  const showcase = (await (await context.request.get(api(`/quotes/${service.demo.showcase.quoteId}`))).json()) as QuoteView
  const data = { customerId: showcase.customer.id, draft: { ...showcase.draft, title } }
  const made = await context.request.post(api('/quotes'), { data, headers: ORIGIN() })
  expect(made.status(), await made.text()).toBe(201)
  return (await made.json()) as QuoteView
}
const statusOf = async ({ context }: Watched, id: string): Promise<number> => (await context.request.get(api(`/quotes/${id}`))).status()
const dialogOf = (page: Page) => page.getByRole('dialog', { name: /^Discard this draft for / })

describe('a draft that was never issued', () => {
  it('is discarded at the desk by the keyboard, with what was typed last; the list follows', async () => {
    const watched = await advisor({ width: 1440, height: 900 })
    const { page } = watched
    const made = await newDraft(watched, 'Typed by a slip')
    await page.goto(`${service.origin}/quotes/${made.id}`)
    await page.getByRole('button', { name: 'Change the need' }).click()
    await page.getByLabel('Where it stands', { exact: true }).fill('cellar')
    const opener = page.getByRole('button', { name: 'Discard', exact: true })
    await opener.focus()
    await page.keyboard.press('Enter')
    const dialog = dialogOf(page)
    await dialog.getByText(/“Typed by a slip” goes/).waitFor()
    expect(await dialog.getByRole('listitem').count()).toBe(made.draft.builds.length)
    await expectAccessible(page)
    await page.keyboard.press('Escape')
    await dialog.waitFor({ state: 'hidden' })
    expect(await opener.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await statusOf(watched, made.id)).toBe(200)
    await page.keyboard.press('Enter')
    await dialog.getByRole('button', { name: 'Discard the draft' }).focus()
    await page.keyboard.press('Enter')
    await page.getByRole('heading', { name: 'Quotes', level: 1 }).waitFor()
    expect(await statusOf(watched, made.id)).toBe(404)
    await page.getByRole('row').nth(1).waitFor()
    expect(await page.getByText('Typed by a slip').count()).toBe(0)
    expect(watched.faults).toEqual([])
  })

  it('is discarded from the list on a phone; an issued quote offers no such thing', async () => {
    const watched = await advisor({ width: 390, height: 844 })
    const { page } = watched
    const made = await newDraft(watched, 'Begun twice')
    await page.goto(`${service.origin}/quotes`)
    const row = page.getByRole('row').filter({ hasText: 'Begun twice' })
    await row.getByRole('button', { name: /^Discard the draft for .*Begun twice$/ }).click()
    await dialogOf(page)
      .getByText(/“Begun twice” goes/)
      .waitFor()
    await expectAccessible(page)
    await expectNoOverflow(page)
    await dialogOf(page).getByRole('button', { name: 'Discard the draft' }).click()
    await row.waitFor({ state: 'hidden' })
    expect(await statusOf(watched, made.id)).toBe(404)
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe('H1')
    const issued = page.getByRole('row').filter({ has: page.getByText(/^accepted/) })
    expect(await issued.count()).toBeGreaterThan(0)
    expect(await issued.getByRole('button').count()).toBe(0)
    expect(watched.faults).toEqual([])
  })

  it('discarded by a colleague while it lay open loses nothing: what is on the screen becomes a quote of its own', async () => {
    const watched = await advisor({ width: 1440, height: 900 })
    const { page, context } = watched
    const made = await newDraft(watched, 'Two at it')
    await page.goto(`${service.origin}/quotes/${made.id}`)
    await page.getByRole('button', { name: 'Change the need' }).click()
    const gone = await context.request.delete(api(`/quotes/${made.id}`), { headers: { ...ORIGIN(), 'if-match': `"${made.version}"` } })
    expect(gone.status()).toBe(204)
    await page.getByLabel('Where it stands', { exact: true }).fill('attic')
    await page.getByText(/this quote was discarded/).waitFor()
    await page.getByRole('button', { name: 'Make a new quote from it' }).click()
    await page.waitForURL((url) => !url.pathname.endsWith(made.id))
    await saved(page)
    const id = new URL(page.url()).pathname.split('/').at(-1) ?? ''
    const copy = (await (await context.request.get(api(`/quotes/${id}`))).json()) as QuoteView
    expect([copy.draft.title, copy.draft.need.place]).toEqual(['Two at it', 'attic'])
  })
})
