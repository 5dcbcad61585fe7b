import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import { expectAccessible, expectNoOverflow, smallTargets } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
import { fillSlot, openDevice, PATIENCE_MS, saved, signIn, type Device, type Watched } from './support/counter.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'

/** Least heights of anything pressed: 32 px at the counter, 44 px on a phone. Own rule of the look; WCAG 2.5.8 asks for 24. */
const DESK_PX = 32
const PHONE_PX = 44

/** About twice what the desk with three builds has. */
const MOST_STEPS = 400

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

async function atDesk(device: Device): Promise<Watched> {
  const watched = await openDevice(browser, device)
  await signIn(watched.page, service.origin, service.signIn('advisor'))
  await watched.page.goto(`${service.origin}/quotes/${service.demo.showcase.quoteId}`)
  await watched.page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
  return watched
}
const quoteOf = async ({ context }: Watched): Promise<QuoteView> =>
  (await (await context.request.get(`${service.origin}/api/quotes/${service.demo.showcase.quoteId}`)).json()) as QuoteView

/** What is pressed and lower than it must be; links inside a sentence or a cell's detail apart, which WCAG lets be as high as their line. */
const lowerThan = (page: Page, px: number): Promise<string[]> =>
  page.evaluate((least) => {
    const pressed = document.querySelectorAll('main button:not(.cell-name), main .btn, main select, main .entry input, main .tick')
    return [...pressed].flatMap((element) => {
      const box = (element.closest('.entry') ?? element).getBoundingClientRect()
      return box.height > 0 && box.height < least - 0.5 ? [`${element.textContent?.slice(0, 30) ?? ''} ${Math.round(box.height)} px`] : []
    })
  }, px)

/** Every name that Tab comes to, until it leaves the page. A date field holds several stops of its own. */
async function walk(page: Page): Promise<string[]> {
  const stops: string[] = []
  await page.evaluate(() => (document.activeElement instanceof HTMLElement ? document.activeElement.blur() : undefined))
  for (let step = 0; step < MOST_STEPS; step += 1) {
    await page.keyboard.press('Tab')
    const stop = await page.evaluate(() =>
      document.activeElement === document.body ? null : (document.activeElement?.textContent?.trim() ?? ''),
    )
    if (stop === null) return stops
    stops.push(stop)
  }
  throw new Error(`After ${MOST_STEPS} steps the keyboard is still held; last at "${stops.at(-1) ?? ''}"`)
}

