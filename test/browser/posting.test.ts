import type { Browser, BrowserContext, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { PriceRecord, SightingRow } from '../../core/pricing/record.ts'
import { expectReflow } from './support/accessible.ts'
import { openBrowser, openPage } from './support/browser.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { openScreen, readApi, signIn } from './support/sign-in.ts'

let service: DemoService
let browser: Browser
let context: BrowserContext
let page: Page
let productId: string
let productName: string

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  ;({ context, page } = await openPage(browser, { width: 390, scheme: 'light' }))
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

/** Posted by this member today: the scenario's own end before. */
async function postedToday(): Promise<number[]> {
  const record = await readApi<PriceRecord>(page, service, `/api/products/${productId}/record`)
  return record.sightings
    .filter(({ own, seenOn, receivedAt }) => own && seenOn === service.today && Date.parse(receivedAt) > started)
    .map(({ priceMinor }) => priceMinor)
}
const started = Date.now() - 1000

describe('a member in a store aisle', () => {
  it('posts a first price, judged while it is typed', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await page.getByLabel('Store').selectOption({ index: 1 })
    await page.getByLabel('Price', { exact: true }).fill('41.37')
    await page.locator('.say').waitFor()
    await page.getByRole('button', { name: /^Post \$41\.37 at / }).click()
    await page.getByText(/^Posted: \$41\.37 for /).waitFor()
    expect(await postedToday()).toEqual([4137])
  })

  it('posts a recent product again in two taps: the product and the button', async () => {
    await openScreen(page, service, '/post')
    await page.getByRole('button', { name: productName }).first().click()
    expect(await page.evaluate(() => document.activeElement?.getAttribute('inputmode'))).toBe('decimal')
    await page.keyboard.type('42.10')
    await page.getByRole('button', { name: /^Post \$42\.10 at / }).click()
    await page.getByText(/^Posted: \$42\.10/).waitFor()
    expect(new Set(await postedToday())).toEqual(new Set([4137, 4210]))
  })

  it('sees the new price where it stands at once, without loading the page again', async () => {
    await openScreen(page, service, `/prices/${productId}`)
    await page.getByRole('link', { name: 'Post a sighting' }).click()
    await page.getByLabel('Price', { exact: true }).fill('42.75')
    await page.getByRole('button', { name: /^Post \$42\.75 at / }).click()
    await page.getByRole('link', { name: 'See how it stands' }).click()
    await page.getByRole('row', { name: /^\$42\.75/ }).waitFor({ timeout: 3000 })
  })

  it('sees the product’s picture in the search and on the form, dimmed in the dark', async () => {
    await openScreen(page, service, '/post')
    await page.getByRole('combobox', { name: 'Which product?' }).click()
    await page.keyboard.type('Wendlemere 40')
    const option = page.getByRole('option', { name: /Wendlemere 40 breeder/ }).first()
    const loaded = (image: SVGElement | HTMLElement): boolean => image instanceof HTMLImageElement && image.naturalWidth > 0
    await expect.poll(() => option.locator('img').evaluate(loaded), { timeout: 30_000 }).toBe(true)
    await option.click()
    const shown = page.locator('.what img')
    await expect.poll(() => shown.evaluate(loaded), { timeout: 30_000 }).toBe(true)
    const plate = () => page.locator('.what .thumb').evaluate((thumb) => getComputedStyle(thumb).backgroundColor)
    expect(await plate()).toBe('rgb(255, 255, 255)')
    await page.emulateMedia({ colorScheme: 'dark' })
    expect(await plate()).toBe('rgb(163, 176, 169)')
    await page.emulateMedia({ colorScheme: 'light' })
  })

  it('is told before posting the same price a second time, and two taps at once post it once', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await page.getByLabel('Price', { exact: true }).fill('42.75')
    await page.getByText('You posted this today').waitFor()
    await page.getByLabel('Price', { exact: true }).fill('42.80')
    await page.getByText('You posted this today').waitFor({ state: 'detached' })
    await page.getByRole('button', { name: /^Post \$42\.80/ }).evaluate((button: HTMLElement) => {
      button.click()
      button.click()
    })
    await page.getByText(/^Posted: \$42\.80/).waitFor()
    expect((await postedToday()).filter((priceMinor) => priceMinor === 4280)).toHaveLength(1)
  })

  it('is told after posting that a slipped decimal waits for a second member', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await page.getByLabel('Price', { exact: true }).fill('4.28')
    await page.getByText('This one waits for a second member').waitFor()
    await page.getByRole('button', { name: /^Post \$4\.28/ }).click()
    await page.getByText(/^It waits for a second member and is not counted yet\./).waitFor()
  })

  it('is stopped with a sentence beside the field, and keeps what was typed', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await page.getByLabel('Price', { exact: true }).fill('4l.10')
    await page.getByText('is not a price').waitFor()
    await page.getByLabel('Price', { exact: true }).fill('0')
    await page.getByRole('button', { name: /^Post/ }).click()
    await page.getByText('The least is $0.01.').waitFor()
    expect(await page.getByLabel('Price', { exact: true }).inputValue()).toBe('0')
    expect(await postedToday()).not.toContain(0)
  })

  it('is taken to a fault that was folded away, clear of the button at the foot', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await page.getByLabel('Price', { exact: true }).fill('42.90')
    await page.getByText('Another day, evidence, a note').click()
    await page.getByLabel('Day seen').fill('2030-01-01')
    await page.getByText('Another day, evidence, a note').click()
    await page.getByRole('button', { name: /^Post \$42\.90/ }).click()
    const fault = page.getByText(/^This day is in the future\./)
    await fault.waitFor()
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('type'))).toBe('date')
    const [told, foot] = [await fault.boundingBox(), await page.locator('.foot').boundingBox()]
    expect((told?.y ?? 999) + (told?.height ?? 0)).toBeLessThanOrEqual(foot?.y ?? 0)
  })

  it('loses nothing without a signal, and posts it once when it is back', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await context.setOffline(true)
    await page.getByText('No signal. Kept on this phone; posts once, by itself.').waitFor()
    await page.getByLabel('Price', { exact: true }).fill('43.55')
    await page.getByRole('button', { name: /^Post \$43\.55/ }).click()
    await page.getByText(/^Kept on this phone: \$43\.55/).waitFor()
    await page.getByRole('heading', { name: 'Kept on this device' }).waitFor()
    await context.setOffline(false)
    await page.getByRole('heading', { name: 'Kept on this device' }).waitFor({ state: 'detached' })
    await page.getByText(/^Posted: \$43\.55/).waitFor()
    expect(await page.getByText(/^Kept on this phone/).count()).toBe(0)
    await openScreen(page, service, `/prices/${productId}`)
    expect((await postedToday()).filter((priceMinor) => priceMinor === 4355)).toHaveLength(1)
  })

  it('removes a kept one before it is sent, puts it back, and a removed one is never posted', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await context.setOffline(true)
    await page.getByLabel('Price', { exact: true }).fill('43.88')
    await page.getByRole('button', { name: /^Post \$43\.88/ }).click()
    const remove = page.getByRole('button', { name: /^Remove \$43\.88 for / })
    await remove.click()
    await page.getByText(/^Removed: \$43\.88 for /).waitFor()
    expect(await page.getByText(/^(?:Posted|Kept on this phone): \$43\.88/).count()).toBe(0)
    await page.getByRole('button', { name: 'Put it back' }).click()
    await remove.waitFor()
    const folder = process.env['LOOK_DIR']
    if (folder !== undefined) await page.screenshot({ path: `${folder}/kept-list.png`, fullPage: true })
    await remove.click()
    await page.getByText(/^Removed: \$43\.88 for /).waitFor()
    if (folder !== undefined) await page.screenshot({ path: `${folder}/removed.png`, fullPage: true })
    await context.setOffline(false)
    await page.waitForLoadState('networkidle')
    await openScreen(page, service, `/prices/${productId}`)
    expect(await postedToday()).not.toContain(4388)
  })

  it('goes on without a signal on a phone that has just come to this page', async () => {
    const fresh = await openPage(browser, { width: 390, scheme: 'dark' })
    await signIn(fresh.page, service, 'advisor')
    await openScreen(fresh.page, service, `/post?product=${productId}`)
    await fresh.page.getByLabel('Store').selectOption({ index: 2 })
    await fresh.context.setOffline(true)
    await fresh.page.getByLabel('Price', { exact: true }).fill('45.66')
    await fresh.page.getByRole('button', { name: /^Post \$45\.66/ }).click()
    await fresh.page.getByText(/^Kept on this phone: \$45\.66/).waitFor()
    await fresh.page.getByRole('combobox', { name: 'Which product?' }).waitFor()
    await fresh.context.close()
  })

  it('finds the prices, the search and the menu still there after the signal is gone', async () => {
    const fresh = await openPage(browser, { width: 390, scheme: 'light' })
    await signIn(fresh.page, service, 'member')
    await openScreen(fresh.page, service, '/post')
    await fresh.context.setOffline(true)
    await fresh.page.getByRole('link', { name: 'Prices' }).click()
    await fresh.page.getByText('No signal').first().waitFor()
    await fresh.page.getByRole('link', { name: productName }).first().waitFor()
    await fresh.page.getByLabel('Search').fill(productName)
    await fresh.page.getByText('These prices were read before.', { exact: false }).waitFor()
    await fresh.page.getByRole('link', { name: productName }).first().waitFor()
    await fresh.page.getByRole('button', { name: 'Menu' }).click()
    await fresh.page.getByRole('link', { name: 'Post', exact: true }).click()
    await fresh.page.getByRole('combobox', { name: 'Which product?' }).fill(productName.slice(0, 6))
    await fresh.page.getByText('No signal: only products that this phone knows already.').waitFor()
    await fresh.page.getByRole('option', { name: productName }).first().click()
    await fresh.page.getByLabel('Price', { exact: true }).waitFor()
    await fresh.context.close()
  })

  it('is never offered a product that does not match what stands in the field, however slow the answer is', async () => {
    await openScreen(page, service, '/post')
    const field = page.getByRole('combobox', { name: 'Which product?' })
    await field.fill('')
    await page.getByRole('option').first().waitFor()
    const word = productName.split(' ')[0] ?? ''
    await context.route('**/api/products?*', async (route) => {
      await new Promise((resolve) => setTimeout(resolve, 2500))
      await route.continue().catch(() => undefined)
    })
    await field.fill(word)
    await page.getByText('searching', { exact: true }).waitFor()
    const offered = await page.getByRole('option').allInnerTexts()
    expect(offered.length).toBeGreaterThan(0)
    for (const text of offered) expect(text.toLowerCase()).toContain(word.toLowerCase())
    const folder = process.env['LOOK_DIR']
    if (folder !== undefined) await page.screenshot({ path: `${folder}/picker-busy.png` })
    await field.fill('zzzzqq')
    await expect.poll(() => page.getByRole('option').allInnerTexts()).toEqual(['Reading the catalog'])
    await page.getByText('Nothing in the catalog has that name.').waitFor()
    expect(await page.getByText('searching', { exact: true }).count()).toBe(0)
    await context.unroute('**/api/products?*')
  })

  it('is told that a screen is not there yet, keeps the menu, and gets it by itself with the signal', async () => {
    const fresh = await openPage(browser, { width: 390, scheme: 'dark' })
    await signIn(fresh.page, service, 'advisor')
    await openScreen(fresh.page, service, '/prices')
    await fresh.context.setOffline(true)
    await fresh.page.getByRole('button', { name: 'Menu' }).click()
    await fresh.page.getByRole('link', { name: 'Setups' }).click()
    await fresh.page.getByRole('heading', { name: 'This screen is not on this device yet' }).waitFor()
    await fresh.page.getByText('No signal').waitFor()
    expect(await fresh.page.getByText('tell the manager').count()).toBe(0)
    await fresh.page.getByRole('button', { name: 'Menu' }).waitFor()
    await fresh.context.setOffline(false)
    await fresh.page.getByRole('heading', { level: 1, name: 'Setups' }).waitFor()
    await fresh.context.close()
  })

  it('is asked before signing out with unsent sightings; kept ones wait for the next sign-in', async () => {
    await openScreen(page, service, `/post?product=${productId}`)
    await context.route('**/api/sightings', (route) => route.abort())
    await page.getByLabel('Price', { exact: true }).fill('44.44')
    await page.getByRole('button', { name: /^Post \$44\.44/ }).click()
    await page.getByRole('heading', { name: 'Kept on this device' }).waitFor()
    await openScreen(page, service, '/prices')
    await page.getByRole('button', { name: 'Menu' }).click()
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.getByRole('button', { name: 'Stay signed in' }).click()
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    await page.getByRole('button', { name: 'Sign out' }).click()
    await page.getByRole('button', { name: 'Keep them and sign out' }).click()
    await page.waitForURL((url) => url.pathname === '/sign-in')
    await context.unroute('**/api/sightings')
    await signIn(page, service, 'member')
    await expect.poll(async () => (await postedToday()).filter((priceMinor) => priceMinor === 4444).length, { timeout: 15_000 }).toBe(1)
  })
})

