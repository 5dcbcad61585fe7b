import { useState, type ReactElement } from 'react'
import type { Discount } from '../../../core/pricing/discount.ts'
import { heldDiscounts, sayHeld } from '../../../core/quote/discount-room.ts'
import { discountOf } from '../../../core/quote/quote-market.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { useDesk } from './desk-context.ts'
import { PER_CENT, TERM_KINDS, toBasisPoints } from './term-kinds.ts'

/** What is taken off the goods, its reason and who gives it. What a build's goods are too few for is told while it is typed. */
export function DiscountFields(): ReactElement {
  const { state, edit, inputs, builds, currency } = useDesk()
  const [typedMinor, setTyped] = useState<number | null>(null)
  const { discount = null } = state.draft
  const offered = discountOf(inputs)
  const meant = offered?.kind === 'amount' && typedMinor !== null ? { ...offered, amountMinor: typedMinor } : offered
  const held = sayHeld(heldDiscounts(meant, builds), currency)
  const set = (changed: Discount | null) => edit({ do: 'discount', discount: changed })
  const choose = (kind: Discount['kind'] | ''): void => {
    const kept = { storeId: discount?.storeId ?? null, reason: discount?.reason ?? '' }
    if (kind === '') set(null)
    else if (kind !== discount?.kind) set(kind === 'amount' ? { kind, amountMinor: 0, ...kept } : { kind, basisPoints: 0, ...kept })
  }
  return (
    <>
      <div data-quote-field="discount">
        <SelectField label="Discount" none="none" shortcut="T" value={discount?.kind ?? ''} options={TERM_KINDS} onChange={choose} />
      </div>
      {discount && (
        <>
          {discount.kind === 'amount' ? (
            <MoneyField
              label="Taken off the goods"
              selectWhole
              value={discount.amountMinor === 0 ? null : discount.amountMinor}
              onTyping={setTyped}
              onChange={(amountMinor, fault) => {
                setTyped(null)
                if (fault === null) set({ ...discount, amountMinor: amountMinor ?? 0 })
              }}
            />
          ) : (
            <QuantityField
              label="Taken off the goods"
              unit="percent"
              min={0}
              max={100}
              selectWhole
              value={discount.basisPoints === 0 ? null : discount.basisPoints / PER_CENT}
              onChange={(percent, fault) => fault === null && set({ ...discount, basisPoints: toBasisPoints(percent) })}
            />
          )}
          <output className={held === '' ? undefined : 'told warn'}>{held}</output>
          <div data-quote-field="discount.reason">
            <TextField
              label="Reason"
              help="The customer reads it beside the figure. It comes off before tax."
              value={discount.reason}
              maxLength={200}
              onChange={(reason) => set({ ...discount, reason })}
            />
          </div>
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
