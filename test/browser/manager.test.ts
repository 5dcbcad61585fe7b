import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
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

const install = () => readApi<{ energyPriceMinor: number; circuitVoltageV: number; currency: string }>(page, service, '/api/install')

describe('the settings', () => {
  it('take figures typed key by key, and a tariff in hundredths of a cent', async () => {
    await openScreen(page, service, '/settings')
    const voltage = page.getByLabel('Circuit voltage')
    await voltage.press('Control+a')
    await voltage.pressSequentially('230')
    expect(await voltage.inputValue()).toBe('230')
    const price = page.getByLabel('Price of a kilowatt hour')
    await price.press('Control+a')
    await price.pressSequentially('0.1734')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page.getByText('Saved.', { exact: true }).waitFor()
    expect(await install()).toMatchObject({ circuitVoltageV: 230, energyPriceMinor: 17.34 })
    await openScreen(page, service, '/settings')
    expect(await price.inputValue()).toBe('0.1734')
  })

  it('show beside the field what is wrong with it, and keep what was typed', async () => {
    await openScreen(page, service, '/settings')
    const voltage = page.getByLabel('Circuit voltage')
    await voltage.fill('')
    await voltage.press('Tab')
    await page.getByText('Circuit voltage is empty. Fill it in.').waitFor()
    await voltage.fill('23')
    await voltage.press('Tab')
    await page.getByText('The least is 90 V').waitFor()
    expect(await voltage.inputValue()).toBe('23')
    await page.getByLabel('Smallest saving worth waiting for').fill('-3')
    await voltage.press('Tab')
    await page.getByText('A saving of "-3" cannot be waited for. Write 0 or more').waitFor()
  })

  it('lead a new place through its first steps, folded away once it says whom to ask', async () => {
    await openScreen(page, service, '/settings')
    const steps = page.locator('details', { hasText: 'First steps' })
    expect(await steps.getByRole('link', { name: 'People' }).isVisible()).toBe(false)
    await page.getByText('First steps').click()
    const links = await steps.getByRole('link').evaluateAll((all) => all.map((link) => new URL((link as HTMLAnchorElement).href).pathname))
    expect(links).toEqual(['/stores', '/catalog/exchange', '/people', '/settings/backups'])
  })

  it('keep the currency once amounts are stored, and say so at its field', async () => {
    await openScreen(page, service, '/settings')
    await page.getByLabel('Currency').fill('EUR')
    await page.getByRole('button', { name: 'Save the settings' }).click()
    await page.getByText('Leave the currency at USD.').first().waitFor()
    expect((await install()).currency).toBe('USD')
  })
})

it('an import says what cells may hold and reads what a spreadsheet with semicolons writes', async () => {
  await openScreen(page, service, '/catalog/exchange')
  await page.getByLabel('Kind of every row').selectOption('kit')
  await page.getByText('Columns of kit, and what their cells may hold').click()
  await page.getByText('Torvane 150 W x 2; Pellick C-1800').first().waitFor()
  await page.getByLabel('Kind of every row').selectOption('heater')
  await page.getByLabel('Or paste the rows').fill('name;powerW\nHalden Trial 50;50')
  await page.getByRole('button', { name: 'Try it, write nothing' }).click()
  await page.getByText('1 row', { exact: true }).waitFor()
  await page.getByRole('button', { name: 'Write 1 new and 0 changed' }).waitFor()
})

it('a kit’s page names its parts', async () => {
  const { items } = await readApi<{ items: Array<{ id: string; parts: unknown[] }> }>(page, service, '/api/products?kind=kit')
  await openScreen(page, service, `/prices/${items[0]?.id}`)
  const line = page.locator('.screen-head', { hasText: 'in the box:' })
  await line.getByRole('link').nth(1).waitFor()
  // The first link of the heading leads back to all prices.
  expect(
    await line
      .getByRole('link')
      .filter({ hasNotText: /^(Prices|Edit|Post a sighting|Watch this)$/ })
      .count(),
  ).toBe(items[0]?.parts.length)
  expect(await page.getByText('The maker’s figures were not entered.').count()).toBe(0)
})

it('an invitation is listed until it is taken back', async () => {
  await openScreen(page, service, '/people')
  await page.getByLabel('Name of the person to invite').fill('Perran Oake')
  await page.getByRole('button', { name: 'Make a one-use link' }).click()
  await page.getByText('This computer only:').waitFor()
  await page.getByRole('button', { name: 'Take back the invitation of Perran Oake' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Leave it open' }).click()
  await page.getByRole('button', { name: 'Take back the invitation of Perran Oake' }).click()
  await page.getByRole('dialog').getByRole('button', { name: 'Take it back' }).click()
  await page.getByRole('heading', { name: 'Open invitations' }).waitFor({ state: 'detached' })
})

describe('a screen that could not be read', () => {
  it('is read again on "Try again", where it stands', async () => {
    const { page: other, context } = await openPage(browser, { width: 1280, scheme: 'light' })
    await signIn(other, service, 'manager')
    let down = true
    await other.route('**/api/session', (route) => (down ? route.fulfill({ status: 500, body: '' }) : route.continue()))
    await other.goto(`${service.origin}/stores`)
    await other.getByRole('heading', { name: 'This screen could not be shown' }).waitFor()
    await other.getByRole('button', { name: 'Try again' }).click()
    await other.getByRole('heading', { name: 'This screen could not be shown' }).waitFor()
    down = false
    await other.getByRole('button', { name: 'Try again' }).click()
    await other.getByRole('heading', { name: 'Stores', level: 1 }).waitFor()
    expect(new URL(other.url()).pathname).toBe('/stores')
    await context.close()
  })

  it('stays at its address when the page is loaded anew', async () => {
    const { page: other, context } = await openPage(browser, { width: 1280, scheme: 'light' })
    await signIn(other, service, 'manager')
    let down = true
    await other.route('**/api/session', (route) => (down ? route.fulfill({ status: 500, body: '' }) : route.continue()))
    await other.goto(`${service.origin}/stores`)
    await other.getByRole('button', { name: 'Load the page anew' }).waitFor()
    down = false
    await other.getByRole('button', { name: 'Load the page anew' }).click()
    await other.getByRole('heading', { name: 'Stores', level: 1 }).waitFor()
    expect(new URL(other.url()).pathname).toBe('/stores')
    await context.close()
  })
})

it('everyone changes the own password from the menu', async () => {
  const { page: member, context } = await openPage(browser, { width: 390, scheme: 'light' })
  await signIn(member, service, 'member')
  const { signInName, password } = service.signIn('member')
  await member.getByRole('button', { name: 'Menu' }).click()
  await member.getByRole('link', { name: 'Your account' }).click()
  await member.getByLabel('Present password').fill('not the one it is now')
  await member.getByLabel('New password').fill('mallow copper window 63')
  await member.getByRole('button', { name: 'Change the password' }).click()
  await member.getByText('This is not your present password.').first().waitFor()
  await member.getByLabel('Present password').fill(password)
  await member.getByRole('button', { name: 'Change the password' }).click()
  await member.getByText('Changed. You are signed out everywhere else.').waitFor()
  await member.goto(`${service.origin}/sign-in`)
  await member.getByLabel('Sign-in name').fill(signInName)
  await member.getByLabel('Password', { exact: true }).fill('mallow copper window 63')
  await member.getByRole('button', { name: 'Sign in' }).click()
  await member.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
  await context.close()
})
