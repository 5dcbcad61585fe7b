import type { Browser, BrowserContext, Locator, Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { openBrowser } from './support/browser.ts'
import { openDevice, signIn, type Watched } from './support/counter.ts'
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

const DEVICES = [
  { name: 'a phone', width: 390, height: 844, phone: true, cents: 21 },
  { name: 'a desk', width: 1280, height: 900, phone: false, cents: 22 },
] as const
type Device = (typeof DEVICES)[number]

async function boxOf(control: Locator): Promise<{ x: number; y: number; width: number; height: number }> {
  await control.scrollIntoViewIfNeeded()
  const box = await control.boundingBox()
  if (box === null) throw new Error('There is nothing to press')
  return box
}
/** How far down the page it stands, scrolled or not. */
const depthOf = (control: Locator): Promise<number> => control.evaluate((element) => element.getBoundingClientRect().top + scrollY)

/** One press in the middle of where it stands now, with the finger or the mouse; nothing waits for it to stand still or presses again. */
async function pressOnce(page: Page, control: Locator, { phone }: Device): Promise<void> {
  const { x, y, width, height } = await boxOf(control)
  if (phone) await page.touchscreen.tap(x + width / 2, y + height / 2)
  else await page.mouse.click(x + width / 2, y + height / 2)
}

/** The settings with a price that was refused, and the sentence that says so above the button. */
async function openRefused(device: Device): Promise<Watched & { price: Locator; save: Locator }> {
  const watched = await openDevice(browser, device)
  const { page } = watched
  await signIn(page, service.origin, service.signIn('manager'))
  await page.goto(`${service.origin}/settings`)
  const price = page.getByLabel('Price of a kilowatt hour')
  await price.fill('dear')
  await price.blur()
  await page.getByText('A field above needs another look.').waitFor()
  return { ...watched, price, save: page.getByRole('button', { name: 'Save the settings' }) }
}
const stored = async (context: BrowserContext): Promise<{ energyPriceMinor: number; version: number }> =>
  (await (await context.request.get(`${service.origin}/api/install`)).json()) as { energyPriceMinor: number; version: number }

describe.each(DEVICES)('on $name', (device) => {
  it('the first press of a button counts that moves up as the corrected field is left', async () => {
    const { page, context, price, save, faults } = await openRefused(device)
    const before = await stored(context)
    await price.fill(`0.${device.cents}`)
    const depth = await depthOf(save)
    await pressOnce(page, save, device)
    await page.getByText('Saved.').waitFor()
    // Else this would prove nothing.
    expect(await depthOf(save)).toBeLessThan(depth)
    expect(await stored(context)).toMatchObject({ energyPriceMinor: device.cents, version: before.version + 1 })
    expect(faults).toEqual([])
    await context.close()
  })
})

it('a press that is drawn away from the button before it is let go counts for nothing', async () => {
  const { page, context, price, save } = await openRefused(DEVICES[1])
  const { version } = await stored(context)
  await price.fill('0.23')
  const { x, y, width } = await boxOf(save)
  await page.mouse.move(x + 10, y + 10)
  await page.mouse.down()
  await page.mouse.move(x + width + 80, y + 10)
  await page.mouse.up()
  // Whatever that sent would come before this.
  await price.fill('0.24')
  await save.press('Enter')
  await page.getByText('Saved.').waitFor()
  expect(await stored(context)).toMatchObject({ energyPriceMinor: 24, version: version + 1 })
  await context.close()
})
