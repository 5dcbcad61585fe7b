import type { ReactElement } from 'react'
import { addDays, yearOf } from '../../../core/dates.ts'
import { MOST_AHEAD_DAYS } from '../../../core/pricing/outlook-view.ts'
import { WATCHED_CONDITIONS, type WatchedCondition, type WatchTerms } from '../../../core/pricing/watches/watch.ts'
import { ChoiceField, TickField } from '../parts/choice-fields.tsx'
import { DateField } from '../parts/field.tsx'
import { MoneyField } from '../parts/figure-fields.tsx'
import { useCurrency, useInstall, useToday } from '../session/session.ts'
import { sayBuyAt, type BuyAtKnown } from './buy-at-words.ts'
import { WhereField } from './where-field.tsx'

const WAYS = [
  { value: 'price', label: 'At or under a price' },
  { value: 'buy_at', label: 'At the price to buy at' },
] as const
export type Way = (typeof WAYS)[number]['value']

export interface TermsDraft extends WatchTerms {
  way: Way
}
/** What is sent: an amount belongs to its own way alone. */
export const termsOf = ({ way, ...terms }: TermsDraft): WatchTerms => ({ ...terms, limitMinor: way === 'price' ? terms.limitMinor : null })

const CONDITION_LABELS: Record<WatchedCondition, string> = {
  new: 'New, at a regular or a sale price',
  clearance: 'New, on clearance',
  used: 'Used',
}

interface Props {
  draft: TermsDraft
  set: (part: Partial<TermsDraft>) => void
  faults: Record<string, string>
  /** The price to buy at for what is chosen. */
  buyAt: BuyAtKnown
}

/** At which price, by when, which goods, where. */
export function WatchFields({ draft, set, faults, buyAt }: Props): ReactElement {
  const today = useToday()
  // A place that is a store has its own list alone: no sale is reckoned with, and nothing is bought elsewhere.
  const isStore = useInstall().mode === 'store'
  const said = sayBuyAt(buyAt, useCurrency(), yearOf(today))
  const { way, limitMinor, byDay, conditions, regionId, storeIds } = draft
  return (
    <>
      {(!isStore || way === 'buy_at') && <ChoiceField label="Tell me" value={way} options={WAYS} onChange={(next) => set({ way: next })} />}
      {way === 'price' ? (
        <MoneyField
          label="Price, with tax"
          value={limitMinor}
          least={1}
          fault={faults['limitMinor']}
          {...(buyAt.state === 'each_its_own' || buyAt.state === 'own_list' ? {} : { help: said })}
          onChange={(minor) => set({ limitMinor: minor })}
        />
      ) : (
        <output className="note">
          {said} {buyAt.state !== 'own_list' && 'It changes as the days go by, and rises towards the last one.'}
        </output>
      )}
      <DateField
        label="Wanted by"
        {...(way === 'price' ? { required: false } : {})}
        value={byDay ?? ''}
        min={today}
        max={addDays(today, MOST_AHEAD_DAYS)}
        fault={faults['byDay'] ?? (way === 'buy_at' ? faults['limitMinor'] : undefined)}
        help={way === 'buy_at' ? 'The price to buy at depends on it. The watch ends after this day.' : 'The watch ends after this day.'}
        onChange={(day) => set({ byDay: day === '' ? null : day })}
      />
      <fieldset className="field ticks" data-state={faults['conditions'] ? 'fault' : undefined}>
        <legend className="label">Goods</legend>
        {WATCHED_CONDITIONS.map((one) => (
          <TickField
            key={one}
            label={CONDITION_LABELS[one]}
            checked={conditions.includes(one)}
            onChange={(on) => set({ conditions: WATCHED_CONDITIONS.filter((each) => (each === one ? on : conditions.includes(each))) })}
          />
        ))}
        {faults['conditions'] && <p className="fault">Tick at least one.</p>}
      </fieldset>
      {!isStore && <WhereField regionId={regionId} storeIds={storeIds} fault={faults['regionId'] ?? faults['storeIds']} onChange={set} />}
    </>
  )
}
