import type { ReactElement } from 'react'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { useInstall } from '../session/session.ts'
import type { StorePartProps } from './store-charges.tsx'

/** In what currency the store prints its prices, and whether it is the one this install is of. */
export function StoreMoney({ draft, faults, set }: StorePartProps): ReactElement {
  const { currency, mode } = useInstall()
  return (
    <div className="form-row">
      <TextField
        label="Currency"
        value={draft.currency}
        onChange={(text) => set({ currency: text })}
        fault={faults['currency']}
        help={`Left open: ${currency}. Another one, like CAD, needs a rate of exchange.`}
        maxLength={3}
        required={false}
      />
      {(mode === 'store' || draft.own) && (
        <div>
          <TickField
            label="This is our own store"
            help="Quotes are made of its price list."
            checked={draft.own}
            onChange={(own) => set({ own })}
          />
          {faults['own'] && <p className="fault">{faults['own']}</p>}
        </div>
      )}
    </div>
  )
}
