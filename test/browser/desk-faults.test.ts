import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { emptyDraft } from '../../core/quote/empty-draft.ts'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
import { openDevice, saved, signIn, type Watched } from './support/counter.ts'
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

const api = (path: string): string => `${service.origin}/api${path}`
const quoteOf = async ({ context }: Watched, id: string): Promise<QuoteView> =>
  (await (await context.request.get(api(`/quotes/${id}`))).json()) as QuoteView

/** The showcase's builds as a draft of their own, changed, and the desk on it. */
async function deskOn(
  change: (of: QuoteView['draft'], kindOf: (productId: string) => string | undefined) => QuoteView['draft'],
): Promise<Watched & { id: string }> {
  const watched = await openDevice(browser, { width: 1440, height: 900 })
  await signIn(watched.page, service.origin, service.signIn('advisor'))
  const showcase = await quoteOf(watched, service.demo.showcase.quoteId)
  const data = {
    customerId: showcase.customer.id,
    draft: change(showcase.draft, (id) => showcase.products.find((product) => product.id === id)?.kind),
  }
  const made = await watched.context.request.post(api('/quotes'), { data, headers: { origin: service.origin } })
  expect(made.status(), await made.text()).toBe(201)
  const { id } = (await made.json()) as QuoteView
  await watched.page.goto(`${service.origin}/quotes/${id}`)
  await watched.page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
  return { ...watched, id }
}
const firstBuild = (page: Page) => page.getByRole('button', { name: /^Name or remove build A/ })

