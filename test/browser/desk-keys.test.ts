import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { QuoteView } from '../../core/quote/quote-view.ts'
import { expectAccessible } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
import { fillSlot, openDevice, PATIENCE_MS, saved, signIn, type Watched } from './support/counter.ts'
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

/** A fresh quote by the keys alone, on the desk with nothing in it yet. */
async function atFreshDesk(name: string): Promise<Watched> {
  const watched = await openDevice(browser, { width: 1440, height: 900 })
  const { page } = watched
  await signIn(page, service.origin, service.signIn('advisor'))
  await page.goto(`${service.origin}/quotes`)
  await page.getByRole('link', { name: 'New quote' }).click()
  await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toBe('Name')
  await page.keyboard.type(name)
  await page.getByLabel('How big').fill('36 in')
  await page.keyboard.press('Enter')
  await page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
  return watched
}

/** What has the focus, by its label or its words. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const element = document.activeElement
    const label = element instanceof HTMLInputElement ? element.labels?.[0]?.textContent : element?.textContent
    return element === document.body ? 'nothing' : (label ?? '').trim()
  })
const quoteAt = async ({ page, context }: Watched): Promise<QuoteView> =>
  (await (await context.request.get(`${service.origin}/api${new URL(page.url()).pathname}`)).json()) as QuoteView
const questionOf = (page: Page): Promise<string | null> => page.getByRole('dialog').getByRole('heading').textContent()

describe('a build from the keys alone', () => {
  it('goes from one open slot to the next, shows what it took, and never loses the focus', async () => {
    const watched = await atFreshDesk('Orla Quenby')
    const { page } = watched
    await page.keyboard.press('n')
    for (const slot of ['Hold water', 'Filter', 'Heat']) {
      await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toBe(`Find a product: ${slot}`)
      expect(await questionOf(page)).toBe(`What fills “${slot}” in A?`)
      await page.keyboard.press('Enter')
    }
    await expect.poll(() => questionOf(page), { timeout: PATIENCE_MS }).toContain('Temperature')
    await page.keyboard.press('Escape')
    await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toMatch(/^Temperature, build A:/)
    await page.keyboard.press('ArrowDown')
    expect(await focused(page)).toMatch(/^Carry the tank, build A:/)
    await saved(page)
    const { draft, products } = await quoteAt(watched)
    const kinds = draft.builds[0]?.lines.map((line) => line.answer === 'buy' && products.find((one) => one.id === line.productId)?.kind)
    expect(kinds).toEqual(['tank', 'filter', 'heater'])
    await page.keyboard.press('f')
    await expect
      .poll(() => page.locator('.fill-rest').first().textContent(), { timeout: PATIENCE_MS })
      .toContain('Filled with the cheapest that fits')
    await page.keyboard.press('k')
    await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toMatch(/, option B/)
    await page.keyboard.press('s')
    await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toBe('Because')
    await saved(page)
    const both = (await quoteAt(watched)).draft
    expect(both.suggestion?.buildId).toBe(both.builds[1]?.id)
    await expectAccessible(page)
    await watched.context.close()
  })

  it('lists every key, and a single letter does nothing once they are switched off, also after a reload', async () => {
    const { page, context } = await atFreshDesk('Wim Harrow')
    const keys = page.getByRole('region', { name: 'Keys' })
    await keys.getByText('next open slot').waitFor()
    await keys.getByLabel('Single letters').uncheck()
    await page.reload()
    await page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
    expect(await page.getByRole('region', { name: 'Keys' }).getByText('next open slot').count()).toBe(0)
    await page.keyboard.press('n')
    await page.keyboard.press('w')
    expect(await page.getByRole('dialog').count()).toBe(0)
    await page.getByRole('region', { name: 'Keys' }).getByLabel('Single letters').check()
    await page.keyboard.press('w')
    await page.getByRole('heading', { name: 'Sizing report for B' }).waitFor()
    await context.close()
  })

  it('a build is removed once it was asked for, and the focus goes to one that is left', async () => {
    const { page, context } = await atFreshDesk('Bo Wexcombe')
    await page.keyboard.press('w')
    await page.getByRole('button', { name: 'Name or remove build B' }).click()
    await page.getByRole('button', { name: 'Remove this build' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Remove build B', exact: true }).click()
    await expect.poll(() => page.locator('.builds thead th').count(), { timeout: PATIENCE_MS }).toBe(1)
    await expect.poll(() => focused(page), { timeout: PATIENCE_MS }).toContain('No tank yet')
    await context.close()
  })
})

describe('what fills a build', () => {
  it('the rest is filled with what has a price and fails no check, and taken back whole', async () => {
    const watched = await atFreshDesk('Tamsin Orde')
    const { page } = watched
    await fillSlot(page, 'Hold water', 'A', 'Wendlemere 40', 'Wendlemere 40 breeder')
    await page.getByRole('button', { name: 'Fill the rest of build A' }).click()
    await page.getByRole('button', { name: /^Take it back/ }).waitFor()
    await saved(page)
    const lines = (await quoteAt(watched)).draft.builds[0]?.lines ?? []
    expect(lines.length).toBeGreaterThan(7)
    expect(await page.locator('.cnt td').first().textContent()).not.toContain('does not fit')
    expect(await page.locator('tfoot .sum td').first().textContent()).toMatch(/^\$[\d,]+\.\d\d$/)
    await page.getByRole('button', { name: /^Take it back/ }).click()
    await saved(page)
    expect((await quoteAt(watched)).draft.builds[0]?.lines).toHaveLength(1)
    await watched.context.close()
  })

  it('a heater in addition to the kit’s stands beside it; in place of it, the kit’s is set aside', async () => {
    const watched = await atFreshDesk('Ezra Linnet')
    const { page } = watched
    await fillSlot(page, 'Hold water', 'A', 'Wendlemere Start 40', 'Wendlemere Start 40')
    const heat = page.getByRole('button', { name: /^Heat, build A:/ })
    await heat.first().click()
    const dialog = page.getByRole('dialog')
    await dialog.getByText('In addition to it', { exact: true }).click()
    await dialog.getByRole('combobox', { name: 'Find a product: Heat' }).fill('Quarrick Twin 100')
    await expect
      .poll(() => dialog.getByRole('listbox', { name: 'Products' }).getByRole('option', { selected: true }).textContent(), {
        timeout: PATIENCE_MS,
      })
      .toContain('Quarrick Twin 100')
    await dialog.getByRole('combobox', { name: 'Find a product: Heat' }).press('Enter')
    await expect
      .poll(() => page.getByRole('button', { name: /^Heat, build A:.*Quarrick Twin 100/ }).count(), { timeout: PATIENCE_MS })
      .toBe(1)
    await page.keyboard.press('Escape')
    const texts = (): Promise<string> => heat.allTextContents().then((all) => all.join(' | '))
    expect(await texts()).not.toContain('not used')
    await heat.filter({ hasText: 'Quarrick Twin 100' }).click()
    await dialog.locator('.line-form').getByText('In place of the kit’s', { exact: true }).click()
    await dialog.getByRole('button', { name: 'Done' }).click()
    await expect.poll(texts, { timeout: PATIENCE_MS }).toContain('not used')
    await saved(page)
    const [, line] = (await quoteAt(watched)).draft.builds[0]?.lines ?? []
    expect(line).not.toHaveProperty('besideKit', true)
    await watched.context.close()
  })
})
