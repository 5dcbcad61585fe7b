import { mkdtemp } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { openBrowser } from '../browser/support/browser.ts'
import { makeDemoFolder } from '../browser/support/demo-folder.ts'
import { serveDemo } from '../browser/support/demo-service.ts'
import { median, type Measurement } from './measurement.ts'

const KEYS = 60
const WARM_UP = 10

/** Types into a field key by key; each time, in ms, from the key to the screen's new content being in place. Runs in the page. */
async function keyTimes(page: Page, label: string, keys: number): Promise<number[]> {
  const field = page.getByLabel(label, { exact: true }).first()
  return field.evaluate(async (element, count) => {
    const input = element as HTMLInputElement
    const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set
    const times: number[] = []
    for (let key = 0; key < count; key += 1) {
      const text = `hall ${'x'.repeat(key % 20)}`
      const begun = performance.now()
      set?.call(input, text)
      input.dispatchEvent(new InputEvent('input', { bubbles: true, inputType: 'insertText' }))
      // What an input changes is drawn before the next task.
      await Promise.resolve()
      times.push(performance.now() - begun)
      await new Promise((done) => requestAnimationFrame(() => setTimeout(done)))
    }
    return times
  }, keys)
}

/**
 * A key in the need of a quote with three builds, on which every report and every tier depends, against a key in its title, on which none does: in one
 * page, in turn.
 */
export default async function deskKeystroke(): Promise<Measurement[]> {
  const service = await serveDemo(await makeDemoFolder(await mkdtemp(join(tmpdir(), 'driploop-demo-'))))
  const browser = await openBrowser()
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, reducedMotion: 'reduce' })
    const { signInName, password } = service.signIn('advisor')
    await page.goto(`${service.origin}/sign-in`)
    await page.getByLabel('Sign-in name').fill(signInName)
    await page.getByLabel('Password', { exact: true }).fill(password)
    await page.getByRole('button', { name: 'Sign in', exact: true }).click()
    await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
    await page.goto(`${service.origin}/quotes/${service.demo.showcase.quoteId}`)
    await page.getByRole('button', { name: 'Change the need' }).click()
    const [values, baselines]: [number[], number[]] = [[], []]
    const [inNeed, inTitle] = ['Where it stands', 'Title, as the customer reads it']
    await keyTimes(page, inNeed, WARM_UP)
    await keyTimes(page, inTitle, WARM_UP)
    for (let round = 0; round < 3; round += 1) {
      values.push(...(await keyTimes(page, inNeed, KEYS)))
      baselines.push(...(await keyTimes(page, inTitle, KEYS)))
    }
    const [value, baseline] = [median(values), median(baselines)]
    return [{ name: 'desk.keystroke', value, unit: 'ms', baseline, ratio: value / baseline }]
  } finally {
    await browser.close()
    await service.stop()
  }
}
