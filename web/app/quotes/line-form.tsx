import type { MouseEvent, ReactElement } from 'react'
import { sayDate, yearOf } from '../../../core/dates.ts'
import { sayMoney } from '../../../core/money.ts'
import type { BuildLine } from '../../../core/quote/draft.ts'
import { Button } from '../parts/button.tsx'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { BesideKit, withBeside } from './beside-kit.tsx'
import { useDesk } from './desk-context.ts'

type Bought = Extract<BuildLine, { answer: 'buy' }>

/** One line as it stands: how many, where, a note, how it stands to the kit's part (`inKit`); or taken out. Changes count at once. */
export function LineForm({ buildId, line, inKit }: { buildId: string; line: BuildLine; inKit: boolean }): ReactElement {
  const { edit, inputs } = useDesk()
  const remove = (event: MouseEvent<HTMLElement>): void => {
    // The line goes with its button: what had the focus goes on to the search, where another is found.
    event.currentTarget.closest('dialog')?.querySelector<HTMLElement>('[role="combobox"], .choice input')?.focus()
    edit({ do: 'remove_line', buildId, lineId: line.id })
  }
  const product = line.answer === 'not_needed' ? undefined : inputs.products.find((one) => one.id === line.productId)
  const name =
    line.answer === 'not_needed'
      ? `Not needed: ${line.reason}`
      : (product?.name ?? (line.answer === 'owned' ? line.description : 'A product that is no longer in the catalog'))
  return (
    <div className="line-form">
      <div className="top">
        <strong>
          {line.answer === 'owned' && 'Already owned: '}
          {line.answer === 'owned' && line.quantity > 1 && `${line.quantity} × `}
          {name}
        </strong>
        <Button small look="plain" onClick={remove}>
          Remove<span className="sr"> {name}</span>
        </Button>
      </div>
      {line.answer === 'buy' && <BoughtFields buildId={buildId} line={line} />}
      {inKit && line.answer !== 'not_needed' && (
        <BesideKit
          beside={line.besideKit === true}
          onChange={(beside) => edit({ do: 'put_line', buildId, line: withBeside(line, beside), replaces: [] })}
        />
      )}
    </div>
  )
}

function BoughtFields({ buildId, line }: { buildId: string; line: Bought }): ReactElement {
  const { edit } = useDesk()
  const change = (part: Partial<Bought>): void => edit({ do: 'put_line', buildId, line: { ...line, ...part }, replaces: [] })
  return (
    <div className="line-fields">
      <QuantityField
        label="How many"
        unit="count"
        whole
        min={1}
        max={999}
        value={line.quantity}
        onChange={(quantity) => quantity !== null && change({ quantity })}
      />
      <StoreField line={line} onChange={(storeId) => change({ storeId })} />
      <TextField
        label="Note, the customer reads it"
        required={false}
        value={line.note}
        maxLength={500}
        onChange={(note) => change({ note })}
      />
    </div>
  )
}

/** Where the build costs least today, delivery included, unless told otherwise; every other store with its price and the day it was seen. */
function StoreField({ line, onChange }: { line: Bought; onChange: (storeId: string | null) => void }): ReactElement {
  const { inputs, currency } = useDesk()
  const year = yearOf(inputs.asOf)
  const offers = inputs.stores
    .filter((store) => !store.archived || store.id === line.storeId)
    .map((store) => {
      const today = inputs.prices.find((price) => price.productId === line.productId && price.storeId === store.id)?.today
      return { store, today, minor: today?.priceMinor ?? Number.POSITIVE_INFINITY }
    })
    .toSorted((a, b) => a.minor - b.minor)
  const options = offers.map(({ store, today }) => ({
    value: store.id,
    label: today
      ? `${store.name}, ${sayMoney(today.priceMinor, currency)}, seen ${sayDate(today.seenOn, year)}`
      : `${store.name}, no price`,
  }))
  return (
    <SelectField
      label="Store"
      value={line.storeId ?? ''}
      none="where the build costs least"
      options={options}
      onChange={(storeId) => onChange(storeId === '' ? null : storeId)}
    />
  )
}
