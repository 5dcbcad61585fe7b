import { readFileSync } from 'node:fs'
import { BaseSequencer, type TestSpecification } from 'vitest/node'

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
export class NearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files)
    const distances = new Map(sorted.map((file) => [file, distanceOf(file.moduleId)]))
    return sorted.toSorted((a, b) => (distances.get(a) ?? 2) - (distances.get(b) ?? 2))
  }
}