describe('the record', () => {
  it('takes one’s own sighting back and says so, and it counts for nothing', async () => {
    await openScreen(page, service, `/prices/${productId}`)
    await page.getByRole('button', { name: /^Withdraw \$44\.44/ }).click()
    await page.getByRole('button', { name: 'Withdraw it' }).click()
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    const record = await readApi<PriceRecord>(page, service, `/api/products/${productId}/record`)
    expect(record.sightings.find(({ priceMinor }) => priceMinor === 4444)?.withdrawn).toBe(true)
  })

  it('is rolled up over the stores, and a figure leads to the sightings behind it', async () => {
    await openScreen(page, service, `/prices/${productId}`)
    const { rolledUp } = await readApi<PriceRecord>(page, service, `/api/products/${productId}/record`)
    await page.getByRole('region', { name: 'Over all stores' }).getByRole('link').first().click()
    await page.getByText(/^The (one|\d+) behind the lowest price today, all stores, of \d+\.$/).waitFor()
    const listed = await page.locator('[id^="s-"]').evaluateAll((cells) => cells.map(({ id }) => id.slice(2)))
    expect(listed.toSorted()).toEqual(rolledUp[0]?.new?.today?.sightingIds.toSorted())
    await page.getByRole('button', { name: 'Show the newest again' }).click()
    await page.getByText(/, newest first\./).waitFor()
  })

  it('is confirmed by another member in one tap', async () => {
    const other = await openPage(browser, { width: 390, scheme: 'dark' })
    await signIn(other.page, service, 'advisor')
    await openScreen(other.page, service, `/prices/${productId}`)
    await other.page.getByRole('button', { name: /^Confirm \$43\.55/ }).click()
    await other.page.getByText('confirmed by 1').first().waitFor()
    const record = await readApi<PriceRecord>(other.page, service, `/api/products/${productId}/record`)
    expect(record.sightings.find(({ priceMinor }) => priceMinor === 4355)).toMatchObject({ confirmations: 1, myVote: 'confirm' })
    await other.context.close()
  })
})

