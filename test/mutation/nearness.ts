import { readFileSync } from 'node:fs'

/** Nouns of the files whose expressions are changed, from `run.ts`. */
const NOUNS = (process.env['MUTATED'] ?? '')
  .split(',')
  .filter((path) => path !== '')
  .map((path) => path.replace(/^.*\//, '').replace(/\.ts$/, ''))

/** 0 for the test of the same name, 1 for one that speaks of the file or of its check, else 2. */
function distanceOf(path: string): number {
  if (NOUNS.some((noun) => path.endsWith(`/${noun}.test.ts`))) return 0
  const text = readFileSync(path, 'utf8')
  return NOUNS.some((noun) => text.includes(`/${noun}.ts'`) || text.includes(`'${noun.replaceAll('-', '_')}'`)) ? 1 : 2
}

/** The first test that notices a change ends its run: those that are likeliest to come first. */
export function nearestFirst(paths: readonly string[]): string[] {
  const near = paths.map((path) => path.replaceAll('\\', '/')).map((path) => ({ path, distance: distanceOf(path) }))
  return near.toSorted((a, b) => a.distance - b.distance || (a.path < b.path ? -1 : 1)).map(({ path }) => path)
}
