import { useState, type ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import type { Spec } from '../../../core/catalog/spec.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { emptyProduct, readDraft } from '../catalog/product-draft.ts'
import { formFields, typeField } from '../catalog/shape-fields.ts'
import { SpecField } from '../catalog/spec-field.tsx'

/** What somebody read off the thing, as typed; empty is unknown. */
export type SpecTexts = Record<string, string>

interface Props {
  kind: Kind
  texts: SpecTexts
  faults: Record<string, string>
  onChange: (texts: SpecTexts) => void
}

/** The figures of a kind's plate, in the reader's units. */
export function OwnedSpecFields({ kind, texts, faults, onChange }: Props): ReactElement {
  // Once open it stays so: a fault that is being put right must not fold away the field it stands at.
  const [open, setOpen] = useState(false)
  return (
    <details className="owned-spec" open={open || Object.keys(faults).length > 0} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>What its plate says; what is not entered stays unknown</summary>
      <div className="form-row">
        {formFields(kind, texts).map((field) => (
          <SpecField
            key={field.key}
            field={field}
            text={texts[field.key] ?? ''}
            fault={faults[`spec.${field.key}`]}
            onChange={(text) => onChange(typeField(kind, texts, field.key, text))}
          />
        ))}
      </div>
    </details>
  )
}

/** The spec that was typed; null where nothing was, and the faults where a figure cannot be meant or a size is half given. */
export function readOwnedSpec(kind: Kind, texts: SpecTexts, reader: ReaderUnits): { spec: Spec | null; faults: Record<string, string> } {
  if (Object.values(texts).every((text) => text.trim() === '')) return { spec: null, faults: {} }
  const { body, faults } = readDraft({ ...emptyProduct(kind), name: 'owned', spec: texts }, reader)
  return { spec: body.spec, faults }
}
