import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import { jpeg } from '../api/support/pictures.ts'
import { expectAccessible } from './support/accessible.ts'
import { openBrowser, openPage } from './support/browser.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { openScreen, readApi, signIn } from './support/sign-in.ts'

let service: DemoService
let browser: Browser
let page: Page

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  ;({ page } = await openPage(browser, { width: 1280, scheme: 'light' }))
  await signIn(page, service, 'manager')
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

const named = async (name: string): Promise<Product> => {
  const { items } = await readApi<{ items: Product[] }>(page, service, `/api/products?q=${encodeURIComponent(name)}`)
  const found = items.find((product) => product.name === name)
  if (!found) throw new Error(`${name} is not in the catalog`)
  return found
}

describe('the catalog', () => {
  it('takes a new tank with its sides as people type them', async () => {
    await openScreen(page, service, '/catalog/new')
    await page.getByRole('button', { name: 'Tank' }).click()
    await page.getByLabel('Name', { exact: true }).fill('Osmere Trial 36')
    await page.getByLabel('Length').fill('36 in')
    await page.getByLabel('Width').fill('45 cm')
    await page.getByLabel('Height').fill('5 mm')
    await page.getByRole('button', { name: 'Add Osmere Trial 36 to the catalog' }).click()
    await page.getByText(/^Height is .* The least is /).waitFor()
    await page.getByLabel('Height').fill('17 1/2 in')
    await page.getByRole('button', { name: 'Add Osmere Trial 36 to the catalog' }).click()
    await page.getByRole('heading', { level: 1, name: 'Osmere Trial 36' }).waitFor()
    // 1 in = 25.4 mm exactly (international inch, 1959).
    expect((await named('Osmere Trial 36')).spec).toEqual({ lengthMm: 914.4, widthMm: 450, heightMm: 444.5 })
  })

  it('brings in someone else’s change and keeps what was typed', async () => {
    const tank = await named('Osmere Trial 36')
    await openScreen(page, service, `/catalog/${tank.id}`)
    await page.getByRole('textbox', { name: 'Maker' }).fill('Osmere Works')
    const { id, version, ...body } = tank
    const other = await page.request.put(`${service.origin}/api/products/${id}`, {
      data: { ...body, note: 'Changed meanwhile.', oversize: true },
      headers: { 'if-match': `"${version}"`, origin: service.origin, 'sec-fetch-site': 'same-origin' },
    })
    expect(other.status()).toBe(200)
    await page.getByRole('button', { name: 'Save Osmere Trial 36' }).click()
    await page.getByText('Not saved: someone changed this meanwhile').waitFor()
    await page.getByRole('button', { name: 'Bring in their change' }).click()
    await page.getByText('Their change is in the form now').waitFor()
    expect(await page.getByRole('textbox', { name: 'Maker' }).inputValue()).toBe('Osmere Works')
    expect(await page.getByLabel('Note').inputValue()).toBe('Changed meanwhile.')
    await page.getByRole('button', { name: 'Save Osmere Trial 36' }).click()
    await page.waitForURL((url) => url.pathname.startsWith('/prices/'))
    expect(await named('Osmere Trial 36')).toMatchObject({ maker: 'Osmere Works', note: 'Changed meanwhile.', oversize: true })
  })

  it('forgives a slip in the search, and keeps it in the address', async () => {
    await openScreen(page, service, '/catalog')
    await page.getByRole('searchbox', { name: 'Search' }).fill('trail osmree')
    await page.getByRole('link', { name: 'Osmere Trial 36', exact: true }).waitFor()
    expect(new URL(page.url()).searchParams.get('q')).toBe('trail osmree')
  })

  it('narrows a kind by what its makers state, and the address keeps it', async () => {
    await openScreen(page, service, '/catalog')
    await page.getByLabel('Kind', { exact: true }).selectOption('heater')
    await page.getByText('Narrow by what the maker states').click()
    const least = page.getByRole('group', { name: 'Power' }).getByLabel('At least')
    await least.fill('5 kW')
    await least.press('Enter')
    await page.getByText(/^At least is 5.* The most is /).waitFor()
    await least.fill('100')
    await least.press('Enter')
    await page.getByText('Power at least 100 W').waitFor()
    await expect.poll(() => new URL(page.url()).searchParams.get('spec')).toBe('powerW:100..')
    await expectAccessible(page)
    const shown = page.getByRole('table', { name: 'Products' }).getByRole('row')
    const all = await readApi<{ items: Product[] }>(page, service, '/api/products?kind=heater')
    const strong = all.items.filter(({ spec }) => 'powerW' in spec && (spec.powerW ?? 0) >= 100)
    expect(strong.length).toBeGreaterThan(1)
    expect(strong.length).toBeLessThan(all.items.length)
    await expect.poll(() => shown.count()).toBe(strong.length + 1)
    await page.reload()
    await page.getByText('Power at least 100 W').click()
    await expect.poll(() => shown.count()).toBe(strong.length + 1)
    await page.getByRole('button', { name: 'Take these limits off' }).click()
    await expect.poll(() => shown.count()).toBe(all.items.length + 1)
  })

  it('puts a picture on a product, shows it wherever the product is listed, and takes it away after asking', async () => {
    const tank = await named('Osmere Trial 36')
    await openScreen(page, service, `/catalog/${tank.id}`)
    const chosen = page.locator('input[type="file"]')
    await chosen.setInputFiles({ name: 'logo.png', mimeType: 'image/png', buffer: Buffer.from('<svg onload="alert(1)"/>') })
    await page.getByText('The file is a drawing (SVG). Choose a photograph in JPEG, PNG or WebP.').waitFor()
    const photo = Buffer.from(await jpeg(900, 700))
    // A JPEG that somebody named otherwise is taken for what it is.
    await chosen.setInputFiles({ name: 'tank.png', mimeType: 'image/png', buffer: photo })
    const shown = page.getByRole('img', { name: 'Osmere Trial 36' })
    await expect.poll(() => shown.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(900)
    await expectAccessible(page)
    await openScreen(page, service, '/catalog?q=osmere%20trial')
    await expect.poll(() => shown.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(160)
    await expectAccessible(page)
    await openScreen(page, service, `/prices/${tank.id}`)
    await expect.poll(() => shown.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(900)
    await openScreen(page, service, `/catalog/${tank.id}`)
    await page.getByRole('button', { name: 'Take it away' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Take it away' }).click()
    await page.getByText('No picture yet').waitFor()
    expect(await shown.count()).toBe(0)
  })

  it('tries rows without writing, names the fault by its line, then writes all', async () => {
    await openScreen(page, service, '/catalog/exchange')
    await page.getByLabel('Kind of every row').selectOption('thermometer')
    const template = await page.request.get(`${service.origin}/api/imports/template?set=catalog&kind=thermometer`)
    const head = (await template.text()).split(/\r?\n/)[0] ?? ''
    const columns = head.replace(/^\uFEFF/, '').split(',')
    const line = (cells: Record<string, string>): string => columns.map((column) => cells[column] ?? '').join(',')
    await page
      .getByLabel('Or paste the rows')
      .fill(`${head}\n${line({ name: 'Lockridge Dial' })}\n${line({ name: 'Lockridge Fault', type: 'wood' })}`)
    await page.getByRole('button', { name: 'Try it, write nothing' }).click()
    await page.getByText('Nothing written: 1 fault in 2 rows').first().waitFor()
    await page.getByRole('rowheader', { name: 'type', exact: true }).last().waitFor()
    expect(await page.getByRole('link', { name: 'All faults as a file' }).getAttribute('href')).toMatch(/^\/api\/imports\/.*\/faults$/)
    await page.getByLabel('Or paste the rows').fill(`${head}\n${line({ name: 'Lockridge Dial' })}`)
    await page.getByRole('button', { name: 'Try it, write nothing' }).click()
    await page.getByRole('button', { name: 'Throw these rows away' }).waitFor()
    await expectAccessible(page)
    await page.getByRole('button', { name: 'Throw these rows away' }).click()
    await page.getByText('Cancelled. Nothing of it was kept.').first().waitFor()
    await page.getByRole('button', { name: 'Try it, write nothing' }).click()
    await page.getByRole('button', { name: 'Write 1 new and 0 changed' }).click()
    await page.getByText('Written: 1 new, 0 changed, 0 as they were').first().waitFor()
    expect((await named('Lockridge Dial')).kind).toBe('thermometer')
  })
})

describe('people', () => {
  it('are invited by a link that works once', async () => {
    await openScreen(page, service, '/people')
    await page.getByLabel('Name of the person to invite').fill('Wil Harrow')
    await page.getByRole('button', { name: 'Make a one-use link' }).click()
    const url = await page.getByLabel('One-use link').inputValue()
    const { page: guest, context } = await openPage(browser, { width: 390, scheme: 'light' })
    const path = new URL(url).pathname
    await openScreen(guest, service, path)
    await guest.getByLabel('Sign-in name').fill('wil')
    await guest.getByLabel('Password', { exact: true }).fill('short')
    await guest.getByRole('button', { name: 'Join' }).click()
    await guest.getByText(/at least 15 characters/).last().waitFor() // prettier-ignore
    await guest.getByLabel('Password', { exact: true }).fill('seven lanterns over the weir')
    await guest.getByRole('button', { name: 'Join' }).click()
    await guest.getByRole('heading', { level: 1, name: 'Prices' }).waitFor()
    await openScreen(guest, service, path)
    await guest.getByText('This link is used up or over').waitFor()
    await context.close()
  })
})
