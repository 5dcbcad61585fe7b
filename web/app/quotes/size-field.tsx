import { useId, useState, type ReactElement } from 'react'
import { COMMON_SIZES } from '../../../core/catalog/common-sizes.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { Field } from '../parts/field.tsx'
import { readSize, spellSize } from './size-answer.ts'

type Size = Pick<Need, 'lengthMm' | 'commonSizeId'>

/** "How big": a length or a common size in one field; the common ones are offered as one types. */
export function SizeField({ size, reader, onChange }: { size: Size; reader: ReaderUnits; onChange: (size: Size) => void }): ReactElement {
  const list = useId()
  const [text, setText] = useState(() => spellSize(size, reader))
  const [typing, setTyping] = useState(false)
  const answer = readSize(text, reader)
  const leave = (): void => {
    setTyping(false)
    if (answer.size) setText(spellSize(answer.size, reader))
  }
  const type = (next: string): void => {
    setText(next)
    setTyping(true)
    const read = readSize(next, reader)
    if (read.size) onChange(read.size)
  }
  const offered = COMMON_SIZES.filter((one) => one.system === reader.system)
  return (
    <Field label="How big" help="A length, or a common size." fault={typing ? null : answer.fault}>
      {({ id, describedBy, invalid }) => (
        <div className="entry">
          <input
            id={id}
            list={list}
            value={text}
            autoComplete="off"
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onBlur={leave}
            onChange={(event) => type(event.target.value)}
          />
          <datalist id={list}>
            {offered.map((one) => (
              <option key={one.id}>{one.label}</option>
            ))}
          </datalist>
        </div>
      )}
    </Field>
  )
}
