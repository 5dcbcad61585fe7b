import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'
import { isScreen } from '../../api/http/static.ts'

/** Paths of the browser application, as its router names them. */
const paths = [...readFileSync('web/app/router.tsx', 'utf8').matchAll(/\.\.\.at\('([^']+)'\)/g)].map(([, path]) => path ?? '')

it('the server answers at the address of every screen, so that it opens in a new tab and after reloading', () => {
  expect(paths.length).toBeGreaterThan(20)
  const unanswered = paths.filter((path) => !isScreen(path.replaceAll(/\$\w+/g, '0198c0de-0000-7000-8000-000000000000')))
  expect(unanswered).toEqual([])
})

it.each(['/settings/none', '/prices/a/b/c', '/quotes/a/b', '/none'])('and not at %s, which is none', (path) => {
  expect(isScreen(path)).toBe(false)
})
