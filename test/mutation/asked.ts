/** The loading of a file passes for a test of it. */
export const loadOf = (file: string): string => `${file}#load`

/** What a run is asked. Without a filter all tests of the files run, each loaded when it is reached, with the mutant at work from the first. */
export interface Asked {
  files: readonly string[]
  activeMutant?: string
  hitLimit?: number
  filter?: readonly string[]
  /** The first test that fails ends the run. */
  bail: boolean
}
export interface RunTest {
  id: string
  fileName: string
  timeSpentMs: number
  /** Absent where it passed. */
  failure?: string
}
export interface Answered {
  tests: RunTest[]
  coverage: unknown
  hitCount: number
  /** What could not be loaded. */
  broken?: string
  /** By address, what each file imports. */
  imports: ReadonlyMap<string, readonly string[]>
}
