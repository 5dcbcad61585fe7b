import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { DateField } from '../parts/field.tsx'
import { MoneyField } from '../parts/figure-fields.tsx'
import { useToday } from '../session/session.ts'
import type { PriceListDraft } from './price-list-form.tsx'
import './price-list.css'

type Prices = PriceListDraft['prices']
interface Props {
  prices: Prices
  faults: Record<string, string>
  onChange: (prices: Prices) => void
}

/** Each price with the day from which it counts, and the sale that begins with it. */
export function PriceRows({ prices, faults, onChange }: Props): ReactElement {
  const today = useToday()
  const set = (at: number, part: Partial<Prices[number]>): void =>
    onChange(prices.map((price, index) => (index === at ? { ...price, ...part } : price)))
  return (
    <>
      {prices.map((price, at) => (
        // oxlint-disable-next-line react/no-array-index-key -- a price has no id, and its day changes while it is typed
        <div className="list-price" key={at}>
          <div className="form-row">
            <MoneyField
              label="Price"
              least={1}
              value={price.priceMinor}
              fault={faults[`prices.${at}.priceMinor`]}
              onChange={(priceMinor, fault) => fault === null && set(at, { priceMinor })}
            />
            <DateField
              label="Valid from"
              value={price.validFrom}
              fault={faults[`prices.${at}.validFrom`]}
              onChange={(validFrom) => set(at, { validFrom })}
            />
          </div>
          <div className="form-row">
            <MoneyField
              label="Sale price"
              least={1}
              required={false}
              value={price.saleMinor}
              fault={faults[`prices.${at}.saleMinor`]}
              onChange={(saleMinor, fault) => fault === null && set(at, { saleMinor })}
            />
            <DateField
              label="Last day of the sale"
              required={false}
              value={price.saleUntil}
              fault={faults[`prices.${at}.saleUntil`]}
              onChange={(saleUntil) => set(at, { saleUntil })}
            />
          </div>
          <p>
            <Button small onClick={() => onChange(prices.filter((_, index) => index !== at))}>
              Take this price out<span className="sr"> (from {price.validFrom || 'no day'})</span>
            </Button>
          </p>
        </div>
      ))}
      <p>
        <Button small onClick={() => onChange([...prices, { validFrom: today, priceMinor: null, saleMinor: null, saleUntil: '' }])}>
          Add a price
        </Button>
      </p>
    </>
  )
}
