import { useId, useRef, type ReactElement } from 'react'
import type { Need, NeedExact } from '../../../core/quote/need.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { joistFigures } from '../../plots/joist-sketch.ts'
import { outletSketch } from '../../plots/outlet-sketch.ts'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { PictureChoice } from '../parts/picture-choice.tsx'
import { Svg } from '../parts/svg.tsx'
import { useWidth } from '../parts/use-width.ts'
import { useReader } from '../session/session.ts'
import { FIND_JOISTS, FLOOR_OPTIONS, LIE_OPTIONS } from './room-words.ts'

interface Props {
  need: Need
  onChange: (change: Partial<NeedExact>) => void
  /** The two figures of the joists, as the form asks for figures. */
  joistFields: ReactElement
}

/** The floor by its looks; about joists only where there are any. Every question has "I don't know", which is where it stands until someone answers. */
export function FloorQuestions({ need, onChange, joistFields }: Props): ReactElement {
  const floor = need.exact.floor ?? 'unknown'
  return (
    <div className="floor-questions" data-exact="floor">
      <PictureChoice label="What is the floor?" value={floor} options={FLOOR_OPTIONS} onChange={(value) => onChange({ floor: value })} />
      {floor === 'timber_upper' && <JoistQuestions need={need} onChange={onChange} joistFields={joistFields} />}
    </div>
  )
}

const ROOMS = [
  { value: 'bedroom', label: 'Bedroom' },
  { value: 'other', label: 'Not a bedroom' },
  { value: 'unknown', label: 'I don’t know' },
] as const

function JoistQuestions({ need, onChange, joistFields }: Props): ReactElement {
  const id = useId()
  const { joistLie = 'unknown', floorUse = 'unknown' } = need.exact
  return (
    <fieldset className="joist-questions">
      <legend>The beams under the boards</legend>
      <p className="help">They are called joists. Answer what you know; whoever looks under the floor can answer the rest.</p>
      <PictureChoice
        label="How will the tank lie on the joists?"
        value={joistLie}
        options={LIE_OPTIONS}
        onChange={(value) => onChange({ joistLie: value === 'unknown' ? undefined : value })}
      />
      <Drawn draw={(width) => joistFigures({ id: `joists${id}`, width })} />
      <div className="field-pair">{joistFields}</div>
      <ChoiceField
        label="What is the room used for?"
        help="Bedrooms are built for less. Not known counts as a bedroom."
        value={floorUse}
        options={ROOMS}
        onChange={(value) => onChange({ floorUse: value === 'unknown' ? undefined : value })}
      />
      <details className="find-out">
        <summary>How to find out</summary>
        <ul>
          {FIND_JOISTS.map((way) => (
            <li key={way}>{way}</li>
          ))}
        </ul>
      </details>
    </fieldset>
  )
}

/** Which height and which distance are meant, drawn to the figures that stand. */
export function OutletFigure({ conditions }: { conditions: Conditions }): ReactElement {
  const id = useId()
  const reader = useReader()
  const outlet = { heightMm: conditions.outletHeightMm, distanceMm: conditions.outletDistanceMm }
  return <Drawn draw={(width) => outletSketch(outlet, { id: `outlet${id}`, reader, width })} />
}

/** A drawing at the width that there is, so that its letters keep their size. */
function Drawn({ draw }: { draw: (width: number) => string }): ReactElement {
  const place = useRef<HTMLDivElement>(null)
  const width = useWidth(place)
  return (
    <div ref={place} className="sketch-figure">
      {width > 0 && <Svg markup={draw(width)} />}
    </div>
  )
}