describe('the desk for everyone', () => {
  it.each([
    [1440, 'light', DESK_PX], [1440, 'dark', DESK_PX], [1024, 'light', DESK_PX], [390, 'light', PHONE_PX], [390, 'dark', PHONE_PX],
  ] as const)('at %i px in %s has no violation, no overflow and targets that can be hit', async (width, scheme, least) => {
    const watched = await atDesk({ width, height: 900, phone: width < 720 })
    const { page } = watched
    await page.emulateMedia({ colorScheme: scheme })
    await expectAccessible(page)
    await expectNoOverflow(page)
    expect(await smallTargets(page)).toEqual([])
    expect(await lowerThan(page, least)).toEqual([])
    expect(watched.faults).toEqual([])
    await watched.context.close()
  }) // prettier-ignore

  it('shows one build at a time on a phone, the one that is chosen', async () => {
    const { page, context } = await atDesk({ width: 390, height: 844, phone: true })
    const columns = () => page.locator('.builds thead th').count()
    expect(await columns()).toBe(1)
    await page.locator('.phone-choice').getByText('C', { exact: true }).click()
    await page.getByRole('heading', { name: 'Sizing report for C' }).waitFor()
    expect(await columns()).toBe(1)
    expect(await page.getByRole('button', { name: /^Hold water, build C:/ }).count()).toBe(1)
    await context.close()
  })

  it('holds any two of three builds against each other, and opens what each price of a kit’s parts rests on', async () => {
    const watched = await atDesk({ width: 1280, height: 900 })
    const { page, context } = watched
    const pair = page.getByRole('row', { name: /^Any two/ })
    const [one, other] = [pair.getByLabel('Compare'), pair.getByLabel('with')]
    const letterOf = async (list: typeof one) => (await list.locator('option:checked').textContent())?.slice(0, 1)
    await one.selectOption({ label: 'B: Kit' })
    await other.selectOption({ label: 'C: Rimless' })
    const full = await page.locator('.tiers-b tr').first().locator('td').allTextContents()
    const [ofB, ofC] = [full[1], full[2]].map((figure) => Number(figure?.replace(/[$,]/g, '')))
    const less = new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format((ofC ?? 0) - (ofB ?? 0))
    expect(await pair.locator('dd').first().textContent()).toBe(`B is ${less} less`)
    await one.selectOption({ label: 'C: Rimless' })
    expect([await letterOf(one), await letterOf(other)], 'chosen twice, they change places').toEqual(['C', 'B'])
    await page.getByText('Its parts bought apart').click()
    await expectAccessible(page)
    await page
      .getByRole('link', { name: /sightings of Halden Row 36/ })
      .last()
      .click()
    await page.getByRole('heading', { name: 'Halden Row 36', level: 1 }).waitFor({ timeout: PATIENCE_MS })
    expect(watched.faults).toEqual([])
    await context.close()
  })

  it('is walked with the Tab key from end to end, and a dialog gives the focus back to the cell that opened it', async () => {
    const { page, context } = await atDesk({ width: 1440, height: 900 })
    const stops = await walk(page)
    for (const wanted of [
      /^See it on paper/,
      /^Issue version 2/,
      /^Change the need/,
      /^Heat, build B:/,
      /^Add a build/,
      /sightings of Pellick/,
      /^See why/,
    ]) {
      expect(stops.some((stop) => wanted.test(stop)), `${String(wanted)} is reached`).toBe(true) // prettier-ignore
    }
    const cell = page.getByRole('button', { name: /^Heat, build B:/ }).first()
    await cell.focus()
    await page.keyboard.press('Enter')
    await page.getByRole('combobox', { name: 'Find a product' }).waitFor()
    await expectAccessible(page)
    await page.keyboard.press('Escape')
    await page.getByRole('dialog').waitFor({ state: 'hidden' })
    expect(await cell.evaluate((element) => element === document.activeElement)).toBe(true)
    await context.close()
  })

  it('works the report out again in this browser as the room changes, before anything is saved', async () => {
    const { page, context } = await atDesk({ width: 1440, height: 900 })
    await page.route('**/api/quotes/*', (route) => (route.request().method() === 'PUT' ? route.abort() : route.fallback()))
    const counts = page.locator('.cnt td').first()
    const before = await counts.textContent()
    await page.getByRole('button', { name: 'Change the need' }).click()
    await page.getByRole('textbox', { name: 'Coldest the room gets' }).fill('25 °F')
    await page.getByRole('textbox', { name: 'Coldest the room gets' }).press('Enter')
    await expect.poll(() => counts.textContent(), { timeout: PATIENCE_MS }).not.toBe(before)
    await page.getByText(/^Not saved:/).waitFor()
    await page.unroute('**/api/quotes/*')
    await page.getByRole('button', { name: 'Try again now' }).click()
    await saved(page)
    await context.close()
  })
})