describe('the board on a phone', () => {
  /** Its rows that this member may judge, newest first. */
  const judged = () => page.getByRole('row').filter({ has: page.getByRole('button', { name: /^Dispute / }) })

  it('says from where, when and how sure in a row’s second line', async () => {
    await openScreen(page, service, '/prices')
    const lines = await page.locator('td[data-phone="below"]').allInnerTexts()
    expect(lines.length).toBeGreaterThan(5)
    for (const line of lines) expect(line).toMatch(/, seen \w+ \d+.* · (one report|a list|\d+ members|confirmed by \d+)/)
  })

  it('keeps a row that was disputed by a slip, and takes the word back to the opposite', async () => {
    await openScreen(page, service, '/prices')
    const name =
      (
        await judged()
          .first()
          .getByRole('button', { name: /^Dispute / })
          .getAttribute('aria-label')
      )?.replace('Dispute ', '') ?? ''
    await page.getByRole('button', { name: `Dispute ${name}`, exact: true }).click()
    const back = page.getByRole('button', { name: `Confirm instead ${name}`, exact: true })
    await back.waitFor()
    await page.waitForLoadState('networkidle')
    await back.click()
    await page.getByRole('button', { name: `Dispute instead ${name}`, exact: true }).waitFor()
  })

  it('takes a word back as if it had never been said', async () => {
    await openScreen(page, service, '/prices')
    const first = page.getByRole('button', { name: /^Confirm (?!instead)/ }).first()
    const name = ((await first.getAttribute('aria-label')) ?? '').replace('Confirm ', '')
    await first.click()
    const back = page.getByRole('button', { name: `Take it back ${name}`, exact: true })
    await back.waitFor()
    const folder = process.env['LOOK_DIR']
    if (folder !== undefined) await page.screenshot({ path: `${folder}/vote-phone.png` })
    await back.click()
    await page.getByRole('button', { name: `Confirm ${name}`, exact: true }).waitFor()
  })

  it('posts an unchanged price for today in one tap', async () => {
    await openScreen(page, service, '/prices')
    const button = page.getByRole('button', { name: /^Price unchanged today: / }).first()
    const minor = Math.round(Number(/\$([\d.,]+)$/.exec((await button.getAttribute('aria-label')) ?? '')?.[1]?.replace(',', '')) * 100)
    await button.click()
    await page.getByText(/^Posted: /).waitFor()
    const board = await readApi<{ rows: Array<{ sighting: SightingRow }> }>(page, service, '/api/board?limit=5')
    expect(board.rows.some(({ sighting }) => sighting.priceMinor === minor && sighting.seenOn === service.today && sighting.own)).toBe(true)
  })
})

