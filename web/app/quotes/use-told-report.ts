import { useDeferredValue, useMemo } from 'react'
import { toldOf } from '../../../core/quote/told-build.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import type { ToldReport } from '../../../core/sizing/report.ts'
import { toldReport } from '../../../core/sizing/told-report.ts'
import { useDesk } from './desk-context.ts'

/**
 * The chosen build's report with its ranges and questions. They cost some twenty reports: they follow when typing pauses, and until then the report stands
 * without them, never with those of another edit.
 */
export function useToldReport(): ToldReport {
  const { inputs, chosen } = useDesk()
  const settled = useDeferredValue<Settled | null>(
    useMemo(() => ({ inputs, chosen }), [inputs, chosen]),
    null,
  )
  const ranged = useMemo(() => settled && rangedOf(settled), [settled])
  const bare = useMemo(() => toldReport(chosen.report), [chosen])
  return ranged !== null && settled?.chosen === chosen ? ranged : bare
}

interface Settled {
  inputs: QuoteInputs
  chosen: WorkedBuild
}

function rangedOf({ inputs, chosen }: Settled): ToldReport {
  const index = inputs.draft.builds.findIndex(({ id }) => id === chosen.id)
  return toldOf(inputs, index, chosen.report)
}
