import { useId, useRef, useState, type ReactElement } from 'react'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { PLOT_NAMES, plotFigure, type PlotName } from '../../plots/finding-plot.ts'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'
import { useDesk } from './desk-context.ts'

/** A finding's drawing, folded: made when it is opened, at the width that there is. */
export function FindingDrawing({ plot }: { plot: PlotName }): ReactElement {
  const [open, setOpen] = useState(false)
  return (
    <details className="drawing-fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {open ? 'Hide' : 'Show'} the drawing: {PLOT_NAMES[plot]}
      </summary>
      {open && <Drawing plot={plot} />}
    </details>
  )
}

function Drawing({ plot }: { plot: PlotName }): ReactElement {
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
