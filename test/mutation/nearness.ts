import { globSync, readFileSync } from 'node:fs'

/** The tests that answer for the physics. */
export const TESTS = ['test/core/sizing/**/*.test.ts', 'test/core/water/**/*.test.ts', 'test/reference/**/*.test.ts']

/** Nouns of the files whose expressions are changed, as `run.ts` says. */
const nouns = (): string[] =>
  (process.env['MUTATED'] ?? '')
    .split(',')
    .filter((path) => path !== '')
    .map((path) => path.replace(/^.*\//, '').replace(/\.ts$/, ''))

/** 0 for the test of the same name, 1 for one that speaks of the file or of its check, else 2. */
export function distanceOf(path: string): number {
  const changed = nouns()
  if (changed.some((noun) => path.endsWith(`/${noun}.test.ts`))) return 0
  const text = readFileSync(path, 'utf8')
  return changed.some((noun) => text.includes(`/${noun}.ts'`) || text.includes(`'${noun.replaceAll('-', '_')}'`)) ? 1 : 2
}

/** The tests of a start: those that stand near to the changed files, or all. */
export function testsOf(reach: string | undefined): string[] {
  if (reach !== 'near') return TESTS
  return TESTS.flatMap((pattern) => globSync(pattern))
    .map((path) => path.replaceAll('\\', '/'))
    .filter((path) => !path.endsWith('.properties.test.ts') && distanceOf(path) < 2)
}
