import { useId, type ReactElement, type ReactNode } from 'react'
import './picture-choice.css'
import { Svg } from './svg.tsx'

export interface PictureOption<Value extends string> {
  value: Value
  label: string
  /** What the picture shows, in words that need no picture. */
  says: string
  /** A silent drawing of web/plots: label and `says` are its words. */
  picture: string
}

interface Props<Value extends string> {
  label: string
  help?: ReactNode
  value: Value
  onChange: (value: Value) => void
  options: ReadonlyArray<PictureOption<Value>>
}

/** One answer of a few, each with its drawing: for what people have seen but cannot name. */
export function PictureChoice<Value extends string>({ label, help, value, onChange, options }: Props<Value>): ReactElement {
  const name = useId()
  return (
    <fieldset className="field picture-choice" aria-describedby={help ? `${name}-help` : undefined}>
      <legend className="label">{label}</legend>
      <div className="pictures">
        {options.map((option) => (
          <label key={option.value}>
            <input className="sr" type="radio" name={name} checked={value === option.value} onChange={() => onChange(option.value)} />
            <Svg markup={option.picture} inline className="picture" />
            <span>
              <span className="picture-name">{option.label}</span> <span className="note">{option.says}</span>
            </span>
          </label>
        ))}
      </div>
      {help && (
        <div className="help" id={`${name}-help`}>
          {help}
        </div>
      )}
    </fieldset>
  )
}
