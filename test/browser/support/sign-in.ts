import type { Page } from 'playwright-core'
import type { Role } from '../../../core/people/roles.ts'
import type { DemoService } from './demo-service.ts'

/** Signs in by the form, as a person does, and waits for the first screen. */
export async function signIn(page: Page, service: DemoService, role: Role): Promise<void> {
  const { signInName, password } = service.signIn(role)
  await page.goto(`${service.origin}/sign-in`)
  await page.getByLabel('Sign-in name').fill(signInName)
  await page.getByLabel('Password', { exact: true }).fill(password)
  await page.getByRole('button', { name: 'Sign in' }).click()
  await page.waitForURL((url) => !url.pathname.startsWith('/sign-in'))
}

/** Opens a screen of the application and waits until it has read what it shows. */
export async function openScreen(page: Page, service: DemoService, path: string): Promise<void> {
  await page.goto(`${service.origin}${path}`)
  await page.locator('main h1').waitFor()
  await page.waitForLoadState('networkidle')
}

/** One answer of the API for whoever is signed in on this page. */
export async function readApi<Answer>(page: Page, service: DemoService, path: string): Promise<Answer> {
  // A connection that was idle for the server's five seconds is closed by it, now and then just as it is used again: a reader asks once more.
  const answer = await page.request.get(`${service.origin}${path}`, { maxRetries: 2 })
  if (!answer.ok()) throw new Error(`${path} answered ${answer.status()}`)
  return (await answer.json()) as Answer
}
