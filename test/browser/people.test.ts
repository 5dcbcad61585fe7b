import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
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

/** A picture of a state, where somebody asks for pictures. */
async function look(name: string): Promise<void> {
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

/** Signs in in a browser of its own, as on another device. */
async function another(role: 'member' | 'manager'): Promise<Page> {
  const other = (await openPage(browser, { width: 390, scheme: 'light' })).page
  await signIn(other, service, role)
  return other
}

describe('the account screen', () => {
  it('lists where one is signed in, and signs a lost device out', async () => {
    const phone = await another('manager')
    const tablet = await another('manager')
    await openScreen(page, service, '/account')
    const section = page.getByRole('region', { name: 'Where you are signed in' })
    await section.getByText('Computer, this one').waitFor()
    expect(await section.getByRole('row').count()).toBe(4)
    await look('account')
    await expectAccessible(page)
    await expectReflow(page)
    await section.getByRole('button', { name: 'Sign out everywhere else' }).click()
    await section.getByRole('row').nth(2).waitFor({ state: 'detached' })
    for (const ended of [phone, tablet]) {
      await ended.goto(`${service.origin}/account`)
      await ended.waitForURL((url) => url.pathname === '/sign-in')
      await ended.context().close()
    }
  })
})

describe('a forgotten password', () => {
  it('is set anew with the link a manager made, and the person is in', async () => {
    await openScreen(page, service, '/people')
    await look('people')
    const { items } = await readApi<{ items: Array<{ name: string; role: string; signInName: string }> }>(page, service, '/api/people')
    const member = items.find(({ role }) => role === 'member')
    await page.getByRole('button', { name: `New password for ${member?.name}` }).click()
    await look('password-ask')
    await page.getByRole('button', { name: 'Make a one-use link' }).last().click()
    const link = await page.getByLabel('One-use link').inputValue()
    await look('password-link')
    await expectAccessible(page)
    await page.getByRole('button', { name: 'I have sent it' }).click()
    const visitor = (await openPage(browser, { width: 390, scheme: 'light' })).page
    await visitor.goto(link)
    await visitor.getByRole('heading', { name: 'Set a new password' }).waitFor()
    expect(await visitor.getByLabel('Sign-in name').inputValue()).toBe(member?.signInName)
    await expectAccessible(visitor)
    if (process.env['LOOK_DIR'] !== undefined)
      await visitor.screenshot({ path: `${process.env['LOOK_DIR']}/new-password.png`, fullPage: true })
    await visitor.getByLabel('New password').fill('moss compass ladder 81')
    await visitor.getByRole('button', { name: 'Set the password and sign in' }).click()
    await visitor.waitForURL((url) => url.pathname === '/prices')
    await visitor.goto(link)
    await visitor.getByText('This link is used up or over').waitFor()
    await visitor.context().close()
  })
})

describe('what waits', () => {
  it('is accepted by a second person, or withdrawn with a reason', async () => {
    await openScreen(page, service, '/people/waiting')
    const table = page.getByRole('table', { name: 'Sightings that wait, newest first' })
    const before = await table.getByRole('row').count()
    expect(before).toBeGreaterThan(1)
    await look('waiting')
    await expectAccessible(page)
    await expectReflow(page)
    await table
      .getByRole('button', { name: /^Withdraw/ })
      .first()
      .click()
    await look('waiting-withdraw')
    await expectAccessible(page)
    await page.getByLabel('Reason').fill('a tag of the shelf above')
    await page.getByRole('button', { name: 'Withdraw it' }).click()
    await table
      .getByRole('row')
      .nth(before - 1)
      .waitFor({ state: 'detached' })
  })

  it('of one member is taken back with its number told, and put back', async () => {
    await openScreen(page, service, '/people/waiting')
    const section = page.getByRole('region', { name: 'All sightings of one member' })
    const choice = section.getByLabel('Member')
    const name = (await choice.locator('option').nth(1).textContent()) ?? ''
    const count = /(\d+) sighting/.exec(name)?.[1] ?? ''
    await choice.selectOption({ index: 1 })
    await section.getByRole('button', { name: `Take back ${count} sighting` }).click()
    await look('undo-ask')
    await page.getByRole('button', { name: `Take back ${count}`, exact: true }).click()
    const back = section.getByRole('button', { name: /^Put back the sightings of/ })
    await back.waitFor()
    await look('undone')
    await expectAccessible(page)
    await back.click()
    await section.getByText(/^put back /).waitFor()
  })
})

describe('the trail', () => {
  it('tells what was just done in sentences, filtered by what it is about', async () => {
    await openScreen(page, service, '/people/trail')
    await page
      .getByText(/put back the sightings of/)
      .first()
      .waitFor()
    await page
      .getByText(/made a link that sets a new password for/)
      .first()
      .waitFor()
    await look('trail')
    await expectAccessible(page)
    await expectReflow(page)
    await page.getByLabel('About').selectOption('quote')
    await page.getByText('Nothing was changed like that.').waitFor()
    await look('trail-empty')
  })
})

describe('links', () => {
  it('to a quote are ended and made anew at the desk, to a setup in the list', async () => {
    const { rows } = await readApi<{ rows: Array<{ id: string; state: string }> }>(page, service, '/api/quotes')
    const issued = rows.find(({ state }) => state === 'issued')
    await openScreen(page, service, `/quotes/${issued?.id}`)
    const field = page.getByLabel('Quote link, for the customer')
    const before = await field.inputValue()
    await page.getByRole('button', { name: 'New quote link' }).click()
    await look('renew-quote')
    await page.getByRole('button', { name: 'Make a new link' }).click()
    await page.getByRole('button', { name: 'New quote link' }).waitFor()
    await expect.poll(() => field.inputValue()).not.toBe(before)
    expect((await page.request.get(before)).status()).toBe(404)
    expect((await page.request.get(await field.inputValue())).status()).toBe(200)
    await openScreen(page, service, '/setups')
    await look('setups')
    const open = page.locator('.setup-link a').first()
    const hung = (await open.getAttribute('href')) ?? ''
    await page
      .getByRole('button', { name: /^New link/ })
      .first()
      .click()
    await expectAccessible(page)
    await page.getByRole('button', { name: 'Make a new link' }).click()
    await expect.poll(() => open.getAttribute('href')).not.toBe(hung)
    expect((await page.request.get(hung)).status()).toBe(404)
  })
})

describe('a role', () => {
  const roleOf = async (name: string): Promise<string | undefined> =>
    (await readApi<{ items: Array<{ name: string; role: string }> }>(page, service, '/api/people')).items.find((one) => one.name === name)
      ?.role

  it('is asked about before it changes, stays where one leaves it, and says why it cannot be changed', async () => {
    await openScreen(page, service, '/people')
    const list = page
      .getByRole('combobox', { name: /^Role of / })
      .and(page.locator(':has(option[value="member"]:checked)'))
      .first()
    const name = (await list.getAttribute('aria-label'))?.replace('Role of ', '') ?? ''
    const asked = page.getByRole('dialog', { name: `Make ${name} an advisor?` })
    await list.selectOption('advisor')
    await asked.getByText('is signed out everywhere').waitFor()
    await look('role-question')
    await expectAccessible(page)
    await expectReflow(page)
    await asked.getByRole('button', { name: 'Leave as member' }).click()
    expect(await roleOf(name)).toBe('member')

    await page.route('**/api/people/*', (route) => (route.request().method() === 'GET' ? route.continue() : route.fulfill({ status: 503 })))
    await page.getByRole('combobox', { name: `Role of ${name}` }).selectOption('advisor')
    await asked.getByRole('button', { name: 'Change member to advisor' }).click()
    await asked.getByRole('alert').waitFor()
    await expectAccessible(page)
    expect(await roleOf(name)).toBe('member')
    await page.unroute('**/api/people/*')

    await asked.getByRole('button', { name: 'Change member to advisor' }).click()
    await asked.waitFor({ state: 'detached' })
    expect(await roleOf(name)).toBe('advisor')
  })
})

describe('what makes a manager', () => {
  const question = () => page.getByRole('dialog', { name: 'Is it you?' })

  it('asks for the password once more, goes on by itself, and does not ask at the next one', async () => {
    await openScreen(page, service, '/people')
    await page.getByLabel('Name of the person to invite').fill('Ole Brandt')
    await page.getByRole('group', { name: 'As' }).getByText('Manager').click()
    await page.getByRole('button', { name: 'Make a one-use link' }).click()
    await question().waitFor()
    expect(
      await question()
        .getByLabel('Your password')
        .evaluate((field) => field === document.activeElement),
    ).toBe(true)
    await look('proof')
    await expectAccessible(page)
    await expectReflow(page)

    await question().getByRole('button', { name: 'Leave it' }).click()
    await page.getByRole('alert').getByText('Your password is needed once more').waitFor()
    await look('proof-left')
    expect(await page.getByLabel('One-use link').count()).toBe(0)

    await page.getByRole('button', { name: 'Make a one-use link' }).click()
    await question().getByLabel('Your password').fill('not the password at all')
    await page.keyboard.press('Enter')
    await question().getByText('This is not your password').waitFor()
    await look('proof-wrong')
    await expectAccessible(page)
    await question().getByLabel('Your password').fill(service.signIn('manager').password)
    await page.keyboard.press('Enter')
    await page.getByLabel('One-use link').waitFor()
    await question().waitFor({ state: 'detached' })

    await page.getByLabel('Name of the person to invite').fill('Ada Lindqvare')
    await page.getByRole('button', { name: 'Make a one-use link' }).click()
    await page.getByRole('table', { name: 'Open invitations' }).getByText('Ada Lindqvare').waitFor()
    expect(await question().count()).toBe(0)
  })

  it('is asked over the question about a role, which is then done', async () => {
    const other = (await openPage(browser, { width: 390, scheme: 'dark' })).page
    await signIn(other, service, 'manager')
    await openScreen(other, service, '/people')
    const list = other
      .getByRole('combobox', { name: /^Role of / })
      .and(other.locator(':has(option[value="advisor"]:checked)'))
      .first()
    const name = (await list.getAttribute('aria-label'))?.replace('Role of ', '') ?? ''
    await list.selectOption('manager')
    await other.getByRole('button', { name: 'Change advisor to manager' }).click()
    const asked = other.getByRole('dialog', { name: 'Is it you?' })
    await asked.getByLabel('Your password').fill(service.signIn('manager').password)
    if (process.env['LOOK_DIR'] !== undefined) await other.screenshot({ path: `${process.env['LOOK_DIR']}/proof-over-role.png` })
    await asked.getByRole('button', { name: 'Go on' }).click()
    await other.getByRole('dialog', { name: `Make ${name} a manager?` }).waitFor({ state: 'detached' })
    const { items } = await readApi<{ items: Array<{ name: string; role: string }> }>(page, service, '/api/people')
    expect(items.find((one) => one.name === name)?.role).toBe('manager')
    await other.context().close()
  })
})
