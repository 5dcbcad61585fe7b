import { useMemo } from 'react'
import { sizedSubject } from '../../../core/quote/worked-build.ts'
import { drawnFigures } from '../../../core/sizing/all-figures.ts'
import type { SizingFigures } from '../../../core/sizing/report.ts'
import { useDesk } from './desk-context.ts'

/** The chosen build's figures with those that its drawings alone take. */
export function useDrawnFigures(): SizingFigures {
  const { inputs, chosen } = useDesk()
  return useMemo(() => {
    const subject = sizedSubject(
      inputs,
      inputs.draft.builds.findIndex(({ id }) => id === chosen.id),
    )
    return { ...chosen.report.figures, ...(subject && drawnFigures(subject)) }
  }, [inputs, chosen])
}
