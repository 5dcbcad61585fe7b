import { useId, useRef, useState, type ReactElement } from 'react'
import { cordRows } from '../../../core/explanation/cord-rows.ts'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { sizedSubject } from '../../../core/quote/worked-build.ts'
import type { SizingFigures } from '../../../core/sizing/report.ts'
import { dripLoopDrawing } from '../../plots/drip-loop.ts'
import { plotFigure } from '../../plots/finding-plot.ts'
import type { PlotName } from '../../plots/plot-of-finding.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'
import { useDesk } from './desk-context.ts'

/** A finding's drawing of figures at the width that there is. In a file of its own: what draws comes when somebody looks. */
export function DrawnFigure({ plot, figures }: { plot: PlotName; figures: SizingFigures }): ReactElement {
  const { reader, state, inputs } = useDesk()
  const id = useId()
  const place = useRef<HTMLElement>(null)
  const width = useWidth(place)
  const conditions = resolveConditions(state.draft.need, inputs.install)
  if (plot === 'loop') return <DrawnCords />
  return (
    <figure ref={place} className="drawing-figure">
      {width > 0 && (
        <Svg markup={plotFigure(plot, { figures, conditions }, { id: `${plot}${id}`, reader, width: Math.min(width, WIDEST) })} />
      )}
    </figure>
  )
}

/** The drip loop of the cord that is chosen. */
function DrawnCords(): ReactElement {
  const { chosen, reader, inputs } = useDesk()
  const id = useId()
  const [index, setIndex] = useState('0')
  const subject = sizedSubject(
    inputs,
    inputs.draft.builds.findIndex((build) => build.id === chosen.id),
  )
  const rows = (subject ? cordRows(subject) : []).filter(({ loop }) => loop !== undefined)
  const row = rows[Number(index)] ?? rows[0]
  if (!row?.loop) return <p className="quiet">No loop has room to hang below this outlet.</p>
  return (
    <>
      <SelectField
        label="Cord of"
        value={String(rows.indexOf(row))}
        options={rows.map(({ name }, at) => ({ value: String(at), label: name }))}
        onChange={setIndex}
      />
      <figure className="drawing-figure">
        <Svg markup={dripLoopDrawing(row.loop, { id: `loop${id}`, reader, what: row.name, rimMm: row.rimMm, to: row.to })} />
      </figure>
    </>
  )
}

/** A plot of a few figures gains nothing from being wider. */
const WIDEST = 420
