import { useState, type ReactElement, type ReactNode } from 'react'
import { KIND_NAMES, type Kind } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import type { Field } from '../../../core/fields.ts'
import { faultsOf } from '../client/problem.ts'
import type { ProductBody } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useReader } from '../session/session.ts'
import { CommonSizeField } from './common-size-field.tsx'
import { KitParts } from './kit-parts.tsx'
import { MissingMeasure } from './missing-measure.tsx'
import { readDraft, type ProductDraft } from './product-draft.ts'
import { formFields, isMeasure, typeField } from './shape-fields.ts'
import { SpecField } from './spec-field.tsx'
import './catalog.css'

interface Props {
  draft: ProductDraft
  onChange: (draft: ProductDraft) => void
  /** What is stored: untouched figures keep its digits. */
  stored?: { product: Product; draft: ProductDraft } | undefined
  error: unknown
  busy: boolean
  saveWords: string
  /** Shown in place of the plain error, where the version is stale. */
  conflict?: ReactNode
  onSave: (body: ProductBody) => void
}
interface PartProps {
  draft: ProductDraft
  faults: Record<string, string>
  set: (part: Partial<ProductDraft>) => void
}

/** Nobody makes them, so nobody prints their figures. */
const WITHOUT_MAKER: ReadonlySet<Kind> = new Set(['plant', 'livestock', 'service', 'hardscape'])

/** Fields that show their own fault. */
const shownBy = (draft: ProductDraft): string[] => [
  'name',
  'maker',
  'gtin',
  'note',
  'warrantyMonths',
  'parts',
  ...SPEC_FIELDS[draft.kind].map(({ key }) => `spec.${key}`),
]

/** The form of every kind: what all products have, then the kind's own fields from the spec table. */
export function ProductForm({ draft, onChange, stored, error, busy, saveWords, conflict, onSave }: Props): ReactElement {
  const reader = useReader()
  const [tried, setTried] = useState(false)
  const reading = readDraft(draft, reader, stored)
  const count = Object.keys(reading.faults).length
  const faults: Record<string, string> = { ...faultsOf(error), ...(tried ? reading.faults : {}) }
  const part: PartProps = { draft, faults, set: (change) => onChange({ ...draft, ...change }) }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (count === 0 && !busy) onSave(reading.body)
      }}
    >
      <ProductNames {...part} />
      <ProductSpec {...part} spec={reading.body.spec} />
      {draft.kind === 'kit' && (
        <KitParts parts={draft.parts} faults={faults} kitId={stored?.product.id} onChange={(parts) => part.set({ parts })} />
      )}
      <TickField
        label="Oversize"
        help="Parcel services take it only at a surcharge."
        checked={draft.oversize}
        onChange={(oversize) => part.set({ oversize })}
      />
      <TextField
        label="Warranty"
        unit="months"
        inputMode="numeric"
        value={draft.warrantyMonths}
        onChange={(warrantyMonths) => part.set({ warrantyMonths })}
        fault={faults['warrantyMonths']}
        help="The maker’s own, as quotes tell it. Empty: the store’s, where that states one; 0: none."
        required={false}
      />
      <NoteField label="Note" value={draft.note} onChange={(note) => part.set({ note })} fault={faults['note']} required={false} />
      {conflict ?? <ErrorNotice error={error} shown={shownBy(draft)} />}
      <p className="acts">
        <Button look="main" type="submit" busy={busy}>
          {saveWords}
        </Button>
        {tried && count > 0 && (
          <output className="fault">{count === 1 ? 'One field needs another look.' : `${count} fields need another look.`}</output>
        )}
      </p>
    </form>
  )
}

function ProductNames({ draft, faults, set }: PartProps): ReactElement {
  return (
    <div className="form-row">
      <TextField
        label="Name"
        value={draft.name}
        onChange={(name) => set({ name })}
        fault={faults['name']}
        help="As a person would say it, the maker included."
        required
      />
      <TextField label="Maker" value={draft.maker} onChange={(maker) => set({ maker })} fault={faults['maker']} required={false} />
      <TextField
        label="Barcode (GTIN)"
        value={draft.gtin}
        onChange={(gtin) => set({ gtin })}
        fault={faults['gtin']}
        inputMode="numeric"
        help="8, 12, 13 or 14 digits."
        required={false}
      />
    </div>
  )
}

/** Common sizes are those of boxes. */
const isPlainBox = (spec: Record<string, string>): boolean => ['', 'rectangular'].includes(spec['shape'] ?? '')

function ProductSpec({ draft, faults, set, spec }: PartProps & { spec: ProductBody['spec'] }): ReactElement {
  const fields = formFields(draft.kind, draft.spec)
  const specField = (field: Field): ReactElement => (
    <SpecField
      key={field.key}
      field={field}
      text={draft.spec[field.key] ?? ''}
      fault={faults[`spec.${field.key}`]}
      onChange={(text) => set({ spec: typeField(draft.kind, draft.spec, field.key, text) })}
    />
  )
  return (
    <section className="form" aria-labelledby="spec-head">
      <div className="sechead">
        <h2 id="spec-head">
          {KIND_NAMES[draft.kind]}: {WITHOUT_MAKER.has(draft.kind) ? 'what is known' : 'what the maker states'}
        </h2>
        <p className="quiet">Leave out what you do not know: it stays not known, it is never guessed.</p>
      </div>
      {draft.kind === 'tank' && isPlainBox(draft.spec) && (
        <CommonSizeField spec={draft.spec} onFill={(sides) => set({ spec: { ...draft.spec, ...sides } })} />
      )}
      {draft.kind === 'tank' && (
        <>
          <div className="form-row">{fields.filter(isMeasure).map(specField)}</div>
          <MissingMeasure kind={draft.kind} spec={spec} />
        </>
      )}
      <div className="form-row">{fields.filter((field) => draft.kind !== 'tank' || !isMeasure(field)).map(specField)}</div>
    </section>
  )
}
