import { useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { Button } from '../parts/button.tsx'
import { SelectField, TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { RateProducts } from './rate-products.tsx'
import type { StorePartProps } from './store-charges.tsx'
import type { RateDraft } from './store-draft.ts'
import './stores.css'

/** As the validator of a store has it. */
const MOST_RATES = 8

/** Rates that some goods take in place of the usual one, and the one that delivery takes. */
export function StoreRates({ draft, faults, set }: StorePartProps): ReactElement {
  const change = (at: number, part: Partial<RateDraft>): void =>
    set({ rates: draft.rates.map((rate, index) => (index === at ? { ...rate, ...part } : rate)) })
  const named = draft.rates.filter(({ name }) => name.trim() !== '')
  return (
    <>
      {draft.rates.map((rate, at) => (
        <RateFields
          // oxlint-disable-next-line react/no-array-index-key -- a rate has no id, nothing is reordered, and a name changes while it is typed
          key={at}
          rate={rate}
          path={`otherRates.${at}`}
          faults={faults}
          change={(part) => change(at, part)}
          remove={() => set({ rates: draft.rates.filter((_, index) => index !== at) })}
        />
      ))}
      {draft.rates.length < MOST_RATES && (
        <p>
          <Button small onClick={() => set({ rates: [...draft.rates, { name: '', percent: '', kinds: [], productIds: [] }] })}>
            Add a rate that some goods take
          </Button>
        </p>
      )}
      {draft.deliveryTaxed && named.length > 0 && (
        <SelectField
          label="Delivery takes"
          none="the usual rate"
          value={draft.deliveryRate}
          fault={faults['deliveryRate']}
          options={named.map(({ name }) => ({ value: name.trim(), label: name.trim() }))}
          onChange={(deliveryRate) => set({ deliveryRate })}
        />
      )}
    </>
  )
}

interface RateProps {
  rate: RateDraft
  path: string
  faults: Record<string, string>
  change: (part: Partial<RateDraft>) => void
  remove: () => void
}

function RateFields({ rate, path, faults, change, remove }: RateProps): ReactElement {
  // As it was at first: the first tick must not fold the list away.
  const [opened] = useState(rate.kinds.length + rate.productIds.length === 0)
  const toggle = (kind: Kind, on: boolean): void => change({ kinds: on ? [...rate.kinds, kind] : rate.kinds.filter((one) => one !== kind) })
  return (
    <fieldset className="rate">
      <legend className="label">Another rate</legend>
      <div className="form-row">
        <TextField
          label="Name on the receipt"
          value={rate.name}
          maxLength={40}
          fault={faults[`${path}.name`]}
          onChange={(name) => change({ name })}
        />
        <TextField
          label="Rate"
          value={rate.percent}
          unit="%"
          inputMode="decimal"
          fault={faults[`${path}.basisPoints`]}
          onChange={(percent) => change({ percent })}
        />
      </div>
      <details open={opened}>
        <summary>What takes it: {sayTakers(rate)}</summary>
        <div className="kind-ticks">
          {KINDS.map((kind) => (
            <TickField key={kind} label={KIND_NAMES[kind]} checked={rate.kinds.includes(kind)} onChange={(on) => toggle(kind, on)} />
          ))}
        </div>
        <RateProducts rate={rate} change={change} />
      </details>
      {faults[`${path}.kinds`] && <p className="fault">{faults[`${path}.kinds`]}</p>}
      <p>
        <Button small look="plain" onClick={remove}>
          Take out {rate.name.trim() || 'this rate'}
        </Button>
      </p>
    </fieldset>
  )
}

/** @example sayTakers({ …, kinds: ['substrate'], productIds: ['p'] }) // 'Substrate and 1 product' */
function sayTakers({ kinds, productIds }: RateDraft): string {
  const products = productIds.length === 0 ? '' : `${productIds.length} ${productIds.length === 1 ? 'product' : 'products'}`
  return [kinds.map((kind) => KIND_NAMES[kind]).join(', '), products].filter(Boolean).join(' and ') || 'nothing yet'
}
