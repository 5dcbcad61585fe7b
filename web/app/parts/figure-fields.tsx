import type { ReactElement } from 'react'
import { currencySign } from '../../../core/money.ts'
import type { Unit } from '../../../core/units/quantity.ts'
import { useCurrency, useReader } from '../session/session.ts'
import { TextField, type FieldProps } from './field.tsx'
import { fieldUnit, moneyKeyboard, readKept, readMoney, spellFigure, spellMoney, type FigureReading } from './figure.ts'
import { useTypedEntry } from './use-typed-entry.ts'

/** Called when the field is left or Enter is pressed; `fault` is the sentence where the text is no such figure (value is then null). */
type Change = (value: number | null, fault: string | null) => void

export interface QuantityFieldProps extends FieldProps {
  unit: Unit
  /** Storage unit; null: nothing entered. */
  value: number | null
  onChange: Change
  /** What else is wrong with a figure within its limits, where the rest of the form decides. */
  check?: (value: number) => string | null
  min?: number
  max?: number
  whole?: boolean
  className?: string
  selectWhole?: boolean
}

/** A figure with its unit: accepts "20 in", "50 cm", "75 gal"; on leaving it shows the reader's own. */
export function QuantityField({ unit, value, onChange, check, min, max, whole, fault, ...field }: QuantityFieldProps): ReactElement {
  const reader = useReader()
  const limits = { label: field.label, unit, min, max, whole }
  const read = (text: string): FigureReading => {
    const reading = readKept(text, value, limits, reader)
    const other = reading.value === null ? null : (check?.(reading.value) ?? null)
    return other === null ? reading : { value: null, fault: other }
  }
  const entry = useTypedEntry({ value, read, spell: (figure) => spellFigure(figure, limits, reader), tell: onChange })
  return (
    <TextField {...field} {...entry} inputMode={whole ? 'numeric' : 'text'} unit={fieldUnit(limits, reader)} fault={entry.fault ?? fault} />
  )
}

export interface MoneyFieldProps extends FieldProps {
  /** Minor units of the install's currency; null: nothing entered. */
  value: number | null
  onChange: Change
  /** Minor units. */
  least?: number
  unit?: string
  className?: string
  selectWhole?: boolean
  autoFocus?: boolean
  /** Told with every key what the text means by then, null while it means nothing; nothing is kept of it. */
  onTyping?: (minor: number | null) => void
}

/** An amount of money with its sign before the line. */
export function MoneyField({ value, onChange, onTyping, least, fault, ...field }: MoneyFieldProps): ReactElement {
  const currency = useCurrency()
  const { decimal } = useReader()
  const read = (text: string): FigureReading => readMoney(text, currency, field.label, least, decimal)
  const entry = useTypedEntry({
    value,
    read,
    spell: (minor) => spellMoney(minor, currency, decimal),
    tell: onChange,
  })
  return (
    <TextField
      {...field}
      {...entry}
      onChange={(text) => {
        entry.onChange(text)
        onTyping?.(read(text).value)
      }}
      before={currencySign(currency).trim()}
      inputMode={moneyKeyboard(currency)}
      fault={entry.fault ?? fault}
    />
  )
}
