import type { Browser, BrowserContext, Download, Locator, Page } from 'playwright-core'
import { expect } from 'vitest'

/** What went wrong inside a page: a script's fault or a refusal of the content security policy fails the test that reads it. */
export interface Watched {
  page: Page
  context: BrowserContext
  faults: string[]
}

export interface Device {
  width: number
  height: number
  phone?: boolean
  script?: boolean
}

/** A machine that runs everything at once answers late; a step that hangs longer than this is broken. */
export const PATIENCE_MS = 60_000

/** Someone's own device: a browser profile without anyone else's cookies. */
export async function openDevice(browser: Browser, { width, height, phone = false, script = true }: Device): Promise<Watched> {
  const context = await browser.newContext({
    viewport: { width, height },
    isMobile: phone,
    hasTouch: phone,
    javaScriptEnabled: script,
    acceptDownloads: true,
    // Colours that are still changing would be measured half way.
    reducedMotion: 'reduce',
    locale: 'en-US',
  })
  context.setDefaultTimeout(PATIENCE_MS)
  const page = await context.newPage()
  const faults: string[] = []
  page.on('pageerror', (error) => faults.push(error.message))
  page.on('console', (message) => {
    if (message.type() === 'error' && !/status of 40[14]/.test(message.text())) faults.push(message.text())
  })
  return { page, context, faults }
}

/** Cookies of those who signed in, by service and name. */
const signedIn = new Map<string, Awaited<ReturnType<BrowserContext['cookies']>>>()

/** By the form, as a person does; a further device of the same file goes on with the session that the form gave. Open a screen afterwards. */
export async function signIn(page: Page, origin: string, who: { signInName: string; password: string }): Promise<void> {
  const key = `${origin} ${who.signInName}`
  const cookies = signedIn.get(key)
  if (cookies !== undefined) return page.context().addCookies(cookies)
  await page.goto(`${origin}/sign-in`)
  await page.getByLabel('Sign-in name').fill(who.signInName)
  await page.getByLabel('Password', { exact: true }).fill(who.password)
  await page.getByRole('button', { name: 'Sign in', exact: true }).click()
  await expect.poll(() => new URL(page.url()).pathname, { timeout: PATIENCE_MS }).not.toBe('/sign-in')
  signedIn.set(key, await page.context().cookies())
}

/** Fills a slot as an advisor does, with the keyboard alone: open the cell, type, take the first. */
export async function fillSlot(page: Page, slot: string, letter: string, typed: string, product: string): Promise<void> {
  const cell = page.getByRole('button', { name: new RegExp(`^${slot}, build ${letter}:`) }).first()
  const dialog = page.getByRole('dialog')
  const search = dialog.getByRole('combobox', { name: `Find a product: ${slot}`, exact: true })
  await openCell(page, cell, search)
  await page.keyboard.type(typed)
  const chosen = dialog.getByRole('listbox', { name: 'Products' }).getByRole('option', { selected: true })
  await expect.poll(() => chosen.textContent().catch(() => ''), { timeout: PATIENCE_MS }).toContain(product)
  await page.keyboard.press('Enter')
  // An open slot goes on to the next open one, in the same dialog: here one slot is filled at a time.
  await expect.poll(() => search.count(), { timeout: PATIENCE_MS }).toBe(0)
  if (await dialog.isVisible()) await page.keyboard.press('Escape')
  await dialog.waitFor({ state: 'hidden' })
  await expect
    .poll(() => page.getByRole('button', { name: new RegExp(`^${slot}, build ${letter}:.*${product}`) }).count(), { timeout: PATIENCE_MS })
    .toBeGreaterThan(0)
}

/** The dialog before gives the focus back a moment after it has gone: who was quicker than that looks and presses again, as a person would. */
async function openCell(page: Page, cell: Locator, search: Locator): Promise<void> {
  for (let press = 1; press < PRESSES; press++) {
    await cell.press('Enter')
    const opened = await search.waitFor({ timeout: LOOK_MS }).then(() => true, () => false) // prettier-ignore
    if (opened) return
    if (await page.getByRole('dialog').isVisible()) await page.keyboard.press('Escape')
  }
  await cell.press('Enter')
  await search.waitFor()
}
const PRESSES = 3
const LOOK_MS = 5_000

/** Waits until the desk says that the server has it. */
export async function saved(page: Page): Promise<void> {
  await expect.poll(() => page.locator('.screen-head output').textContent(), { timeout: PATIENCE_MS }).toMatch(/^saved \d\d:\d\d$/)
}

export async function downloadOf(page: Page, press: () => Promise<void>): Promise<Download> {
  const [download] = await Promise.all([page.waitForEvent('download', { timeout: PATIENCE_MS }), press()])
  const failure = await download.failure()
  if (failure !== null) throw new Error(`The download failed: ${failure}`)
  return download
}
