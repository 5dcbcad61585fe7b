import { useDeferredValue, useMemo } from 'react'
import { rangedBuild } from '../../../core/quote/worked-build.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import type { SizingReport } from '../../../core/sizing/report.ts'
import { useDesk } from './desk-context.ts'

/**
 * The chosen build's report with its ranges and questions. They cost some twenty reports: they follow when typing pauses, and until then the report stands
 * without them, never with those of another edit.
 */
export function useRangedReport(): SizingReport {
  const { inputs, chosen } = useDesk()
  const settled = useDeferredValue<Settled | null>(
    useMemo(() => ({ inputs, chosen }), [inputs, chosen]),
    null,
  )
  const ranged = useMemo(() => settled && rangedOf(settled), [settled])
  return ranged !== null && settled?.chosen === chosen ? ranged : chosen.report
}

interface Settled {
  inputs: QuoteInputs
  chosen: WorkedBuild
}

function rangedOf({ inputs, chosen }: Settled): SizingReport {
  const index = inputs.draft.builds.findIndex(({ id }) => id === chosen.id)
  return rangedBuild(inputs, index, chosen).report
}
