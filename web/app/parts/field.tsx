import {
  useEffect,
  useId,
  useRef,
  type HTMLInputTypeAttribute,
  type InputHTMLAttributes,
  type KeyboardEvent,
  type MouseEvent,
  type ReactElement,
  type ReactNode,
} from 'react'

export interface FieldProps {
  label: string
  help?: ReactNode
  /** Sentence with the limit and the fix; null or absent: no fault. */
  fault?: string | null | undefined
  required?: boolean
}
interface Ids {
  id: string
  describedBy: string | undefined
  invalid: true | undefined
}

/** Label above, entry, help, fault: the frame of every field. */
export function Field({
  label,
  help,
  fault,
  required,
  children,
  className = '',
}: FieldProps & { children: (ids: Ids) => ReactNode; className?: string }): ReactElement {
  const id = useId()
  const described = [help ? `${id}-help` : '', fault ? `${id}-fault` : ''].filter(Boolean).join(' ')
  return (
    <div className={`field ${className}`} data-state={fault ? 'fault' : undefined}>
      <label htmlFor={id}>
        {label}
        {required === false && <span className="unit"> (optional)</span>}
      </label>
      {children({ id, describedBy: described || undefined, invalid: fault ? true : undefined })}
      {help && (
        <p className="help" id={`${id}-help`}>
          {help}
        </p>
      )}
      {fault && (
        <p className="fault" id={`${id}-fault`}>
          {fault}
        </p>
      )}
    </div>
  )
}

export interface TextFieldProps extends FieldProps {
  value: string
  onChange: (text: string) => void
  onFocus?: () => void
  onBlur?: () => void
  onKeyDown?: (event: KeyboardEvent) => void
  type?: HTMLInputTypeAttribute
  /** Before and after the line: "$", "in". */
  before?: string
  unit?: string | undefined
  inputMode?: InputHTMLAttributes<HTMLInputElement>['inputMode']
  autoComplete?: string
  /** Takes the focus when it appears: the one thing to do on the screen. */
  focusFirst?: boolean
  /** A press into it takes the whole text, as the Tab key does: what is typed stands in its place. */
  selectWhole?: boolean
  maxLength?: number
  placeholder?: string
  enterKeyHint?: InputHTMLAttributes<HTMLInputElement>['enterKeyHint']
  className?: string
  name?: string
}

/** The press that brings the focus; a further one sets the caret as ever. */
function takeWhole(event: MouseEvent<HTMLInputElement>): void {
  const entry = event.currentTarget
  if (event.button !== 0 || entry.disabled || entry === document.activeElement) return
  event.preventDefault()
  entry.focus()
  entry.select()
}

/** One line of text, of any kind: numbers, money and dates build on it. */
export function TextField({
  label,
  help,
  fault,
  required,
  value,
  onChange,
  before,
  unit,
  className,
  focusFirst,
  selectWhole,
  ...input
}: TextFieldProps): ReactElement {
  const entry = useRef<HTMLInputElement>(null)
  useEffect(() => {
    if (focusFirst) entry.current?.focus()
  }, [focusFirst])
  return (
    <Field label={label} help={help} fault={fault} {...(required === undefined ? {} : { required })} {...(className ? { className } : {})}>
      {({ id, describedBy, invalid }) => (
        <div className="entry">
          {before && <span className="unit">{before}</span>}
          <input
            autoComplete="off"
            {...input}
            ref={entry}
            id={id}
            value={value}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            aria-required={required || undefined}
            onMouseDown={selectWhole ? takeWhole : undefined}
            onChange={(event) => onChange(event.target.value)}
          />
          {unit && <span className="unit">{unit}</span>}
        </div>
      )}
    </Field>
  )
}

/** Several lines of text. */
export function NoteField({
  label,
  help,
  fault,
  required,
  value,
  onChange,
  maxLength,
  rows = 3,
}: FieldProps & { value: string; onChange: (text: string) => void; maxLength?: number; rows?: number }): ReactElement {
  return (
    <Field label={label} help={help} fault={fault} {...(required === undefined ? {} : { required })}>
      {({ id, describedBy, invalid }) => (
        <div className="entry">
          <textarea
            id={id}
            rows={rows}
            value={value}
            maxLength={maxLength}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onChange={(event) => onChange(event.target.value)}
          />
        </div>
      )}
    </Field>
  )
}

/** A civil day; the device's own picker. */
export function DateField({
  value,
  onChange,
  min,
  max,
  ...field
}: FieldProps & { value: string; onChange: (date: string) => void; min?: string; max?: string }): ReactElement {
  return (
    <Field {...field}>
      {({ id, describedBy, invalid }) => (
        <div className="entry">
          <input
            id={id}
            type="date"
            value={value}
            min={min}
            max={max}
            aria-describedby={describedBy}
            aria-invalid={invalid}
            onChange={(event) => onChange(event.target.value)}
          />
        </div>
      )}
    </Field>
  )
}
