import type { Browser } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { QuoteListRow, QuoteView } from '../../core/quote/quote-view.ts'
import type { RevisionDocument } from '../../core/quote/revision.ts'
import { expectAccessible, expectNoOverflow } from './support/accessible.ts'
import { openBrowser } from './support/browser.ts'
import { openDevice, PATIENCE_MS, saved, signIn, type Watched } from './support/counter.ts'
import { startDemoService, type DemoService } from './support/demo-service.ts'

let service: DemoService
let browser: Browser
let advisor: Watched
let lapsed: QuoteListRow

const read = async <Value>(path: string): Promise<Value> => {
  const answer = await advisor.context.request.get(service.origin + path)
  if (!answer.ok()) throw new Error(`${path}: ${answer.status()}`)
  return (await answer.json()) as Value
}

beforeAll(async () => {
  service = await startDemoService()
  browser = await openBrowser()
  advisor = await openDevice(browser, { width: 1440, height: 900 })
})
afterAll(async () => {
  await browser?.close()
  await service?.stop()
})

describe('a quote that lapsed', () => {
  it('is requoted at today’s prices as a new version, told in words, and the old one stays what it was', async () => {
    const { page } = advisor
    await signIn(page, service.origin, service.signIn('advisor'))
    const { rows } = await read<{ rows: QuoteListRow[] }>('/api/quotes?state=lapsed')
    if (!rows[0]) throw new Error('The scenario has a quote that lapsed')
    lapsed = rows[0]
    const before = await read<RevisionDocument>(`/api/quotes/${lapsed.id}/revisions/1`)
    await page.goto(`${service.origin}/quotes/${lapsed.id}`)
    await page.getByRole('button', { name: 'Requote at today’s prices' }).click()
    const changes = page.getByRole('region', { name: 'What changed' })
    await changes.getByRole('rowheader', { name: 'Stands until' }).waitFor()
    await expectAccessible(page)
    await saved(page)
    const draft = await read<QuoteView>(`/api/quotes/${lapsed.id}`)
    expect(draft.state).toBe('lapsed')
    expect(draft.draft.standsUntil! > service.today).toBe(true)
    await page.getByRole('button', { name: 'Issue version 2' }).click()
    await page.getByRole('dialog').getByRole('button', { name: 'Issue version 2' }).click()
    await page.getByRole('heading', { name: /^Version 2, issued/ }).waitFor()

    const [first, second] = [
      await read<RevisionDocument>(`/api/quotes/${lapsed.id}/revisions/1`),
      await read<RevisionDocument>(`/api/quotes/${lapsed.id}/revisions/2`),
    ]
    expect(first).toEqual(before)
    expect(second.inputs.asOf).toBe(service.today)
    const [was, now] = [first, second].map((document) => document.builds[0]?.cost.today)
    if (!was?.complete || !now?.complete) throw new Error('Both versions have totals')
    await changes.getByLabel('From').selectOption('1')
    await changes.getByLabel('To', { exact: true }).selectOption('2')
    // The oracle for amounts is the runtime's own formatter.
    const dollars = (minor: number): string => new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100)
    const total = changes.getByRole('row', { name: /^Total today/ }).first()
    await expect.poll(() => total.textContent(), { timeout: PATIENCE_MS }).toContain(dollars(now.totalMinor))
    expect(await total.textContent()).toContain(dollars(was.totalMinor))
    await page.setViewportSize({ width: 390, height: 844 })
    await expectNoOverflow(page)
    await page.setViewportSize({ width: 1440, height: 900 })
    expect(advisor.faults).toEqual([])
  })

  it('is copied to a new quote with its builds, for someone else, and stays as it is', async () => {
    const { page } = advisor
    const before = await read<QuoteView>(`/api/quotes/${lapsed.id}`)
    await page.getByRole('link', { name: 'Copy to a new quote' }).click()
    await page.getByRole('button', { name: 'Someone else' }).click()
    await page.getByLabel('Name', { exact: true }).fill('Hollis Wray')
    await expectAccessible(page)
    await page.getByRole('button', { name: 'Start the quote' }).click()
    await expect.poll(() => new URL(page.url()).pathname, { timeout: PATIENCE_MS }).toMatch(/^\/quotes\/(?!new)[0-9a-f-]{36}$/)
    await page.getByRole('table', { name: /^Builds side by side/ }).waitFor()
    const copy = await read<QuoteView>(`/api${new URL(page.url()).pathname}`)
    expect(copy).toMatchObject({ state: 'draft', number: null, customer: { name: 'Hollis Wray' } })
    expect(copy.draft.builds).toEqual(before.draft.builds)
    expect(await read<QuoteView>(`/api/quotes/${lapsed.id}`)).toEqual(before)
  })
})
