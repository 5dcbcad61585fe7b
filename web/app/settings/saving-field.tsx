import type { ReactElement } from 'react'
import { currencySign } from '../../../core/money.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { TextField, type FieldProps } from '../parts/field.tsx'
import { moneyKeyboard, spellMoney } from '../parts/figure.ts'
import { useTypedEntry } from '../parts/use-typed-entry.ts'
import { readSaving } from './read-saving.ts'

interface Props extends FieldProps {
  /** The ones being chosen on this screen, not yet the install's. */
  currency: string
  decimal: ReaderUnits['decimal']
  /** Minor units. */
  value: number | null
  onChange: (value: number | null, fault: string | null) => void
}

/** An amount that is saved, 0 or more. */
export function SavingField({ currency, decimal, value, onChange, fault, ...field }: Props): ReactElement {
  const entry = useTypedEntry({
    value,
    read: (text) => readSaving(text, currency, decimal),
    spell: (minor: number | null) => spellMoney(minor, currency, decimal),
    tell: onChange,
  })
  return (
    <TextField
      {...field}
      {...entry}
      before={currencySign(currency).trim()}
      inputMode={moneyKeyboard(currency)}
      fault={entry.fault ?? fault}
    />
  )
}
