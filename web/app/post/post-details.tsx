import type { ReactElement } from 'react'
import type { CivilDate } from '../../../core/dates.ts'
import { currencySign } from '../../../core/money.ts'
import { CONDITIONS, type Sighting } from '../../../core/pricing/sighting.ts'
import { ChoiceField, SelectField } from '../parts/choice-fields.tsx'
import { DateField, NoteField, TextField } from '../parts/field.tsx'
import { moneyKeyboard } from '../parts/figure.ts'
import { EVIDENCE_WORDS } from '../prices/sighting-words.ts'
import { useCurrency } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import { mayEnd, type SightingDraft, type SightingReading } from './sighting-draft.ts'

const EVIDENCE = Object.entries(EVIDENCE_WORDS).map(([value, label]) => ({ value: value as Sighting['evidence'], label }))
const KINDS_OF_PRICE = CONDITIONS.map((value) => ({ value, label: `${value[0]?.toUpperCase()}${value.slice(1)}` }))

interface Props {
  draft: SightingDraft
  set: (part: Partial<SightingDraft>) => void
  faults: SightingReading['faults']
  today: CivilDate
}

/** Kind of price, and what belongs to it; what is seldom stated folds away. */
export function PostDetails({ draft, set, faults, today }: Props): ReactElement {
  const currency = useStoreCurrency()(draft.storeId)
  const home = useCurrency()
  return (
    <>
      <ChoiceField label="Kind" value={draft.condition} onChange={(condition) => set({ condition })} options={KINDS_OF_PRICE} />
      {draft.condition !== 'used' && (
        <div className="two">
          <TextField
            label="Regular, on the tag"
            value={draft.regular}
            onChange={(regular) => set({ regular })}
            before={currencySign(currency, home).trim()}
            inputMode={moneyKeyboard(currency)}
            fault={faults.regular}
          />
          {mayEnd(draft.condition) && (
            <DateField
              label="Last day of the sale"
              value={draft.lastDay}
              min={draft.seenOn}
              onChange={(lastDay) => set({ lastDay })}
              fault={faults.lastDay}
            />
          )}
        </div>
      )}
      <details open={faults.seenOn !== undefined || undefined}>
        <summary>Another day, evidence, a note</summary>
        <div className="form">
          <div className="two">
            <DateField label="Day seen" value={draft.seenOn} max={today} onChange={(seenOn) => set({ seenOn })} fault={faults.seenOn} />
            <SelectField
              label="Evidence"
              value={draft.evidence}
              onChange={(evidence) => evidence && set({ evidence })}
              options={EVIDENCE}
            />
          </div>
          <NoteField
            label="Note"
            value={draft.note}
            onChange={(note) => set({ note })}
            help="A page address, a shelf number, what else the tag says."
            maxLength={500}
            rows={2}
            required={false}
          />
        </div>
      </details>
    </>
  )
}
