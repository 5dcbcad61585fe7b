import { useId, type ReactElement } from 'react'
import { COMMON_SIZES, type CommonSize } from '../../../core/catalog/common-sizes.ts'
import type { Need } from '../../../core/quote/need.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { measuredIn } from '../../../core/units/reader.ts'
import { Button } from '../parts/button.tsx'
import { Field } from '../parts/field.tsx'
import { useTypedEntry } from '../parts/use-typed-entry.ts'
import { readSize, spellSize } from './size-answer.ts'

type Size = Pick<Need, 'lengthMm' | 'commonSizeId'>

/** A size as one value that can be compared. */
const keyOf = ({ lengthMm, commonSizeId }: Size): string => JSON.stringify({ lengthMm, commonSizeId })
const sizeOf = (key: string): Size => JSON.parse(key) as Size

interface Props {
  size: Size
  reader: ReaderUnits
  /** What the form has against it; what is wrong with the text itself comes first. */
  fault?: string | null | undefined
  onChange: (size: Size) => void
}

/** "How big": a length or a common size in one field; the common ones are offered as one types. */
export function SizeField({ size, reader, fault, onChange }: Props): ReactElement {
  const list = useId()
  const entry = useTypedEntry<string>({
    value: keyOf(size),
    read: (text) => {
      if (text !== '' && text === spellSize(size, reader)) return { value: keyOf(size), fault: null }
      const answer = readSize(text, reader)
      return answer.size ? { value: keyOf(answer.size), fault: null } : { value: null, fault: answer.fault }
    },
    spell: (key) => (key === null ? '' : spellSize(sizeOf(key), reader)),
    tell: (key) => key !== null && onChange(sizeOf(key)),
  })
  const asked = entry.fault === null ? null : readSize(entry.value, reader)
  const choices = asked?.size === null ? (asked.choices ?? []) : []
  // The text too: the size may be the one that it was before, and then nothing else would take what was refused away.
  const take = ({ id, label }: CommonSize): void => {
    entry.onChange(label)
    onChange({ lengthMm: null, commonSizeId: id })
  }
  const offered = COMMON_SIZES.filter((one) => (one.system === 'us') === (measuredIn(reader).length === 'in'))
  return (
    <Field label="How big" help="A length, a volume, or a common size." fault={entry.fault ?? fault}>
      {({ id, describedBy, invalid }) => (
        <>
          <div className="entry">
            <input
              id={id}
              list={list}
              value={entry.value}
              autoComplete="off"
              aria-describedby={describedBy}
              aria-invalid={invalid}
              onBlur={entry.onBlur}
              onKeyDown={entry.onKeyDown}
              onChange={(event) => entry.onChange(event.target.value)}
            />
            <datalist id={list}>
              {offered.map((one) => (
                <option key={one.id}>{one.label}</option>
              ))}
            </datalist>
          </div>
          {choices.length > 0 && (
            <p className="acts">
              {choices.map((one) => (
                <Button key={one.id} small onClick={() => take(one)}>
                  {one.label}
                </Button>
              ))}
            </p>
          )}
        </>
      )}
    </Field>
  )
}