describe('what is typed key by key', () => {
  /** Types over what stands in a field, as a person does, and leaves it with Tab. */
  async function typeOver(page: Page, label: string, text: string): Promise<string> {
    const field = page.getByLabel(label, { exact: true })
    await field.click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type(text)
    const typed = await field.inputValue()
    await page.keyboard.press('Tab')
    return typed
  }

  it('is never rewritten while it is typed, and the draft holds what was meant', async () => {
    const watched = await atDesk({ width: 1440, height: 900 })
    const { page } = watched
    await page.getByRole('button', { name: 'Change the need' }).click()
    for (const [label, text] of [['Coldest the room gets', '58'], ['Substrate depth', '6 cm'], ['Outlet distance', '3 ft'], ['How much money', '1,234.00']] as const)
      expect(await typeOver(page, label, text), label).toBe(text)
    await saved(page)
    const { need } = (await quoteOf(watched)).draft
    // 58 °F by the scale's definition, a foot of 304.8 mm: international foot, 1959.
    expect(need.exact.coldestRoomC).toBeCloseTo((58 - 32) / 1.8, 3)
    expect(need.exact).toMatchObject({ substrateDepthMm: 60, outletDistanceMm: 914.4 })
    expect(need.budgetMinor).toBe(123_400)
    expect(await typeOver(page, 'How much money', '1.234')).toBe('1.234')
    await page.getByText(/can be read two ways/).waitFor()
    expect(await page.getByLabel('How much money', { exact: true }).inputValue()).toBe('1.234')
    await page.getByLabel('Where it stands', { exact: true }).fill('hall')
    await saved(page)
    expect((await quoteOf(watched)).draft.need).toMatchObject({ place: 'hall', budgetMinor: 123_400 })
    await watched.context.close()
  }) // prettier-ignore

  it('that is too few or no whole number stays with its fault, and the count what it was', async () => {
    const { page, context } = await atDesk({ width: 1440, height: 900 })
    await page.getByRole('button', { name: /^Heat, build A:/ }).first().click() // prettier-ignore
    const dialog = page.getByRole('dialog')
    const many = dialog.getByLabel('How many', { exact: true }).first()
    const before = await many.inputValue()
    for (const [text, fault] of [['-3', /^How many is -3\. The least is 1\./], ['1,000', /two ways/], ['2.5', /whole number/]] as const) {
      await many.click()
      await page.keyboard.press('Control+a')
      await page.keyboard.type(text)
      await page.keyboard.press('Tab')
      await dialog.getByText(fault).first().waitFor() // prettier-ignore
      expect(await many.inputValue()).toBe(text)
    }
    await dialog.getByRole('button', { name: 'Done' }).click()
    await page.getByRole('button', { name: /^Heat, build A:/ }).first().click() // prettier-ignore
    expect(await many.inputValue()).toBe(before)
    await context.close()
  }) // prettier-ignore

  it('is put when the slot is closed, and asked about where half of it is missing', async () => {
    const watched = await atDesk({ width: 1440, height: 900 })
    const { page } = watched
    const dialog = page.getByRole('dialog')
    const openServices = () => page.getByRole('button', { name: 'Add a service to build A' }).click()
    const services = async () => (await quoteOf(watched)).draft.builds[0]?.services ?? []
    const before = (await services()).length
    await openServices()
    await dialog.getByRole('button', { name: 'Delivery and carrying in', exact: true }).click()
    await dialog.getByRole('button', { name: 'Done', exact: true }).click()
    await dialog.getByText(/^Write the price/).waitFor()
    await dialog.getByLabel('Our price for one, tax in it').fill('45')
    await dialog.getByRole('button', { name: 'Done', exact: true }).click()
    await dialog.waitFor({ state: 'detached', timeout: PATIENCE_MS })
    await saved(page)
    expect((await services()).slice(before)).toMatchObject([{ name: 'Delivery and carrying in', quantity: 1, priceMinor: 4500 }])
    await openServices()
    await dialog.getByLabel('What we do').fill('Drill')
    await dialog.getByRole('button', { name: 'Done', exact: true }).click()
    await dialog.getByRole('button', { name: 'Close without it' }).click()
    await dialog.waitFor({ state: 'detached', timeout: PATIENCE_MS })
    expect(await services()).toHaveLength(before + 1)
    await watched.context.close()
  })

  it('on a plate stays in sight and in hand while a fault is put right', async () => {
    const { page, context } = await atDesk({ width: 1440, height: 900 })
    await page.getByRole('button', { name: /^Heat, build A:/ }).first().click() // prettier-ignore
    const dialog = page.getByRole('dialog')
    await dialog.getByText('Already owned', { exact: true }).click()
    await dialog.getByLabel('Or in words').fill('old heater')
    await dialog.getByText(/^What its plate says/).click()
    const power = dialog.getByLabel(/^Power/)
    await power.click()
    await page.keyboard.type('much')
    await page.keyboard.press('Enter')
    await expect.poll(() => power.getAttribute('aria-invalid'), { timeout: PATIENCE_MS }).toBe('true')
    await power.click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('150')
    expect(await power.isVisible()).toBe(true)
    expect(await power.evaluate((element) => element === document.activeElement)).toBe(true)
    expect(await power.inputValue()).toBe('150')
    await page.keyboard.press('Escape')
    await context.close()
  })
})

describe('a new quote', () => {
  it('takes the customer on record with Enter, and is not begun by Enter while the size is open', async () => {
    const watched = await atDesk({ width: 1440, height: 900 })
    const { page, context } = watched
    const counted = async (): Promise<number> =>
      ((await (await context.request.get(`${service.origin}/api/customers`)).json()) as { items: unknown[] }).items.length
    const known = (await quoteOf(watched)).customer.name
    const before = await counted()
    await page.goto(`${service.origin}/quotes/new`)
    const name = page.getByLabel('Name', { exact: true })
    await name.fill(known.slice(0, 5))
    await page.getByText(`Enter takes ${known}.`).waitFor()
    await expectAccessible(page)
    await name.press('Enter')
    await page.getByRole('button', { name: 'Someone else' }).waitFor()
    await page.getByLabel('Where it stands', { exact: true }).press('Enter')
    await page.getByText(/^Say how big/).waitFor()
    expect(await page.getByLabel('How big').getAttribute('aria-invalid')).toBe('true')
    expect(new URL(page.url()).pathname).toBe('/quotes/new')
    expect(await counted()).toBe(before)
    await context.close()
  })
})

