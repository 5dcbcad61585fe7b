import type { ImportFault } from '../../core/exchange/data-set.ts'
import { IMPORT_PHASES, type ImportOrder, type ImportOutcome } from '../../core/exchange/import-outcome.ts'
import type { ImportView } from '../../core/exchange/import-view.ts'
import type { Job } from '../../core/jobs/job.ts'

/** A job of ours as an import: its payload and its outcome are what import-job.ts made them. */
export function importView(job: Job & { startedByName: string | null }, faults: ImportFault[] = []): ImportView {
  const order = job.payload as unknown as ImportOrder
  const words = job.outcome?.['words']
  return {
    ...order,
    id: job.id,
    state: job.state,
    phase: IMPORT_PHASES.find((phase) => phase === job.phase) ?? 'reading',
    done: job.done,
    total: job.total,
    startedBy: job.startedByName,
    createdAt: job.createdAt,
    endedAt: job.endedAt,
    cancelAsked: job.cancelAsked,
    outcome: typeof words === 'string' ? null : (job.outcome as unknown as ImportOutcome | null),
    words: typeof words === 'string' ? words : null,
    faults,
  }
}
