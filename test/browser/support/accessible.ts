import { AxeBuilder } from '@axe-core/playwright'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** WCAG 2.2 A and AA with axe's own good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']

/** Narrowest screen a page must fit without scrolling sideways (WCAG 1.4.10). */
export const NARROWEST_PX = 320

/**
 * No violation that axe can find; a violation is told with its rule and the elements it is about. What passes is not described, and the results are put
 * together in the page itself rather than in a second, empty one: the same rules look at the same elements in a third of the time. No page of ours has a frame,
 * the only thing that the second page is for.
 */
export async function expectAccessible(page: Page): Promise<void> {
  expect(page.frames(), 'a page without frames').toHaveLength(1)
  const axe = new AxeBuilder({ page })
    .options({ resultTypes: ['violations'] })
    .withTags(TAGS)
    .setLegacyMode()
  const { violations } = await axe.analyze()
  const told = violations.flatMap((violation) =>
    violation.nodes.map((node) => `${violation.id}: ${node.target.join(' ')}: ${node.failureSummary ?? violation.help}`),
  )
  expect(told, `axe on ${page.url()}`).toEqual([])
}

/** Nothing is wider than the window, but for what scrolls in a room of its own; the widest offenders are named. */
export async function expectNoOverflow(page: Page): Promise<void> {
  // A drawing is drawn anew once it is told of its room, a moment after the window has changed.
  let found: string[] = []
  for (let look = 0; look < LOOKS; look++) {
    found = await overflowing(page)
    if (found.length === 0) break
    await page.waitForTimeout(LOOK_MS)
  }
  expect(found, `overflow on ${page.url()}`).toEqual([])
}
const [LOOKS, LOOK_MS] = [20, 100]

const overflowing = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const wide = document.documentElement.clientWidth
    if (document.documentElement.scrollWidth <= wide) return []
    const offenders = [...document.body.querySelectorAll('*')].filter((element) => element.getBoundingClientRect().right > wide + 1)
    return [
      `the page is ${document.documentElement.scrollWidth} px wide in ${wide} px`,
      ...offenders.slice(0, 5).map((element) => `${element.tagName}.${element.getAttribute('class') ?? ''}`),
    ]
  })

/** The same page at 320 px, and back. */
export async function expectReflow(page: Page): Promise<void> {
  const before = page.viewportSize()
  await page.setViewportSize({ width: NARROWEST_PX, height: 800 })
  await expectNoOverflow(page)
  if (before !== null) await page.setViewportSize(before)
}

interface Stop {
  what: string
  outlined: boolean
}

/** More stops than any screen of ours has: a walk that long has been caught in a loop. */
const MOST_STOPS = 400

/** What the Tab key reaches, in order, each with whether its focus can be seen. */
export async function tabStops(page: Page): Promise<Stop[]> {
  await page.evaluate(() => {
    if (document.activeElement instanceof HTMLElement) document.activeElement.blur()
    getSelection()?.removeAllRanges()
  })
  const stops: Stop[] = []
  for (let index = 0; index < MOST_STOPS; index += 1) {
    await page.keyboard.press('Tab')
    const stop = await page.evaluate(() => {
      const element = document.activeElement
      if (element === null || element === document.body || element.hasAttribute('data-walked')) return null
      element.setAttribute('data-walked', '')
      const seen = (candidate: Element | null): boolean =>
        candidate !== null && getComputedStyle(candidate).outlineStyle !== 'none' && getComputedStyle(candidate).outlineWidth !== '0px'
      const within = element.closest('.entry, .choice label, .option, label')
      const name = element.getAttribute('aria-label') ?? element.getAttribute('name') ?? element.textContent?.trim().slice(0, 40) ?? ''
      return { what: `${element.tagName.toLowerCase()} ${name}`.trim(), outlined: seen(element) || seen(within) }
    })
    if (stop === null) break
    stops.push(stop)
  }
  await page.evaluate(() => {
    for (const element of document.querySelectorAll('[data-walked]')) element.removeAttribute('data-walked')
  })
  return stops
}

/** Every stop shows its focus, and the walk ends: nothing holds the keyboard. Gives the stops for a test that knows which it wants. */
export async function expectKeyboard(page: Page): Promise<string[]> {
  const stops = await tabStops(page)
  expect(stops.length, `tab stops on ${page.url()}`).toBeGreaterThan(0)
  expect(stops.length, 'the walk ends').toBeLessThan(MOST_STOPS)
  expect(
    stops.filter((stop) => !stop.outlined).map((stop) => stop.what),
    `focus that cannot be seen on ${page.url()}`,
  ).toEqual([])
  return stops.map((stop) => stop.what)
}

/** Targets smaller than 24 by 24 px (WCAG 2.5.8), links inside a sentence apart. */
export async function smallTargets(page: Page): Promise<string[]> {
  return page.evaluate(() =>
    [...document.querySelectorAll('a, button, input:not([type="hidden"]), select, textarea, summary')].flatMap((element) => {
      const box = element.getBoundingClientRect()
      if (box.width === 0 || box.height === 0 || element.closest('.sr') !== null) return []
      const label = element instanceof HTMLInputElement ? element.closest('label')?.getBoundingClientRect() : undefined
      const inSentence = element.tagName === 'A' && getComputedStyle(element).display === 'inline'
      const [width, height] = [Math.max(box.width, label?.width ?? 0), Math.max(box.height, label?.height ?? 0)]
      return inSentence || (width >= 24 && height >= 24)
        ? []
        : [`${element.tagName} ${element.textContent?.trim().slice(0, 30) ?? ''} ${Math.round(width)} × ${Math.round(height)}`]
    }),
  )
}
