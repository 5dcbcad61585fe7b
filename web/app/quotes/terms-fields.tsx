import type { ReactElement } from 'react'
import type { Discount } from '../../../core/pricing/discount.ts'
import type { Deposit } from '../../../core/quote/terms.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { useDesk } from './desk-context.ts'

const KINDS = [
  { value: 'amount', label: 'an amount' },
  { value: 'share', label: 'a share, in per cent' },
] as const
/** Hundredths of a per cent in a per cent. */
const PER_CENT = 100

/** Discount with its reason and deposit: what the customer reads beside the totals. */
export function TermsFields(): ReactElement {
  return (
    <>
      <DiscountFields />
      <DepositFields />
    </>
  )
}

function DiscountFields(): ReactElement {
  const { state, edit } = useDesk()
  const { discount = null } = state.draft
  const set = (changed: Discount | null) => edit({ do: 'discount', discount: changed })
  const choose = (kind: Discount['kind'] | ''): void => {
    const kept = { storeId: discount?.storeId ?? null, reason: discount?.reason ?? '' }
    if (kind === '') set(null)
    else if (kind !== discount?.kind) set(kind === 'amount' ? { kind, amountMinor: 0, ...kept } : { kind, basisPoints: 0, ...kept })
  }
  return (
    <>
      <SelectField label="Discount" none="none" value={discount?.kind ?? ''} options={KINDS} onChange={choose} />
      {discount && (
        <>
          {discount.kind === 'amount' ? (
            <MoneyField
              label="Taken off the goods"
              value={discount.amountMinor}
              onChange={(amountMinor, fault) => fault === null && set({ ...discount, amountMinor: amountMinor ?? 0 })}
            />
          ) : (
            <QuantityField
              label="Taken off the goods"
              unit="percent"
              min={0}
              max={100}
              value={discount.basisPoints / PER_CENT}
              onChange={(percent, fault) => fault === null && set({ ...discount, basisPoints: toBasisPoints(percent) })}
            />
          )}
          <TextField
            label="Reason"
            help="The customer reads it beside the figure. It comes off before tax."
            value={discount.reason}
            maxLength={200}
            onChange={(reason) => set({ ...discount, reason })}
          />
          <DiscountStore discount={discount} onChange={set} />
        </>
      )}
    </>
  )
}

/** A club has goods of several stores on a quote, and seldom do all of them give something off. */
function DiscountStore({ discount, onChange }: { discount: Discount; onChange: (changed: Discount) => void }): ReactElement | null {
  const { state } = useDesk()
  const stores = state.view.stores.filter((store) => !store.archived || store.id === discount.storeId)
  if (state.view.install.mode === 'store' || stores.length < 2) return null
  return (
    <SelectField
      label="Given by"
      none="every store"
      value={discount.storeId ?? ''}
      options={stores.map(({ id, name }) => ({ value: id, label: name }))}
      onChange={(storeId) => onChange({ ...discount, storeId: storeId || null })}
    />
  )
}

function DepositFields(): ReactElement {
  const { state, edit } = useDesk()
  const { deposit = null } = state.draft
  const set = (changed: Deposit | null) => edit({ do: 'deposit', deposit: changed })
  const choose = (kind: Deposit['kind'] | ''): void => {
    if (kind === '') set(null)
    else if (kind !== deposit?.kind) set(kind === 'amount' ? { kind, amountMinor: 0 } : { kind, basisPoints: 0 })
  }
  return (
    <>
      <SelectField label="Deposit" none="none" value={deposit?.kind ?? ''} options={KINDS} onChange={choose} />
      {deposit?.kind === 'amount' && (
        <MoneyField
          label="Paid when they say yes"
          value={deposit.amountMinor}
          onChange={(amountMinor, fault) => fault === null && set({ kind: 'amount', amountMinor: amountMinor ?? 0 })}
        />
      )}
      {deposit?.kind === 'share' && (
        <QuantityField
          label="Paid when they say yes"
          help="Of today’s total."
          unit="percent"
          min={0}
          max={100}
          value={deposit.basisPoints / PER_CENT}
          onChange={(percent, fault) => fault === null && set({ kind: 'share', basisPoints: toBasisPoints(percent) })}
        />
      )}
    </>
  )
}

/** A share is kept in steps of a ten-thousandth of a per cent. */
const toBasisPoints = (percent: number | null): number => Math.round((percent ?? 0) * PER_CENT * 100) / 100
