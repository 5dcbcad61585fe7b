import type { ReactElement } from 'react'
import { groupsOf } from '../../../core/catalog/livestock.ts'
import type { Region } from '../../../core/catalog/region.ts'
import type { Store } from '../../../core/catalog/store.ts'
import type { Need } from '../../../core/quote/need.ts'
import { SelectField, TickField } from '../parts/choice-fields.tsx'
import { DateField, TextField } from '../parts/field.tsx'
import { MoneyField } from '../parts/figure-fields.tsx'
import { useInstall, useReader, useToday } from '../session/session.ts'
import { LOOK_WORDS } from './need-words.ts'
import { SizeField } from './size-field.tsx'

interface Props {
  need: Need
  stores: Store[]
  /** Sets of stores that may be named in place of single ones. */
  regions?: readonly Region[] | undefined
  /** What the form has against the size. */
  sizeFault?: string | null
  onChange: (change: Partial<Omit<Need, 'exact'>>) => void
}

const LOOKS = (['any', 'standard', 'kit', 'rimless'] as const).map((value) => ({ value, label: LOOK_WORDS[value] }))

/** The five questions a customer can answer at the counter, then look and stores. */
export function NeedQuestions({ need, stores, regions = [], sizeFault, onChange }: Props): ReactElement {
  const reader = useReader()
  const today = useToday()
  const install = useInstall()
  const groups = groupsOf(install)
  const group = groups.find((row) => row.id === need.livestockId)
  return (
    <>
      <SizeField size={need} reader={reader} fault={sizeFault} onChange={onChange} />
      <TextField label="Where it stands" value={need.place} maxLength={200} onChange={(place) => onChange({ place })} />
      <SelectField
        label="What will live in it"
        value={need.livestockId}
        help={group?.examples}
        onChange={(livestockId) => livestockId !== '' && onChange({ livestockId })}
        options={groups.map((row) => ({ value: row.id, label: row.name }))}
      />
      <TextField
        label="In their own words"
        required={false}
        value={need.livestockNote}
        maxLength={500}
        onChange={(livestockNote) => onChange({ livestockNote })}
      />
      <MoneyField
        label="How much money"
        value={need.budgetMinor}
        least={1}
        onChange={(budgetMinor, fault) => fault === null && onChange({ budgetMinor })}
      />
      <DateField
        label="By when"
        value={need.byDate ?? ''}
        min={today}
        onChange={(date) => onChange({ byDate: date === '' ? null : date })}
      />
      {need.byDate !== null && install.mode === 'club' && (
        <MoneyField
          label="What a week’s wait is worth"
          required={false}
          value={need.weekWaitMinor ?? null}
          least={1}
          help="For the whole purchase. Left empty, waiting costs nothing and only the day ends it."
          onChange={(weekWaitMinor, fault) => fault === null && onChange({ weekWaitMinor })}
        />
      )}
      <SelectField label="Look" value={need.look} options={LOOKS} onChange={(look) => look !== '' && onChange({ look })} />
      <RegionChoice need={need} stores={stores} regions={regions} onChange={onChange} />
      {!need.regionId && <StoreTicks need={need} stores={stores} onChange={onChange} />}
    </>
  )
}

/** A region names its stores all at once; one that was taken out since leaves the stores that are ticked. */
function RegionChoice({ need, regions = [], onChange }: Props): ReactElement | null {
  if (regions.length === 0 && !need.regionId) return null
  const gone =
    need.regionId && !regions.some(({ id }) => id === need.regionId) ? [{ value: need.regionId, label: 'a region that is gone' }] : []
  return (
    <SelectField
      label="Region they will buy in"
      none="choose single stores"
      value={need.regionId ?? ''}
      options={[...gone, ...regions.map(({ id, name }) => ({ value: id, label: name }))]}
      onChange={(regionId) => onChange({ regionId: regionId || null })}
    />
  )
}

/** None ticked is any store. */
function StoreTicks({ need, stores, onChange }: Props): ReactElement | null {
  const open = stores.filter((store) => !store.archived)
  if (open.length === 0) return null
  const ticked = new Set(need.storeIds)
  const toggle = (id: string, on: boolean): void =>
    onChange({ storeIds: on ? [...need.storeIds, id] : need.storeIds.filter((one) => one !== id) })
  return (
    <fieldset className="field ticks">
      <legend className="label">Stores they will use{need.storeIds.length === 0 && ': any'}</legend>
      {open.map((store) => (
        <TickField key={store.id} label={store.name} checked={ticked.has(store.id)} onChange={(on) => toggle(store.id, on)} />
      ))}
    </fieldset>
  )
}
