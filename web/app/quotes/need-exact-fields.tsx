import type { ReactElement } from 'react'
import type { Need, NeedExact } from '../../../core/quote/need.ts'
import type { Conditions } from '../../../core/sizing/conditions.ts'
import { startOf } from '../../../core/sizing/words.ts'
import { SelectField, TickField } from '../parts/choice-fields.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { useInstall, useReader } from '../session/session.ts'
import { answersOf, FIRST_EXACT_FIELDS, FURTHER_EXACT_GROUPS, JOIST_FIGURES, type ExactField } from './exact-fields.ts'
import { orderFault } from './exact-order.ts'
import { sayExact } from './need-words.ts'
import { FloorQuestions, OutletFigure } from './room-questions.tsx'
import './room-questions.css'

interface Props {
  need: Need
  conditions: Conditions
  onChange: (change: Partial<NeedExact>) => void
}

/** What grows in it and the room it stands in, asked with the first questions; still open ones are assumed and say so. */
export function FirstExactFields({ need, conditions, onChange }: Props): ReactElement {
  return (
    <fieldset className="exact-fields first">
      <legend className="sr">Plants and room</legend>
      {FIRST_EXACT_FIELDS.map((field) => (
        <ExactEntry
          key={field.key}
          field={{ ...field, label: FIRST_LABELS[field.key] ?? field.label }}
          need={need}
          conditions={conditions}
          onChange={onChange}
        />
      ))}
      <FloorQuestions
        need={need}
        onChange={onChange}
        joistFields={
          <>
            {JOIST_FIGURES.map((field) => (
              <ExactEntry key={field.key} field={field} need={need} conditions={conditions} onChange={onChange} />
            ))}
          </>
        }
      />
    </fieldset>
  )
}

/** Away from the heading that says the rest of the label. */
const FIRST_LABELS: Partial<Record<ExactField['key'], string>> = {
  coldestRoomC: 'Coldest the room gets',
  warmestRoomC: 'Warmest the room gets',
}

/** Outlet, circuit, tap water, inside, animals. An empty field is its default, which stands below it with the word assumed. */
export function NeedExactFields({ need, conditions, onChange }: Props): ReactElement {
  return (
    <div className="exact-fields">
      {FURTHER_EXACT_GROUPS.map((group) => (
        <fieldset key={group.title}>
          <legend>{group.title}</legend>
          {group.fields.some(({ key }) => key === 'outletHeightMm') && <OutletFigure conditions={conditions} />}
          {group.fields.map((field) => (
            <ExactEntry key={field.key} field={field} need={need} conditions={conditions} onChange={onChange} />
          ))}
        </fieldset>
      ))}
    </div>
  )
}

/** One question, to be found by its key where the report leads to it. */
function ExactEntry(props: Props & { field: ExactField }): ReactElement {
  return (
    <div className="exact-entry" data-exact={props.field.key}>
      <ExactControl {...props} />
    </div>
  )
}

function ExactControl({ field, need, conditions, onChange }: Props & { field: ExactField }): ReactElement {
  const reader = useReader()
  const own = need.exact[field.key]
  const said = sayExact(field, need, conditions, reader)
  const standIn = own === undefined ? (said.assumed ? `${said.words}, assumed` : said.words) : undefined
  if (field.type === 'quantity')
    return <FigureEntry field={field} standIn={standIn} need={need} conditions={conditions} onChange={onChange} />
  const options = field.type === 'flag' ? [['true', field.yes] as const, ['false', field.no] as const] : answersOf(field)
  return (
    <SelectField
      label={field.label}
      help={helpOf(field.help, standIn)}
      value={own === undefined || own === 'unknown' ? '' : String(own)}
      none="I don’t know"
      options={options.map(([value, label]) => ({ value, label }))}
      onChange={(value) => onChange({ [field.key]: value === '' ? undefined : field.type === 'flag' ? value === 'true' : value })}
    />
  )
}

/** What is asked, and what stands while there is no answer. @example helpOf('A quarter is usual.', 'not stated') // 'A quarter is usual. Not stated' */
const helpOf = (help: string | undefined, standIn: string | undefined): string =>
  help === undefined || help === '' ? (standIn ?? '') : [help, startOf(standIn ?? '')].join(' ').trimEnd()

/** A figure of the house may be unknown like any other answer: then the tick says what stands for it. One of the animals or the tank is the group's. */
function FigureEntry({
  field,
  standIn,
  need,
  onChange,
}: Props & { field: Extract<ExactField, { type: 'quantity' }>; standIn: string | undefined }): ReactElement {
  const reader = useReader()
  const install = useInstall()
  const own = need.exact[field.key]
  const unknown = OF_THE_HOUSE.has(field.key)
  const help = helpOf(field.help, unknown ? undefined : standIn)
  const entry = (
    <QuantityField
      label={field.label}
      unit={field.unit}
      min={field.least}
      max={field.most}
      help={help}
      value={typeof own === 'number' ? own : null}
      check={(value) => orderFault(need, field.key, value, reader, install)}
      onChange={(value, fault) => fault === null && onChange({ [field.key]: value ?? undefined })}
    />
  )
  if (!unknown) return entry
  return (
    <div className="or-unknown">
      {entry}
      <TickField
        label={
          <>
            <span className="sr">{field.label}: </span>I don’t know
            {own !== undefined || standIn === 'not stated' ? '' : `: ${standIn ?? ''}`}
          </>
        }
        checked={own === undefined}
        onChange={(on) => on && onChange({ [field.key]: undefined })}
      />
    </div>
  )
}

/** What somebody would have to measure at home. */
const OF_THE_HOUSE: ReadonlySet<ExactField['key']> = new Set([
  'coldestRoomC',
  'warmestRoomC',
  'joistSpanMm',
  'joistSpacingMm',
  'outletHeightMm',
  'outletDistanceMm',
])
