import { BaseSequencer, type TestSpecification } from 'vitest/node'
import { distanceOf } from './nearness.ts'

/** The first test that notices a change ends its run: those that are likeliest to come first. */
export class NearestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files)
    const distances = new Map(sorted.map((file) => [file, distanceOf(file.moduleId)]))
    return sorted.toSorted((a, b) => (distances.get(a) ?? 2) - (distances.get(b) ?? 2))
  }
}
