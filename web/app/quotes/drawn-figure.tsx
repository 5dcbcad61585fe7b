import { useId, useRef, type ReactElement } from 'react'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { plotFigure } from '../../plots/finding-plot.ts'
import type { PlotName } from '../../plots/plot-of-finding.ts'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'
import { useDesk } from './desk-context.ts'

/** A finding's drawing at the width that there is. In a file of its own: what draws comes when somebody looks. */
export function DrawnFigure({ plot }: { plot: PlotName }): ReactElement {
  const { chosen, reader, state, inputs } = useDesk()
  const id = useId()
  const place = useRef<HTMLElement>(null)
  const width = useWidth(place)
  const conditions = resolveConditions(state.draft.need, inputs.install)
  return (
    <figure ref={place} className="drawing-figure">
      {width > 0 && (
        <Svg
          markup={plotFigure(
            plot,
            { figures: chosen.report.figures, conditions },
            { id: `${plot}${id}`, reader, width: Math.min(width, WIDEST) },
          )}
        />
      )}
    </figure>
  )
}

/** A plot of a few figures gains nothing from being wider. */
const WIDEST = 420
