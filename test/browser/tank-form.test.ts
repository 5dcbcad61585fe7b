import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { LOOKS, openBrowser } from './support/browser.ts'
import { openDevice, signIn } from './support/counter.ts'
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

describe('the form of a tank', () => {
  it('fills in the sides of a common size, asks before it replaces what was typed, and keeps a warranty of the product’s own', async () => {
    const { page, context, faults } = await openDevice(browser, { width: 390, height: 844 })
    await signIn(page, service.origin, service.signIn('advisor'))
    await page.goto(`${service.origin}/catalog/new`)
    await page.getByRole('button', { name: 'Tank', exact: true }).click()
    const field = (label: string) => page.getByRole('textbox', { name: label })
    const common = page.getByRole('combobox', { name: /^Common size/ })
    await common.pressSequentially('20 long')
    // 30 by 12 by 12 inches: the trade's own figures, common practice.
    for (const [label, text] of [
      ['Length', '30'],
      ['Width', '12'],
      ['Height', '12'],
    ] as const)
      expect(await field(label).first().inputValue(), label).toBe(text)
    await page.getByText(/^Filled in: 30 × 12 × 12 in\.$/).waitFor()
    await field('Height').first().click()
    await page.keyboard.press('Control+a')
    await page.keyboard.type('13')
    await common.fill('29 gal')
    expect(await field('Height').first().inputValue()).toBe('13')
    await page.getByRole('button', { name: 'Put 30 × 12 × 18 in in place of what is typed' }).click()
    expect(await field('Height').first().inputValue()).toBe('18')
    await common.fill('30 long')
    await page.keyboard.press('Enter')
    await page.getByText('No common size is called “30 long”. Type the sides below.').waitFor()
    await field('Name').fill('Halden 29')
    await field('Warranty').fill('36')
    await expectAccessible(page)
    await expectNoOverflow(page)
    await common.fill('')
    await page.locator('form button[type="submit"]').click()
    await page.waitForURL((url) => !url.pathname.endsWith('/new'))
    const found = (await (await context.request.get(`${service.origin}/api/products?q=Halden%2029&kind=tank`)).json()) as {
      items: Product[]
    }
    expect(found.items.find(({ name }) => name === 'Halden 29')).toMatchObject({
      warrantyMonths: 36,
      // 25.4 mm an inch, international inch of 1959.
      spec: { lengthMm: 762, widthMm: 304.8, heightMm: 457.2 },
    })
    expect(faults).toEqual([])
  })

  it('asks each shape for its own measures, says which is missing and why, and the product page says it too', async () => {
    const { page, context, faults } = await openDevice(browser, { width: 1280, height: 900 })
    await signIn(page, service.origin, service.signIn('advisor'))
    await page.goto(`${service.origin}/catalog/new`)
    await page.getByRole('button', { name: 'Tank', exact: true }).click()
    const field = (label: string) => page.getByRole('textbox', { name: label, exact: true })
    const shape = page.getByLabel('Shape (optional)', { exact: true })
    await field('Name').fill('Halden Bow 90')
    expect(await field('Bow (optional)').count()).toBe(0)
    await shape.selectOption('cylinder')
    await field('Diameter').fill('50 cm')
    await page.keyboard.press('Tab')
    // Coming back by the Tab key has the figure marked, in the reader's own unit: what is typed stands in its place.
    await page.keyboard.press('Shift+Tab')
    expect(await field('Diameter').inputValue()).toBe('19.69')
    await page.keyboard.type('45 cm')
    expect(await field('Diameter').inputValue()).toBe('45 cm')
    expect(await field('Width').count()).toBe(0)
    await shape.selectOption('bow_front')
    expect(await field('Depth of the ends (optional)').count()).toBe(0)
    await field('Length').fill('90 cm')
    await field('Width').fill('40 cm')
    await field('Height').fill('45 cm')
    const missing = page.getByText(/^The bow is not stated: .*a verdict that turns in between stays not known\.$/)
    await missing.waitFor()
    for (const { width, scheme } of LOOKS) {
      await page.setViewportSize({ width, height: 900 })
      await page.emulateMedia({ colorScheme: scheme })
      await expectAccessible(page)
      await expectNoOverflow(page)
    }
    await page.locator('form button[type="submit"]').click()
    await page.getByRole('heading', { level: 1, name: 'Halden Bow 90' }).waitFor()
    await missing.waitFor()
    await expectAccessible(page)
    await page.getByRole('link', { name: 'Edit' }).click()
    await field('Bow (optional)').fill('8 cm')
    await expect.poll(() => missing.count()).toBe(0)
    await page.locator('form button[type="submit"]').click()
    await page.getByText(/bow 3 .* in|bow 8 cm|bow 3\.1/).waitFor()
    expect(await missing.count()).toBe(0)
    const found = (await (await context.request.get(`${service.origin}/api/products?q=Halden%20Bow&kind=tank`)).json()) as {
      items: Product[]
    }
    expect(found.items.find(({ name }) => name === 'Halden Bow 90')?.spec).toEqual({
      shape: 'bow_front', lengthMm: 900, widthMm: 400, heightMm: 450, bowMm: 80,
    }) // prettier-ignore
    expect(faults).toEqual([])
  })
})
