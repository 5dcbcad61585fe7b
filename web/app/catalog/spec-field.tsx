import { useState, type ReactElement } from 'react'
import { optionsAt } from '../../../core/catalog/fields-at.ts'
import type { Field } from '../../../core/fields.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField, type FieldProps } from '../parts/field.tsx'
import { fieldUnit, readFigure, spellFigure } from '../parts/figure.ts'
import { useInstall, useReader } from '../session/session.ts'
import { limitsOf } from './product-draft.ts'

const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const

interface Props {
  field: Field
  text: string
  fault: string | undefined
  onChange: (text: string) => void
}

/** How else a figure may be typed, where its label prints it another way. */
const AS_PRINTED: Record<string, string> = {
  doseMlPerL: 'Or as the label has it: 5 mL per 10 gal.',
  strength: 'Or in per cent: 10 %.',
}

/** One row of the spec table as a field. "Not known" is an answer of its own, never a preset. */
export function SpecField({ field, text, fault, onChange }: Props): ReactElement {
  const install = useInstall()
  const common = {
    label: field.label,
    help: [field.help, AS_PRINTED[field.key]].filter(Boolean).join(' ') || undefined,
    fault,
    required: field.required,
  }
  if (field.type === 'flag')
    return (
      <SelectField {...common} none="Not known" value={text === 'yes' || text === 'no' ? text : ''} onChange={onChange} options={YES_NO} />
    )
  if (field.type === 'choice')
    return <SelectField {...common} none="Not known" value={text} onChange={onChange} options={optionsAt(field, install)} />
  return <FigureSpec {...common} field={field} text={text} onChange={onChange} />
}

interface FigureProps extends FieldProps {
  field: Extract<Field, { type: 'number' | 'whole' }>
  text: string
  onChange: (text: string) => void
}

/**
 * A figure that shows the reader's unit once it is left, while the draft keeps what was typed: "45 cm" stays 450 mm and does not become
 * the millimetres of a rounded inch. Coming into it changes nothing: the Tab key has its text marked, and the first key replaces what is marked.
 */
function FigureSpec({ field, text, onChange, ...common }: FigureProps): ReactElement {
  const reader = useReader()
  const [editing, setEditing] = useState(false)
  const limits = limitsOf(field)
  const read = readFigure(text, limits, reader)
  const shown = editing || read.value === null ? text : spellFigure(read.value, limits, reader)
  return (
    <TextField
      {...common}
      value={shown}
      onChange={(typed) => {
        setEditing(true)
        onChange(typed)
      }}
      onBlur={() => setEditing(false)}
      unit={fieldUnit(limits, reader)}
      inputMode={field.type === 'whole' ? 'numeric' : 'text'}
    />
  )
}
