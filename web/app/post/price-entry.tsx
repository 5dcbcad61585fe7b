import type { ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { currencySign } from '../../../core/money.ts'
import { TextField } from '../parts/field.tsx'
import { moneyKeyboard } from '../parts/figure.ts'
import { useCurrency } from '../session/session.ts'
import { useStoreCurrency } from '../stores/store-currency.ts'
import type { SightingDraft, SightingReading } from './sighting-draft.ts'

interface Props {
  draft: SightingDraft
  reading: SightingReading
  store: Store | undefined
  fault: string | undefined
  onChange: (price: string) => void
}

/** The big one. A text that is no price says so at once; an empty one only when posting was tried. */
export function PriceEntry({ draft, reading, store, fault, onChange }: Props): ReactElement {
  const currency = useStoreCurrency()(draft.storeId)
  const home = useCurrency()
  const unreadable = draft.price !== '' && reading.priceMinor === null ? reading.faults.price : undefined
  return (
    <TextField
      className="price"
      label="Price"
      value={draft.price}
      onChange={onChange}
      before={currencySign(currency, home).trim()}
      unit={store?.pricesIncludeTax ? 'each, tax in it' : 'each, before tax'}
      inputMode={moneyKeyboard(currency)}
      enterKeyHint="done"
      fault={fault ?? unreadable}
      focusFirst
    />
  )
}