describe('at the desk', () => {
  it('a discount of more than the goods is told at its field with the key that makes it so, and beside the totals', async () => {
    const { page, faults } = await deskOn((draft) => ({ ...draft, discount: null }))
    await page.getByLabel('Discount', { exact: true }).selectOption('amount')
    const field = page.getByLabel('Taken off the goods', { exact: true })
    await field.click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('1')
    expect(await page.getByText(/^More than the goods it is for/).count()).toBe(0)
    await page.keyboard.type('00000')
    await page.getByText(/^More than the goods it is for: held at \$[\d,.]+ in build A/).waitFor()
    // Still being typed: the totals know of nothing yet.
    expect(await page.getByText(/discount held at its goods/).count()).toBe(0)
    await page.keyboard.press('Tab')
    await page
      .getByText(/^discount held at its goods, \$/)
      .first()
      .waitFor()
    await page.getByText(/^More than the goods it is for/).waitFor()
    await expectAccessible(page)
    await expectNoOverflow(page)
    expect(faults).toEqual([])
  })

  it('Enter in a build’s name does what its button does: it closes, with the name kept', async () => {
    const watched = await deskOn((draft) => draft)
    const { page, id } = watched
    await firstBuild(page).click()
    const dialog = page.getByRole('dialog', { name: 'What is build A called?' })
    await dialog.getByLabel('Name', { exact: true }).fill('River bend')
    await page.keyboard.press('Enter')
    await dialog.waitFor({ state: 'hidden' })
    await saved(page)
    expect((await quoteOf(watched, id)).draft.builds[0]?.name).toBe('River bend')
    await firstBuild(page).click()
    await dialog.getByLabel('Why this one', { exact: true }).focus()
    await page.keyboard.press('Enter')
    await dialog.waitFor({ state: 'hidden' })
  })

  it('a build without a tank is not offered as the suggestion, and the panel says which', async () => {
    const { page } = await deskOn((draft) => ({
      ...draft,
      suggestion: null,
      builds: [...draft.builds.slice(0, 1), ...emptyDraft('bare').builds],
    }))
    expect(await page.getByRole('button', { name: 'Suggest build A' }).count()).toBe(1)
    expect(await page.getByRole('button', { name: 'Suggest build B' }).count()).toBe(0)
    const panel = page.getByRole('region', { name: 'We suggest' })
    await panel.getByText('Without a tank, so not to be suggested yet: B.').waitFor()
    expect(await panel.getByLabel('Build', { exact: true }).locator('option').allTextContents()).toHaveLength(2)
  })

  it('a finding about the bed opens the slot with the packs that bring it, and puts them in when they are pressed', async () => {
    const watched = await deskOn((draft, kindOf) => ({
      ...draft,
      need: { ...draft.need, exact: { ...draft.need.exact, substrateDepthMm: 60 } },
      builds: draft.builds.slice(0, 1).map((build) => ({
        ...build,
        lines: build.lines.filter((line) => line.answer !== 'buy' || kindOf(line.productId) !== 'substrate'),
      })),
      suggestion: null,
    }))
    const { page, id, faults } = watched
    await page.getByRole('button', { name: 'Find packs of substrate' }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('heading', { level: 2 }).waitFor()
    expect(await dialog.locator('.lines > li').count()).toBe(0)
    await dialog.getByText('What is missing, at the least cost').waitFor()
    await dialog.getByRole('button', { name: 'Put these in' }).click()
    expect(await dialog.locator('.lines > li').count()).toBeGreaterThan(0)
    await dialog.getByRole('button', { name: 'Done' }).click()
    await saved(page)
    const { draft, products } = await quoteOf(watched, id)
    const bags = draft.builds[0]!.lines.flatMap((line) => (line.answer === 'buy' ? [line] : [])).filter(
      ({ productId }) => products.find((product) => product.id === productId)?.kind === 'substrate',
    )
    expect(bags.reduce((sum, { quantity }) => sum + quantity, 0)).toBeGreaterThan(1)
    expect(await page.getByRole('button', { name: 'Find packs of substrate' }).count()).toBe(0)
    expect(faults).toEqual([])
  })

  it('what keeps a quote from being issued leads to its field, and to the tank of the build that lacks one', async () => {
    const { page, faults } = await deskOn((draft) => ({
      ...draft,
      builds: [...draft.builds.slice(0, 1), ...emptyDraft('bare').builds],
      suggestion: null,
      discount: { kind: 'amount', amountMinor: 500, storeId: null, reason: '' },
    }))
    const dialog = page.getByRole('dialog')
    const issue = page.getByRole('button', { name: /^Issue/ }).first()
    await issue.click()
    await dialog.getByText('Say what the discount is for; the customer reads it beside the figure.').waitFor()
    await expectAccessible(page)
    await dialog.getByRole('button', { name: 'Go to the reason of the discount' }).click()
    await dialog.waitFor({ state: 'hidden' })
    await expect.poll(() => page.getByLabel('Reason', { exact: true }).evaluate((field) => field === document.activeElement)).toBe(true)
    await issue.click()
    await dialog.getByRole('button', { name: 'Go to the tank of build B' }).click()
    await dialog.getByRole('combobox', { name: 'Find a product: Hold water', exact: true }).waitFor()
    await page.keyboard.press('Escape')
    // Nothing is missed in a build without a tank but the tank.
    await page.getByRole('heading', { name: 'Sizing report for B' }).waitFor()
    const report = page.getByRole('region', { name: 'Sizing report for B' })
    await report.getByText('No tank is chosen yet. Begin with it: everything else is checked against it.').waitFor()
    expect(await report.getByText('does not fit').count()).toBe(0)
    expect(faults).toEqual([])
  })

  it('a copy is called after its tank with its letter, never by a number, and so it reaches the paper', async () => {
    const watched = await deskOn((draft) => ({
      ...draft,
      suggestion: null,
      builds: draft.builds.slice(0, 1).map((build) => ({ ...build, name: '' })),
    }))
    const { page, id } = watched
    await page.getByRole('button', { name: 'Copy build A' }).click()
    await saved(page)
    const { draft } = await quoteOf(watched, id)
    expect(draft.builds.map(({ name }) => name)).toEqual(['', ''])
    const heads = await page.locator('.pick .name').allTextContents()
    expect(heads).toHaveLength(2)
    expect(heads[1]).toBe(`B ${heads[0]?.slice(2) ?? ''}, option B`)
    await firstBuild(page).click()
    const name = page.getByRole('dialog').getByLabel('Name', { exact: true })
    expect(await name.getAttribute('placeholder')).toBe(heads[0]?.slice(2))
    await expectAccessible(page)
  })
})
