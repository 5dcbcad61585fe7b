import { useState, type ReactElement } from 'react'
import type { SizingFigures } from '../../../core/sizing/report.ts'
import { PLOT_NAMES, type PlotName } from '../../plots/plot-of-finding.ts'
import { late } from '../parts/late.tsx'

const DrawnFigure = late('the drawing', async () => (await import('./drawn-figure.tsx')).DrawnFigure)

/** A finding's drawing, folded: made when it is opened, at the width that there is. */
export function FindingDrawing({ plot, figures }: { plot: PlotName; figures: SizingFigures }): ReactElement {
  const [open, setOpen] = useState(false)
  return (
    <details className="drawing-fold" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        {open ? 'Hide' : 'Show'} the drawing: {PLOT_NAMES[plot]}
      </summary>
      {open && <DrawnFigure plot={plot} figures={figures} />}
    </details>
  )
}
