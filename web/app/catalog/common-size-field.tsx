import { useId, useState, type ReactElement } from 'react'
import { COMMON_SIZES, sizeCalled, type CommonSize } from '../../../core/catalog/common-sizes.ts'
import { measuredIn } from '../../../core/units/reader.ts'
import { saySize } from '../../../core/units/say.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { useReader } from '../session/session.ts'
import { hasSides, mayFill, sidesOf, type Sides } from './common-sides.ts'

interface Props {
  /** The spec as it is typed. */
  spec: Record<string, string>
  onFill: (sides: Sides) => void
}

/** A name of the trade fills in the three sides, to be corrected: nothing of it is kept but they. What somebody typed is replaced only when asked. */
export function CommonSizeField({ spec, onFill }: Props): ReactElement {
  const reader = useReader()
  const list = useId()
  const [text, setText] = useState('')
  const [filled, setFilled] = useState<CommonSize | null>(null)
  const [left, setLeft] = useState(false)
  const size = sizeCalled(text)
  const fill = (of: CommonSize): void => {
    setFilled(of)
    onFill(sidesOf(of))
  }
  const type = (next: string): void => {
    setText(next)
    setLeft(false)
    const named = sizeCalled(next)
    if (named && mayFill(spec, filled)) fill(named)
  }
  const inches = measuredIn(reader).length === 'in'
  const offered = COMMON_SIZES.toSorted((a, b) => Number((a.system === 'us') !== inches) - Number((b.system === 'us') !== inches))
  return (
    <div className="form">
      <Field
        label="Common size"
        required={false}
        help="As the trade calls it, like 20 long or 90 cm: it fills in length, width and height, to be corrected by the maker’s own."
        fault={left && text.trim() !== '' && !size ? `No common size is called “${text.trim()}”. Type the sides below.` : null}
      >
        {({ id, describedBy, invalid }) => (
          <div className="entry">
            <input
              id={id}
              list={list}
              value={text}
              autoComplete="off"
              aria-describedby={describedBy}
              aria-invalid={invalid}
              onChange={(event) => type(event.target.value)}
              onBlur={() => setLeft(true)}
              onKeyDown={(event) => {
                if (event.key !== 'Enter') return
                event.preventDefault()
                setLeft(true)
              }}
            />
            <datalist id={list}>
              {offered.map((one) => (
                <option key={one.id}>{one.label}</option>
              ))}
            </datalist>
          </div>
        )}
      </Field>
      {size && !hasSides(spec, size) && (
        <p className="acts">
          <Button small onClick={() => fill(size)}>
            Put {saySize([size.lengthMm, size.widthMm, size.heightMm], reader)} in place of what is typed
          </Button>
        </p>
      )}
      <output className="reason">
        {size && hasSides(spec, size) ? `Filled in: ${saySize([size.lengthMm, size.widthMm, size.heightMm], reader)}.` : ''}
      </output>
    </div>
  )
}
