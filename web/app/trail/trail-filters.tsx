import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { AUDIT_SUBJECTS } from '../../../core/audit/audit-actions.ts'
import { AUDIT_SUBJECT_WORDS } from '../../../core/audit/say-audit.ts'
import { listPeople } from '../client/people.ts'
import type { TrailFilter } from '../client/trail.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { DateField } from '../parts/field.tsx'
import { useToday } from '../session/session.ts'

/** By who did it, what kind of thing it was, and on which day. */
export function TrailFilters({ search, onChange }: { search: TrailFilter; onChange: (next: TrailFilter) => void }): ReactElement {
  const people = useQuery({ queryKey: ['people'], queryFn: listPeople })
  const today = useToday()
  const set = (part: TrailFilter): void =>
    onChange(Object.fromEntries(Object.entries({ ...search, ...part }).filter(([, value]) => value !== undefined && value !== '')))
  return (
    <div className="form-row">
      <SelectField
        label="Done by"
        value={search.person ?? ''}
        none="anybody"
        options={(people.data ?? []).map(({ id, called }) => ({ value: id, label: called }))}
        onChange={(person) => set({ person })}
      />
      <SelectField
        label="About"
        value={search.subject ?? ''}
        none="anything"
        options={AUDIT_SUBJECTS.map((kind) => ({ value: kind, label: AUDIT_SUBJECT_WORDS[kind] }))}
        onChange={(subject) => set({ subject })}
      />
      <DateField label="On the day" required={false} value={search.day ?? ''} max={today} onChange={(day) => set({ day })} />
    </div>
  )
}
