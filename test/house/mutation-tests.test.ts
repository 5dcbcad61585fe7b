import { globSync, readFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { expect, it } from 'vitest'
import * as standIn from '../mutation/collected-tests.ts'

const root = resolve(import.meta.dirname, '../..')

/** What a file imports by name from the test program. */
function askedOf(path: string): string[] {
  const [, names = ''] = /^import \{([^}]*)\} from 'vitest'/m.exec(readFileSync(resolve(root, path), 'utf8')) ?? []
  return names
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '' && !name.startsWith('type '))
}

it('the tests of the physics ask of the test program only what stands in for it while mutants run', () => {
  const paths = globSync(['test/core/sizing/**/*.test.ts', 'test/core/water/**/*.test.ts'], { cwd: root })
  expect(paths.length).toBeGreaterThan(100)
  const more = paths.flatMap((path) => askedOf(path).flatMap((name) => (name in standIn ? [] : [`${path}: ${name}`])))
  expect(more).toEqual([])
})
