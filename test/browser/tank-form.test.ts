import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Product } from '../../core/catalog/product.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
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
})
