import { readFile } from 'node:fs/promises'
import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Store } from '../../core/catalog/store.ts'
import type { Install } from '../../core/install.ts'
import { expectAccessible, expectReflow } from './support/accessible.ts'
import { LOOKS, openBrowser, openPage } from './support/browser.ts'
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

/** A state without violations and without anything cut off; a picture of it in every look, where somebody asks for pictures. */
async function expectSound(name: string): Promise<void> {
  await expectAccessible(page)
  await expectReflow(page)
  const folder = process.env['LOOK_DIR']
  if (folder === undefined) return
  for (const { width, scheme } of LOOKS) {
    await page.setViewportSize({ width, height: 900 })
    await page.emulateMedia({ colorScheme: scheme })
    await page.screenshot({ path: `${folder}/${name}-${width}-${scheme}.png`, fullPage: true })
  }
  await page.setViewportSize({ width: 1280, height: 844 })
  await page.emulateMedia({ colorScheme: 'light' })
}

const paste = (rows: string) => page.getByLabel('Or paste the rows').fill(rows)
const tryIt = () => page.getByRole('button', { name: 'Try it, write nothing' }).click()

describe('the price list', () => {
  let names: string[]
  beforeAll(async () => {
    const { items } = await readApi<{ items: Array<{ name: string }> }>(page, service, '/api/products?kind=heater&limit=3')
    names = items.map(({ name }) => name)
  })

  it('says what is wrong with a file by row and column, and gives it as a file', async () => {
    await openScreen(page, service, '/catalog/price-list/import')
    await page.getByText('This place is run as a club').waitFor()
    await paste('product,price,sale price\nNo such heater,10,\n')
    await tryIt()
    await page.getByText('Nothing written: 1 fault in 1 row').first().waitFor()
    await page.getByText('"No such heater" is not in the catalog.').waitFor()
    await expectSound('price-list-fault')
    const arriving = page.waitForEvent('download')
    await page.getByRole('link', { name: 'All faults as a file' }).click()
    const file = await readFile(await (await arriving).path(), 'utf8')
    expect(file).toContain('2,product,"""No such heater"" is not in the catalog.')
  })

  it('is tried, then written from a file, and shows prices, sales and stock', async () => {
    await openScreen(page, service, '/catalog/price-list/import')
    await paste(`product;stock number;stock;price;sale price\n${names[0]};H-1;4;39,90;29,90\n${names[1]};H-2;;45;\n`)
    await tryIt()
    await page.getByRole('button', { name: 'Write 2 new and 0 changed' }).click()
    await page.getByText('Written: 2 new, 0 changed, 0 as they were').first().waitFor()
    await openScreen(page, service, '/catalog/price-list')
    await page.getByLabel('Search by name, barcode or stock number').fill('H-')
    const row = page.getByRole('row', { name: names[0] ?? '' })
    await row.getByText('29.90').waitFor()
    await row.getByText('39.90').waitFor()
    await expectSound('price-list')
  })

  it('takes a sale at its form, and says beside the field that it is no lower than the price', async () => {
    await page.getByRole('link', { name: names[1] ?? '' }).click()
    const sale = page.getByLabel('Sale price')
    await sale.fill('45')
    await page.getByRole('button', { name: 'Save the price' }).click()
    await page.getByText('The sale price is not below the price.').waitFor()
    await expectSound('price-list-entry')
    await sale.fill('40')
    await sale.press('Enter')
    await page.getByLabel('Search by name, barcode or stock number').fill('H-2')
    await page
      .getByRole('row', { name: names[1] ?? '' })
      .getByText('40.00')
      .waitFor()
  })

  it('comes as a file that changes nothing when it is read again', async () => {
    await openScreen(page, service, '/catalog/price-list/import')
    const arriving = page.waitForEvent('download')
    await page.getByRole('link', { name: 'Download the price list' }).click()
    await page.getByLabel('Choose a file').setInputFiles(await (await arriving).path())
    await tryIt()
    await page.getByText('All of it is here already, just as the file says.').waitFor()
    await expectSound('price-list-files')
  })
})

describe('regions', () => {
  it('group stores, and a name that is taken is said at its field', async () => {
    await openScreen(page, service, '/stores')
    const section = page.getByRole('region', { name: 'Regions' })
    const add = async (name: string): Promise<void> => {
      await section.getByRole('button', { name: 'Group stores as a region' }).click()
      await section.getByLabel('Name of the region').fill(name)
      await section.getByRole('checkbox').first().check()
      await section.getByRole('button', { name: 'Add the region' }).click()
    }
    await add('Estuary shore')
    await section.getByRole('row', { name: 'Estuary shore' }).waitFor()
    await add('estuary Shore')
    await section.locator('.fault').waitFor()
    expect(await section.getByLabel('Name of the region').getAttribute('aria-invalid')).toBe('true')
    await expectSound('regions-fault')
    await section.getByRole('button', { name: 'Leave it' }).click()
    await section.getByRole('button', { name: 'Take out Estuary shore' }).click()
    await section.getByText('No watch is of this region.').waitFor()
    await section.getByRole('button', { name: 'Take it out' }).click()
    await section.getByRole('row', { name: 'Estuary shore' }).waitFor({ state: 'detached' })
  })
})

