import type { ReactElement } from 'react'
import type { Field } from '../../../core/fields.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { fieldUnit, readFigure, spellFigure } from '../parts/figure.ts'
import { useReader } from '../session/session.ts'
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

/** One row of the spec table as a field. "Not known" is an answer of its own, never a preset. */
export function SpecField({ field, text, fault, onChange }: Props): ReactElement {
  const reader = useReader()
  const common = { label: field.label, help: field.help || undefined, fault, required: field.required }
  if (field.type === 'flag')
    return (
      <SelectField {...common} none="Not known" value={text === 'yes' || text === 'no' ? text : ''} onChange={onChange} options={YES_NO} />
    )
  if (field.type === 'choice') return <SelectField {...common} none="Not known" value={text} onChange={onChange} options={field.options} />
  const limits = limitsOf(field)
  const spell = (): void => {
    const read = readFigure(text, limits, reader)
    if (read.value !== null && /[^\d.,\s/-]/.test(text)) onChange(spellFigure(read.value, limits, reader))
  }
  return (
    <TextField
      {...common}
      value={text}
      onChange={onChange}
      onBlur={spell}
      unit={fieldUnit(limits, reader)}
      inputMode={field.type === 'whole' ? 'numeric' : 'text'}
    />
  )
}
