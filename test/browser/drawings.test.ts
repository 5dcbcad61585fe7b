import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { openBrowser, openPage, type Look } from './support/browser.ts'
import { signIn } from './support/counter.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'
import { openScreen } from './support/sign-in.ts'

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

const atScreen = async (look: Look, path: string) => {
  const opened = await openPage(browser, look)
  await signIn(opened.page, service.origin, service.signIn('advisor'))
  await openScreen(opened.page, service, path)
  return opened
}

describe.each<Look>([
  { width: 390, scheme: 'dark' },
  { width: 1440, scheme: 'light' },
])('at $width px, $scheme', (look) => {
  it('a finding’s drawing is opened with the keyboard, says in words what it shows, and is closed again', async () => {
    const { page, context, complaints } = await atScreen(look, `/quotes/${service.demo.showcase.quoteId}`)
    const fold = page.locator('.drawing-fold', { hasText: 'heat against the room' })
    expect(await fold.locator('svg').count()).toBe(0)
    await fold.locator('summary').focus()
    await page.keyboard.press('Enter')
    const drawn = fold.getByRole('img', { name: 'Heat against the temperature of the room' })
    await drawn.waitFor()
    expect(await drawn.locator('desc').textContent()).toMatch(/^With the room at its coldest, .* takes \d+ W to \d+ W; /)
    // Drawn at the width that there is: a unit of the drawing is a pixel, so its letters are 12 px high.
    const scale = await drawn.evaluate((svg) => svg.getBoundingClientRect().width / (svg as unknown as SVGSVGElement).viewBox.baseVal.width)
    expect(scale).toBeCloseTo(1, 1)
    await expectNoOverflow(page)
    await expectAccessible(page)
    await page.keyboard.press('Enter')
    await drawn.waitFor({ state: 'detached' })
    expect(complaints).toEqual([])
    await context.close()
  })

  it('a check that fits is opened with the keyboard, and says why and what it rests on', async () => {
    const { page, context, complaints } = await atScreen(look, `/quotes/${service.demo.showcase.quoteId}`)
    const row = page.getByRole('list', { name: 'Checks that fit' }).getByRole('listitem').filter({ hasText: 'Filter flow' })
    const reason = row.locator('p').first()
    expect(await reason.isVisible()).toBe(false)
    await row.locator('summary').first().focus()
    await page.keyboard.press('Enter')
    await reason.waitFor()
    const reckoned = row.locator('.grounds')
    await reckoned.locator('summary').focus()
    await page.keyboard.press('Enter')
    // The kind of rule is told with its text: a reader is never left to guess whether it is published or ours.
    expect(await reckoned.locator('.note').last().textContent()).toMatch(
      /^Source \((published|common practice|our own reckoning|quoted from memory, unchecked)\): /,
    )
    await reckoned.locator('.formula').waitFor()
    expect(await reckoned.locator('.formula').textContent()).toContain('÷ water in use')
    expect(await reckoned.locator('.went-in').textContent()).toMatch(/rated flow .* gal\/h.*entered with the product/)
    await expectAccessible(page)
    await expectNoOverflow(page)
    await expectAccessible(page)
    expect(complaints).toEqual([])
    await context.close()
  })

  it('who has never heard of a joist answers by the pictures, or does not know', async () => {
    const { page, context, complaints } = await atScreen(look, '/quotes/new')
    const unknown = page.getByRole('group', { name: 'What is the floor?' }).getByRole('radio', { name: /^I don’t know/ })
    expect(await unknown.isChecked()).toBe(true)
    expect(await page.getByText('They are called joists.').count()).toBe(0)
    await unknown.focus()
    await page.keyboard.press('ArrowUp')
    await page.keyboard.press('ArrowUp')
    expect(await page.getByRole('radio', { name: /^Wood/ }).isChecked()).toBe(true)
    await page.getByText('They are called joists.').waitFor()
    const span = page.getByLabel('Span', { exact: true })
    await span.fill('12 ft')
    await span.blur()
    const notKnown = page.getByLabel('Span: I don’t know')
    expect(await notKnown.isChecked()).toBe(false)
    await notKnown.check()
    expect(await span.inputValue()).toBe('')
    await expectNoOverflow(page)
    await expectAccessible(page)
    expect(complaints).toEqual([])
    await context.close()
  })
})
