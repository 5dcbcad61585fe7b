import { useState, type ReactElement } from 'react'
import { currencySign } from '../../../core/money.ts'
import type { Unit } from '../../../core/units/quantity.ts'
import { useCurrency, useReader } from '../session/session.ts'
import { TextField, type FieldProps } from './field.tsx'
import { fieldUnit, moneyKeyboard, readFigure, readMoney, spellFigure, spellMoney, type FigureReading } from './figure.ts'

/**
 * Text that stands for a value: kept as typed while it is edited, spelled anew when it is left or when the value changes from outside.
 * An unreadable text stays where it is, with its fault.
 */
function useFigureText(value: number | null, read: (text: string) => FigureReading, spell: (value: number | null) => string) {
  const [text, setText] = useState(() => spell(value))
  const [known, setKnown] = useState(value)
  const [left, setLeft] = useState(true)
  if (known !== value) {
    setKnown(value)
    if (read(text).value !== value) setText(spell(value))
  }
  const reading = read(text)
  return {
    text,
    fault: left ? reading.fault : null,
    type: (next: string): FigureReading => {
      setText(next)
      setLeft(false)
      const result = read(next)
      setKnown(result.value)
      return result
    },
    leave: (): void => {
      setLeft(true)
      if (reading.fault === null) setText(spell(reading.value))
    },
  }
}

type Change = (value: number | null, fault: string | null) => void

export interface QuantityFieldProps extends FieldProps {
  unit: Unit
  /** Storage unit; null: nothing entered. */
  value: number | null
  /** Called at every key; `fault` is the sentence where the text is no such figure (value is then null). */
  onChange: Change
  min?: number
  max?: number
  whole?: boolean
  className?: string
}

/** A figure with its unit: accepts "20 in", "50 cm", "75 gal"; on leaving it shows the reader's own. */
export function QuantityField({ unit, value, onChange, min, max, whole, fault, ...field }: QuantityFieldProps): ReactElement {
  const reader = useReader()
  const limits = { label: field.label, unit, min, max, whole }
  const figure = useFigureText(
    value,
    (text) => readFigure(text, limits, reader),
    (figureValue) => spellFigure(figureValue, limits, reader),
  )
  return (
    <TextField
      {...field}
      value={figure.text}
      inputMode={whole ? 'numeric' : 'text'}
      unit={fieldUnit(limits, reader)}
      fault={figure.fault ?? fault}
      onBlur={figure.leave}
      onChange={(text) => {
        const result = figure.type(text)
        onChange(result.value, result.fault)
      }}
    />
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
  autoFocus?: boolean
}

/** An amount of money with its sign before the line. */
export function MoneyField({ value, onChange, least, fault, ...field }: MoneyFieldProps): ReactElement {
  const currency = useCurrency()
  const figure = useFigureText(
    value,
    (text) => readMoney(text, currency, field.label, least),
    (minor) => spellMoney(minor, currency),
  )
  return (
    <TextField
      {...field}
      value={figure.text}
      before={currencySign(currency).trim()}
      inputMode={moneyKeyboard(currency)}
      fault={figure.fault ?? fault}
      onBlur={figure.leave}
      onChange={(text) => {
        const result = figure.type(text)
        onChange(result.value, result.fault)
      }}
    />
  )
}
