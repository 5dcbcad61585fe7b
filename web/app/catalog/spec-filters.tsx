import { useState, type ReactElement } from 'react'
import type { Kind } from '../../../core/catalog/kinds.ts'
import { SPEC_FIELDS } from '../../../core/catalog/spec-fields.ts'
import { parseSpecFilter, spellSpecFilter, withTest, type SpecTest } from '../../../core/catalog/spec-filter.ts'
import { optionsAt } from '../../../core/catalog/fields-at.ts'
import type { Field } from '../../../core/fields.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { useInstall, useReader } from '../session/session.ts'
import { sayTests } from './spec-filter-words.ts'
import './spec-filters.css'

const YES_NO = [
  { value: 'yes', label: 'Yes' },
  { value: 'no', label: 'No' },
] as const

interface Props {
  kind: Kind
  /** As it stands in the address; empty: nothing is asked. */
  spec: string
  onChange: (spec: string) => void
}

/** Narrows a kind by what its makers state: folded away until it is wanted, told in words where it is on. */
export function SpecFilters({ kind, spec, onChange }: Props): ReactElement | null {
  const reader = useReader()
  const install = useInstall()
  // Fields keep what is typed in them; to empty them all they are made anew.
  const [times, setTimes] = useState(0)
  const parsed = parseSpecFilter(kind, spec)
  const tests = parsed.ok ? parsed.value : []
  const fields = SPEC_FIELDS[kind].filter((field) => field.type === 'choice' || field.type === 'flag' || field.unit !== undefined)
  if (fields.length === 0) return null
  return (
    <details className="spec-filters">
      <summary>{tests.length === 0 ? 'Narrow by what the maker states' : sayTests(kind, tests, reader, install)}</summary>
      <div className="spec-fields" key={`${kind} ${times}`}>
        {fields.map((field) => (
          <SpecFilterField
            key={field.key}
            field={field}
            test={tests.find((one) => one.key === field.key)}
            onChange={(test) => onChange(spellSpecFilter(withTest(tests, field.key, test)))}
          />
        ))}
      </div>
      <p className="spec-foot">
        {spec !== '' && (
          <Button
            small
            onClick={() => {
              setTimes(times + 1)
              onChange('')
            }}
          >
            Take these limits off
          </Button>
        )}
        <span className="help">Products whose maker does not state it are left out.</span>
      </p>
    </details>
  )
}

interface FieldProps {
  field: Field
  test: SpecTest | undefined
  onChange: (test: SpecTest | null) => void
}

function SpecFilterField({ field, test, onChange }: FieldProps): ReactElement {
  const install = useInstall()
  const is = test !== undefined && 'is' in test ? test.is : undefined
  if (field.type === 'flag') {
    return (
      <SelectField
        label={field.label}
        none="Either"
        value={is === undefined ? '' : is === true ? 'yes' : 'no'}
        options={YES_NO}
        onChange={(answer) => onChange(answer === '' ? null : { key: field.key, is: answer === 'yes' })}
      />
    )
  }
  if (field.type === 'choice') {
    return (
      <SelectField
        label={field.label}
        none="Any"
        value={typeof is === 'string' ? is : ''}
        options={optionsAt(field, install)}
        onChange={(value) => onChange(value === '' ? null : { key: field.key, is: value })}
      />
    )
  }
  return <RangeField field={field} test={test} onChange={onChange} />
}

/** Two ends of a range, either of which may stay open. */
function RangeField({ field, test, onChange }: FieldProps & { field: Extract<Field, { type: 'number' | 'whole' }> }): ReactElement {
  const range = test !== undefined && 'least' in test ? test : { least: null, most: null }
  const set = (least: number | null, most: number | null): void =>
    onChange(least === null && most === null ? null : { key: field.key, least, most })
  const { least, most } = range
  const shared = { unit: field.unit ?? 'count', min: field.min, max: field.max, whole: field.type === 'whole' } as const
  return (
    <fieldset className="range-field">
      <legend className="label">{field.label}</legend>
      <QuantityField
        {...shared}
        label="At least"
        value={least}
        check={(value) => (most !== null && value > most ? 'Above the other end.' : null)}
        onChange={(value, fault) => fault === null && set(value, most)}
      />
      <QuantityField
        {...shared}
        label="At most"
        value={most}
        check={(value) => (least !== null && value < least ? 'Below the other end.' : null)}
        onChange={(value, fault) => fault === null && set(least, value)}
      />
    </fieldset>
  )
}
