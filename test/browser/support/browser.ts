import { chromium, type Browser, type BrowserContext, type Page } from 'playwright-core'
import { CHROMIUM_FLAGS, chromiumPath } from '../../support/chromium.ts'

/** A browser of its own; close it in `afterAll`. Throws where the machine has none: the suite's runner names that before it starts. */
export async function openBrowser(): Promise<Browser> {
  const executablePath = chromiumPath()
  if (executablePath === undefined) throw new Error('No Chromium found. Install one, or set CHROME_PATH to its program file.')
  return chromium.launch({ executablePath, args: CHROMIUM_FLAGS })
}

export interface Look {
  width: number
  scheme: 'light' | 'dark'
}
export const LOOKS: Look[] = [
  { width: 390, scheme: 'light' },
  { width: 390, scheme: 'dark' },
  { width: 1280, scheme: 'light' },
  { width: 1280, scheme: 'dark' },
]

/** A page that remembers what its console complained about, policy violations included. */
export async function openPage(browser: Browser, look: Look): Promise<{ page: Page; context: BrowserContext; complaints: string[] }> {
  const context = await browser.newContext({
    viewport: { width: look.width, height: 844 },
    colorScheme: look.scheme,
    reducedMotion: 'reduce',
  })
  const page = await context.newPage()
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error' || /content security policy/i.test(message.text())) complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(error.message))
  return { page, context, complaints }
}
