import type { ReactElement } from 'react'
import type { Deposit } from '../../../core/quote/terms.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { useDesk } from './desk-context.ts'
import { DiscountFields } from './discount-fields.tsx'
import { toBasisPoints, PER_CENT, TERM_KINDS } from './term-kinds.ts'

/** Discount with its reason and deposit: what the customer reads beside the totals. */
export function TermsFields(): ReactElement {
  return (
    <>
      <DiscountFields />
      <DepositFields />
    </>
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
      <SelectField label="Deposit" none="none" value={deposit?.kind ?? ''} options={TERM_KINDS} onChange={choose} />
      {deposit?.kind === 'amount' && (
        <MoneyField
          label="Paid when they say yes"
          selectWhole
          value={deposit.amountMinor === 0 ? null : deposit.amountMinor}
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
          selectWhole
          value={deposit.basisPoints === 0 ? null : deposit.basisPoints / PER_CENT}
          onChange={(percent, fault) => fault === null && set({ kind: 'share', basisPoints: toBasisPoints(percent) })}
        />
      )}
    </>
  )
}