describe('two advisors on one quote', () => {
  it('who fill one slot are told of it, and only one light is charged', async () => {
    const [first, second] = [await atDesk({ width: 1440, height: 900 }), await atDesk({ width: 1440, height: 900 })]
    const lights = async (): Promise<number> => {
      const { draft, products } = await quoteOf(first)
      const kinds = new Map(products.map((product) => [product.id, product.kind]))
      return draft.builds[0]?.lines.filter((line) => line.answer === 'buy' && kinds.get(line.productId) === 'light').length ?? 0
    }
    const before = await lights()
    await fillSlot(first.page, 'Light', 'A', 'Halden Row 30', 'Halden Row 30')
    await saved(first.page)
    await fillSlot(second.page, 'Light', 'A', 'Lumbry Strand 60', 'Lumbry Strand 60')
    await second.page.getByText(/one thing was changed on both sides/).waitFor()
    await second.page.getByRole('button', { name: 'Keep mine' }).click()
    await saved(second.page)
    expect(before).toBe(1)
    expect(await lights()).toBe(1)
    await first.context.close()
    await second.context.close()
  })

  it('lose nothing: who comes second compares, keeps both changes, and saves', async () => {
    const [first, second] = [await atDesk({ width: 1440, height: 900 }), await atDesk({ width: 1440, height: 900 })]
    await first.page.getByLabel('Title, as the customer reads it').fill('Their title')
    await saved(first.page)
    await second.page.getByLabel('Note to the customer').fill('Bring a spirit level.')
    await second.page.getByText(/^Not saved: .+ was changed at \d\d:\d\d\.$/).waitFor()
    await second.page.getByRole('button', { name: 'Compare' }).click()
    await expect.poll(() => second.page.getByRole('row', { name: /^Title .*Their title/ }).count(), { timeout: PATIENCE_MS }).toBe(1)
    await expectAccessible(second.page)
    expect(await second.page.getByLabel('Note to the customer').inputValue()).toBe('Bring a spirit level.')
    await second.page.getByRole('button', { name: 'Keep mine' }).click()
    await saved(second.page)
    expect((await quoteOf(second)).draft).toMatchObject({ title: 'Their title', note: 'Bring a spirit level.' })
    await first.context.close()
    await second.context.close()
  })

  it('keep an unsaved change over a reload while the server is not reached', async () => {
    const { page, context } = await atDesk({ width: 1440, height: 900 })
    await page.route('**/api/quotes/*', (route) => (route.request().method() === 'PUT' ? route.abort() : route.fallback()))
    await page.getByLabel('Note to the customer').fill('Kept in this tab.')
    await page.getByText(/^Not saved:/).waitFor()
    page.on('dialog', (dialog) => void dialog.accept())
    await page.unroute('**/api/quotes/*')
    await page.reload()
    await expect.poll(() => page.getByLabel('Note to the customer').inputValue(), { timeout: PATIENCE_MS }).toBe('Kept in this tab.')
    await saved(page)
    expect((await quoteOf({ page, context, faults: [] })).draft.note).toBe('Kept in this tab.')
    await context.close()
  })
})

describe('the screens around the desk', () => {
  it.each(['/quotes', '/quotes/new', '/customers', '/setups'])('%s has no violation and fits 320 px', async (path) => {
    const watched = await openDevice(browser, { width: 320, height: 800, phone: true })
    await signIn(watched.page, service.origin, service.signIn('advisor'))
    await watched.page.goto(service.origin + path)
    await watched.page.getByRole('heading', { level: 1 }).waitFor()
    await watched.page.waitForLoadState('networkidle')
    await expectAccessible(watched.page)
    await expectNoOverflow(watched.page)
    expect(watched.faults).toEqual([])
    await watched.context.close()
  })

  it('a customer that someone else changed meanwhile is compared, and keeping mine saves it', async () => {
    const { page, context } = await openDevice(browser, { width: 1024, height: 800 })
    await signIn(page, service.origin, service.signIn('advisor'))
    await page.goto(`${service.origin}/customers`)
    await page.getByRole('link', { name: 'Gil Amberley' }).click()
    await page.getByRole('button', { name: 'Edit' }).click()
    const id = new URL(page.url()).pathname.split('/')[2] ?? ''
    const put = await context.request.put(`${service.origin}/api/customers/${id}`, {
      data: { name: 'Gil Amberley', reach: '555-0199', note: '' },
      headers: { 'if-match': '"1"', 'sec-fetch-site': 'same-origin', origin: service.origin },
    })
    expect(put.status()).toBe(200)
    await page.getByLabel(/^Note/).fill('Has a cat.')
    await page.getByRole('button', { name: 'Save changes' }).click()
    await page.getByText(/^Not saved: someone changed this customer/).waitFor()
    await page.getByRole('button', { name: 'Compare with the newest' }).click()
    await page.getByText(/Saved now: Gil Amberley, 555-0199/).waitFor()
    await page.getByRole('button', { name: 'Keep mine' }).click()
    await page.getByText('Has a cat.').waitFor()
    await context.close()
  })
})