describe('rates of exchange', () => {
  it('are asked for once a store has another currency; a figure that is none is said at its field', async () => {
    const { items } = await readApi<{ items: Store[] }>(page, service, '/api/stores')
    const { id: _id, version: _version, ...fields } = items[0] as Store & { version: number }
    const made = await page.request.post(`${service.origin}/api/stores`, {
      data: { ...fields, name: 'Norvik Akvatik', currency: 'NOK', delivery: { kind: 'pickup_only' } },
      headers: { origin: service.origin, 'sec-fetch-site': 'same-origin' },
    })
    expect(made.status(), await made.text()).toBe(201)
    await openScreen(page, service, '/stores')
    const section = page.getByRole('region', { name: 'Rates of exchange' })
    await section.getByText('No rate for NOK').waitFor()
    await section.getByLabel('One is worth, USD').fill('about a tenth')
    await section.getByLabel('Source').fill('the bank’s noon rate')
    await section.getByRole('button', { name: 'Enter the rate' }).click()
    await section.getByText('Write a plain number, like 0.7312.').waitFor()
    await expectSound('rates-fault')
    await section.getByLabel('One is worth, USD').fill('0.0948')
    await section.getByRole('button', { name: 'Enter the rate' }).click()
    await section.getByRole('row', { name: 'NOK' }).getByText('0.0948').waitFor()
    await section.getByText('No rate for NOK').waitFor({ state: 'detached' })
  })
})

describe('the mode of the install', () => {
  const mode = async (): Promise<string> => (await readApi<Install>(page, service, '/api/install')).mode

  it('is asked about before it changes, and stays where one goes back', async () => {
    await openScreen(page, service, '/settings')
    await page.getByRole('radio', { name: 'Store' }).check({ force: true })
    await page.getByRole('button', { name: 'Save the settings' }).click()
    const asked = page.getByRole('dialog', { name: 'Run this place as a store?' })
    await asked.getByText('Mark one store as your own under Stores').waitFor()
    await expectSound('mode-question')
    await asked.getByRole('button', { name: 'Go back' }).click()
    expect(await mode()).toBe('club')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await asked.getByRole('button', { name: 'Save it as a store' }).click()
    await page.getByText('Saved.', { exact: true }).waitFor()
    expect(await mode()).toBe('store')
    await page.getByText('No store is marked as your own').waitFor()
    await expectSound('mode-no-own-store')
  })

  it('without a store of one’s own is told at the price list', async () => {
    await openScreen(page, service, '/catalog/price-list')
    await page.getByText('No store is marked as our own').waitFor()
    await expectSound('price-list-no-own-store')
    await openScreen(page, service, '/catalog/exchange')
    await page.getByRole('group', { name: 'What the file holds' }).getByLabel('Price list').check({ force: true })
    await page.getByText('No store is marked as our own').waitFor()
  })

  it('without a store of one’s own is told at the desk, in the words of a store', async () => {
    const { rows } = await readApi<{ rows: Array<{ id: string; state: string }> }>(page, service, '/api/quotes')
    const open = rows.find(({ state }) => state === 'draft' || state === 'issued')
    await openScreen(page, service, `/quotes/${open?.id}`)
    await page.getByText('No store is marked as our own').waitFor()
    await page.getByText('our list has no price').first().waitFor()
    await page.getByText('A price opens its place in our list').waitFor()
    await expectSound('desk-no-own-store')
  })

  it('is given its own store where it was changed', async () => {
    await openScreen(page, service, '/settings')
    const { items } = await readApi<{ items: Store[] }>(page, service, '/api/stores')
    const first = items.find(({ archived }) => !archived) as Store
    await page.getByLabel('Your own store').selectOption(first.id)
    await page.getByRole('button', { name: 'Mark it as our own' }).click()
    await page.getByText('is marked as your own store.').waitFor()
    expect((await readApi<{ items: Store[] }>(page, service, '/api/stores')).items.filter(({ own }) => own)).toHaveLength(1)
  })

  it('shows what its own list asks on the board and on a product’s page', async () => {
    await openScreen(page, service, '/prices')
    await page.getByText('What our own list asks today.').waitFor()
    const row = page.getByRole('row').filter({ hasText: '$29.90' })
    await row.getByText('full $39.90').first().waitFor()
    await expectSound('own-board')
    await row.getByRole('link').first().click()
    await page.getByRole('heading', { name: 'On sale here: $29.90' }).waitFor()
    await page.getByText('Nothing is reckoned here').waitFor()
    await expectSound('own-product')
  })
})
