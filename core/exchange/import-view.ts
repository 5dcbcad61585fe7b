import type { JobState } from '../jobs/job.ts'
import type { ImportFault } from './data-set.ts'
import type { ImportOrder, ImportOutcome, ImportPhase } from './import-outcome.ts'

/** An import as its screen shows it. */
export interface ImportView extends ImportOrder {
  id: string
  state: JobState
  phase: ImportPhase
  done: number
  total: number
  /** Name of whoever started it. */
  startedBy: string | null
  createdAt: string
  endedAt: string | null
  cancelAsked: boolean
  outcome: ImportOutcome | null
  /** Why it ended without an outcome. */
  words: string | null
  /** The first of them, in the order of the file; none in a list of imports. */
  faults: ImportFault[]
}
