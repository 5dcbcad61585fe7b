import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { ChoiceField, SelectField } from '../parts/choice-fields.tsx'
import { DateField, NoteField, TextField } from '../parts/field.tsx'
import type { SaleTimeDraft, Way } from './sale-time-draft.ts'
import { holidaysQuery } from './sale-times-query.ts'

const WAYS: Array<{ value: Way; label: string }> = [
  { value: 'holiday', label: 'Near a holiday' },
  { value: 'yearly', label: 'Each year on a day' },
  { value: 'dates', label: 'On listed days' },
  { value: 'rule', label: 'By a calendar rule' },
]

export interface BeginsProps {
  draft: SaleTimeDraft
  set: (part: Partial<SaleTimeDraft>) => void
  faults: Record<string, string>
  /** Where the holidays of the list are kept. */
  place: Pick<Store, 'country' | 'subdivision'> | undefined
}

/** When it begins: one way chosen, its own fields under it. */
export function BeginsFields(props: BeginsProps): ReactElement {
  const { draft, set } = props
  return (
    <>
      <div className="ways">
        <ChoiceField label="It begins" value={draft.way} options={WAYS} onChange={(way) => set({ way })} />
      </div>
      <WayFields {...props} />
    </>
  )
}

function WayFields(props: BeginsProps): ReactElement {
  const { draft, set, faults } = props
  if (draft.way === 'holiday') return <HolidayFields {...props} />
  if (draft.way === 'yearly')
    return (
      <DateField
        label="First day, in any year"
        value={draft.yearly}
        fault={faults['when.rule']}
        onChange={(yearly) => set({ yearly })}
        help="Its day and month come again each year."
      />
    )
  if (draft.way === 'dates')
    return (
      <NoteField
        label="First days"
        rows={2}
        value={draft.firstDays}
        fault={faultUnder(faults, 'when.firstDays')}
        onChange={(firstDays) => set({ firstDays })}
        help="Written like 2026-11-27, with commas between."
      />
    )
  return (
    <>
      <TextField
        label="Rule"
        value={draft.rule}
        maxLength={300}
        fault={faults['when.rule']}
        onChange={(rule) => set({ rule })}
        help="As calendars write it (RFC 5545): FREQ=YEARLY;BYMONTH=6;BYDAY=1SA is the first Saturday of June."
      />
      <DateField
        label="Counted from"
        value={draft.ruleFrom}
        fault={faults['when.from']}
        onChange={(ruleFrom) => set({ ruleFrom })}
        help="The first day it may run."
      />
    </>
  )
}

/** A fault of one of the days of a list is told at the list. */
const faultUnder = (faults: Record<string, string>, field: string): string | undefined =>
  faults[field] ?? Object.entries(faults).find(([key]) => key.startsWith(`${field}.`))?.[1]

function HolidayFields({ draft, set, faults, place }: BeginsProps): ReactElement {
  const holidays = useQuery(holidaysQuery(place?.country ?? '', place?.subdivision ?? null))
  const names = holidays.data ?? []
  const listed = draft.holiday === '' || names.includes(draft.holiday) ? names : [draft.holiday, ...names]
  return (
    <>
      <SelectField
        label="Holiday"
        value={draft.holiday}
        none="Choose one"
        options={listed.map((name) => ({ value: name, label: name }))}
        fault={faults['when.holiday']}
        onChange={(holiday) => set({ holiday })}
        help="Each store keeps the day of its own country and state."
      />
      <TextField
        label="Days after it"
        value={draft.offsetDays}
        inputMode="numeric"
        fault={faults['when.offsetDays']}
        onChange={(offsetDays) => set({ offsetDays })}
        help="0 is the day itself, -3 is three days before."
      />
    </>
  )
}
