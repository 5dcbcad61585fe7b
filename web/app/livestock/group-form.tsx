import { useState, type ReactElement, type ReactNode } from 'react'
import { LIVESTOCK_FIELDS } from '../../../core/catalog/livestock-fields.ts'
import type { LivestockGroup } from '../../../core/sizing/conditions.ts'
import type { GroupBody } from '../client/livestock.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField, TickField } from '../parts/choice-fields.tsx'
import { NoteField, TextField } from '../parts/field.tsx'
import { fieldUnit } from '../parts/figure.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { useReader } from '../session/session.ts'
import { limitsOf, readGroup, type GroupDraft } from './group-draft.ts'

interface Props {
  draft: GroupDraft
  onChange: (draft: GroupDraft) => void
  /** What is stored: untouched figures keep its digits. */
  stored?: LivestockGroup | undefined
  error: unknown
  busy: boolean
  saveWords: string
  conflict?: ReactNode
  onSave: (body: GroupBody) => void
}

const SHOWN = ['name', 'examples', 'source', ...LIVESTOCK_FIELDS.map(({ key }) => key)]
const WATERS = [
  { value: 'fresh', label: 'Fresh water' },
  { value: 'salt', label: 'Salt water' },
] as const

/** What a group of animals asks of the water, and where that comes from. */
export function GroupForm({ draft, onChange, stored, error, busy, saveWords, conflict, onSave }: Props): ReactElement {
  const reader = useReader()
  const [tried, setTried] = useState(false)
  const reading = readGroup(draft, reader, stored)
  const faults: Record<string, string> = { ...faultsOf(error), ...(tried ? reading.faults : {}) }
  const set = (part: Partial<GroupDraft>): void => onChange({ ...draft, ...part })
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setTried(true)
        if (Object.keys(reading.faults).length === 0 && !busy) onSave(reading.body)
      }}
    >
      <div className="form-row">
        <TextField label="Name" value={draft.name} onChange={(name) => set({ name })} fault={faults['name']} required />
        <TextField
          label="Examples"
          value={draft.examples}
          onChange={(examples) => set({ examples })}
          fault={faults['examples']}
          required={false}
        />
      </div>
      <div className="form-row">
        {LIVESTOCK_FIELDS.map((field) => (
          <TextField
            key={field.key}
            label={field.label}
            help={field.help || undefined}
            unit={fieldUnit(limitsOf(field), reader)}
            value={draft.figures[field.key]}
            onChange={(text) => set({ figures: { ...draft.figures, [field.key]: text } })}
            fault={faults[field.key]}
            required={field.required}
          />
        ))}
      </div>
      <ChoiceField label="Water" value={draft.water} options={WATERS} onChange={(water) => set({ water })} />
      <TickField label="Needs a lid" checked={draft.lidNeeded} onChange={(lidNeeded) => set({ lidNeeded })} />
      <NoteField label="Source" value={draft.source} onChange={(source) => set({ source })} fault={faults['source']} required />
      {conflict ?? <ErrorNotice error={error} shown={SHOWN} />}
      <p className="acts">
        <Button look="main" type="submit" busy={busy}>
          {saveWords}
        </Button>
      </p>
    </form>
  )
}
