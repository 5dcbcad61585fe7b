import type { Browser, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { expectAccessible, expectReflow } from './support/accessible.ts'
import { LOOKS, openBrowser, openPage } from './support/browser.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'

/** An address of another computer, without TLS; what it asks is answered by the service. */
const ELSEWHERE = 'http://club.example'

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

async function openElsewhere(page: Page): Promise<void> {
  await page.route(`${ELSEWHERE}/**`, async (route) => {
    const { pathname, search } = new URL(route.request().url())
    await route.fulfill({ response: await route.fetch({ url: `${service.origin}${pathname}${search}` }) })
  })
  await page.goto(`${ELSEWHERE}/sign-in`)
  await page.getByRole('button', { name: 'Sign in' }).waitFor()
}

describe('an address that is not safe', () => {
  it.each(LOOKS)('says so in a banner as high as its words, $width px $scheme', async (look) => {
    const { page, context } = await openPage(browser, look)
    await openElsewhere(page)
    const banner = page.locator('.told.warn')
    const words = await banner.getByText(/PUBLIC_URL/).boundingBox()
    const whole = await banner.boundingBox()
    if (!words || !whole) throw new Error('The banner is not there')
    // A heading, two paddings and a gap: no more than three lines of it.
    expect(whole.height - words.height).toBeLessThan(100)
    await expectAccessible(page)
    await expectReflow(page)
    await context.close()
  })
})
