import type { ReactElement } from 'react'
import { currencySign } from '../../../core/money.ts'
import { parseUnitPrice, spellUnitPrice } from '../../../core/unit-price.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { TextField, type FieldProps } from '../parts/field.tsx'
import type { FigureReading } from '../parts/figure.ts'
import { useTypedEntry } from '../parts/use-typed-entry.ts'

interface Props extends FieldProps {
  /** The ones being chosen on this screen, not yet the install's. */
  currency: string
  decimal: ReaderUnits['decimal']
  /** Minor units, with a fraction. */
  value: number | null
  onChange: (value: number | null, fault: string | null) => void
}

/** A price of one unit of something, finer than the smallest coin. */
export function UnitPriceField({ currency, decimal, value, onChange, fault, ...field }: Props): ReactElement {
  const spell = (minor: number | null): string => (minor === null ? '' : spellUnitPrice(minor, currency, { decimal }))
  const read = (text: string): FigureReading => {
    if (text.trim() === '') return { value: null, fault: null }
    if (text === spell(value)) return { value, fault: null }
    const price = parseUnitPrice(text, currency, { decimal })
    return price.ok ? { value: price.value, fault: null } : { value: null, fault: price.refusal.words }
  }
  const entry = useTypedEntry({
    value,
    read,
    spell,
    tell: onChange,
  })
  return <TextField {...field} {...entry} before={currencySign(currency).trim()} inputMode="decimal" fault={entry.fault ?? fault} />
}