describe('a member who waits for a price', () => {
  it('watches the product at a price, is told, counted in the menu, and says in one tap that it is still there', async () => {
    const told = async (): Promise<number> => (await readApi<{ total: number }>(page, service, '/api/notices/count')).total
    // What the scenario's own watch is told of comes first, a moment after the start.
    await expect.poll(told).toBeGreaterThan(0)
    const toldBefore = await told()
    await openScreen(page, service, `/prices/${productId}`)
    await page.getByRole('link', { name: 'Watch this' }).click()
    await page.getByText('At the price to buy at').click()
    await page.getByText('Choose the day it is wanted by').waitFor()
    await expectReflow(page)
    await page.getByText('At or under a price').click()
    await page.getByLabel('Price, with tax').fill('99')
    await page.getByRole('button', { name: 'Watch this' }).click()
    await page.getByText('at or under $99.00 with tax').waitFor()
    // The service looks every two seconds; the count in the menu asks once a minute, so that the screen is opened anew.
    await expect.poll(told).toBeGreaterThan(toldBefore)
    await openScreen(page, service, '/prices')
    await page.getByRole('button', { name: 'Menu' }).click()
    await page.getByRole('link', { name: /^Watches \d+ new$/ }).click()
    const still = page.getByRole('button', { name: new RegExp(`^Still there: ${productName}`) })
    await still.first().waitFor()
    const before = await still.count()
    await still.first().click()
    await page.getByText(/^(?:Still there: |Noted)/).waitFor()
    expect(await still.count()).toBe(before - 1)
    await page.getByRole('button', { name: `End the watch of ${productName}` }).click()
    await page.getByRole('button', { name: 'End it' }).click()
    await page.getByRole('button', { name: `End the watch of ${productName}` }).waitFor({ state: 'detached' })
  })

  it('takes back that a deal is gone, and narrows a watch of a kind before it is set', async () => {
    await openScreen(page, service, '/watches')
    const gone = page.getByRole('button', { name: /^Gone: / }).first()
    const name = (await gone.getAttribute('aria-label'))?.replace('Gone: ', '') ?? ''
    await gone.click()
    await page.getByRole('button', { name: `Not gone, take it back: ${name}` }).click()
    await page.getByRole('button', { name: `Gone: ${name}` }).waitFor()
    await openScreen(page, service, '/watches?kind=heater')
    await page.getByText('At the price to buy at').click()
    expect(await page.getByLabel('Wanted by').inputValue(), 'nothing fills itself').toBe('')
    await page.getByText('At or under a price').click()
    await page.getByText('Narrow by what the maker states').click()
    await page.getByRole('group', { name: 'Power' }).getByLabel('At least').fill('250 W')
    await page.getByLabel('Price, with tax').fill('20')
    await page.getByLabel('Where').selectOption({ index: 1 })
    await page.getByRole('button', { name: 'Watch for it' }).click()
    await page.getByRole('row', { name: /Any heater · Power at least 250 W/ }).waitFor()
  })
})
