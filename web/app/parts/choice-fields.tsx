import { useId, type ReactElement, type ReactNode } from 'react'
import { Field, type FieldProps } from './field.tsx'

export interface Option<Value extends string> {
  value: Value
  label: string
}

/** A list for more than four options; `none` adds an empty first one. */
export function SelectField<Value extends string>({
  value,
  onChange,
  options,
  none,
  shortcut,
  ...field
}: FieldProps & {
  /** A key of the screen that leads here. */
  shortcut?: string
  value: Value | ''
  onChange: (value: Value | '') => void
  options: readonly Option<Value>[]
  none?: string
}): ReactElement {
  return (
    <Field {...field}>
      {({ id, describedBy, invalid }) => (
        <div className="entry">
          <select
            id={id}
            value={value}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            aria-keyshortcuts={shortcut}
            onChange={(event) => onChange(event.target.value as Value | '')}
          >
            {none !== undefined && <option value="">{none}</option>}
            {options.map((option) => (
              <option key={option.value} value={option.value}>
                {option.label}
              </option>
            ))}
          </select>
        </div>
      )}
    </Field>
  )
}

/** Up to four options in a row, water and water line on the chosen one. */
export function ChoiceField<Value extends string>({
  label,
  help,
  fault,
  value,
  onChange,
  options,
}: FieldProps & { value: Value | ''; onChange: (value: Value) => void; options: readonly Option<Value>[] }): ReactElement {
  const name = useId()
  const described = [help ? `${name}-help` : '', fault ? `${name}-fault` : ''].filter(Boolean).join(' ')
  return (
    <fieldset className="field" data-state={fault ? 'fault' : undefined} aria-describedby={described || undefined}>
      <legend className="label">{label}</legend>
      <div className="choice">
        {options.map((option) => (
          <label key={option.value}>
            <input className="sr" type="radio" name={name} checked={value === option.value} onChange={() => onChange(option.value)} />
            {option.label}
          </label>
        ))}
      </div>
      {help && (
        <p className="help" id={`${name}-help`}>
          {help}
        </p>
      )}
      {fault && (
        <p className="fault" id={`${name}-fault`}>
          {fault}
        </p>
      )}
    </fieldset>
  )
}

/** One yes or no. */
export function TickField({
  label,
  help,
  checked,
  onChange,
}: {
  label: ReactNode
  help?: string
  checked: boolean
  onChange: (checked: boolean) => void
}): ReactElement {
  const id = useId()
  return (
    <div>
      <label className="tick">
        <input
          type="checkbox"
          checked={checked}
          aria-describedby={help ? id : undefined}
          onChange={(event) => onChange(event.target.checked)}
        />
        <span>{label}</span>
      </label>
      {help && (
        <p className="help" id={id}>
          {help}
        </p>
      )}
    </div>
  )
}
