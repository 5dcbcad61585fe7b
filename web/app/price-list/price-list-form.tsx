import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { listSaleFault } from '../../../core/pricing/list-sale.ts'
import type { ListPrice } from '../../../core/pricing/price-list.ts'
import { faultsOf, problemOf } from '../client/problem.ts'
import { savePriceListEntry, type PriceListBody, type PriceListEntry } from '../client/price-list.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { TextField } from '../parts/field.tsx'
import { QuantityField } from '../parts/figure-fields.tsx'
import { mergeTyped } from '../parts/merge.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { usePerson } from '../session/session.ts'
import { PriceRows } from './price-rows.tsx'

type Read = Versioned<PriceListEntry>
export interface PriceDraft {
  validFrom: string
  priceMinor: number | null
  saleMinor: number | null
  /** Empty: no last day. */
  saleUntil: string
}
export interface PriceListDraft {
  stockNumber: string
  stockCount: number | null
  prices: PriceDraft[]
}

const draftOf = ({ stockNumber, stockCount, prices }: PriceListEntry): PriceListDraft => ({
  stockNumber: stockNumber ?? '',
  stockCount,
  prices: prices.map((price) => ({ ...price, saleUntil: price.saleUntil ?? '' })),
})
const LABELS: Record<keyof PriceListDraft, string> = { stockNumber: 'Stock number', stockCount: 'In stock', prices: 'Prices' }
const say = (value: PriceListDraft[keyof PriceListDraft]): string =>
  Array.isArray(value) ? value.map(({ validFrom }) => `from ${validFrom}`).join(', ') : String(value ?? '')

/** What is missing before the list can be saved, by field. */
function faultsIn({ prices }: Pick<PriceListDraft, 'prices'>): Record<string, string> {
  return Object.fromEntries(
    prices.flatMap(({ validFrom, priceMinor }, at) => [
      ...(priceMinor === null ? [[`prices.${at}.priceMinor`, 'The price is missing. Write it, or take the row out.']] : []),
      ...(validFrom === '' ? [[`prices.${at}.validFrom`, 'The day is missing.']] : []),
      ...(prices.findIndex((other) => other.validFrom === validFrom) !== at
        ? [[`prices.${at}.validFrom`, 'Another price begins on this day.']]
        : []),
      ...saleFaultIn(prices, at),
    ]),
  ) as Record<string, string>
}

function saleFaultIn(prices: readonly PriceDraft[], at: number): Array<[string, string]> {
  const [price] = listPricesOf(prices.slice(at, at + 1))
  const fault = price && price.validFrom !== '' ? listSaleFault(price) : null
  return fault === null ? [] : [[`prices.${at}.${fault.field}`, fault.words]]
}

/** Prices that are whole, as the list keeps them. */
const listPricesOf = (prices: readonly PriceDraft[]): ListPrice[] =>
  prices.flatMap(({ priceMinor, saleUntil, ...price }) =>
    priceMinor === null ? [] : [{ ...price, priceMinor, saleUntil: saleUntil || null }],
  )

/** What is typed, saved on the version it was read at; a newer one is brought in without losing it. */
function useEntry(read: Read, reload: () => Promise<Read | undefined>) {
  const queries = useQueryClient()
  const navigate = useNavigate()
  const [based, setBased] = useState(() => ({ etag: read.etag, draft: draftOf(read.value) }))
  const [draft, setDraft] = useState(based.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const save = useMutation({
    mutationFn: (body: PriceListBody) => savePriceListEntry(read.value.productId, body, based.etag),
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['price-list'] })
      await navigate({ to: '/catalog/price-list' })
    },
  })
  const compare = useMutation({
    mutationFn: reload,
    onSuccess: (newest) => {
      if (!newest) return
      const theirs = draftOf(newest.value)
      const { merged, clashes: both } = mergeTyped(based.draft, draft, theirs)
      setClashes(both.map((key) => ({ label: LABELS[key], mine: say(draft[key]), theirs: say(theirs[key]) })))
      setBased({ etag: newest.etag, draft: theirs })
      setDraft(merged)
      save.reset()
    },
  })
  return { draft, setDraft, clashes, save, compare }
}

/** One product's own number, stock and prices, each price from a day on. */
export function PriceListForm({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const manages = usePerson().role === 'manager'
  const { draft, setDraft, clashes, save, compare } = useEntry(read, reload)
  const [tried, setTried] = useState(false)
  const missing = faultsIn(draft)
  const faults: Record<string, string> = { ...faultsOf(save.error), ...(tried ? missing : {}) }
  const submit = (form: HTMLFormElement): void => {
    setTried(true)
    if (Object.keys(missing).length > 0 || form.querySelector('[aria-invalid="true"]') !== null || save.isPending) return
    save.mutate({ stockNumber: draft.stockNumber.trim() || null, stockCount: draft.stockCount, prices: listPricesOf(draft.prices) })
  }
  const stale = save.error !== null && problemOf(save.error).status === 412
  return (
    <Screen
      title={read.value.name}
      pageTitle={`${read.value.name} · price list`}
      above={<Link to="/catalog/price-list">Price list</Link>}
      width="narrow"
    >
      <form
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          submit(event.currentTarget)
        }}
      >
        <fieldset className="form" disabled={!manages}>
          <legend className="sr">Number, stock and prices</legend>
          <div className="form-row">
            <TextField
              label="Stock number"
              value={draft.stockNumber}
              maxLength={40}
              required={false}
              fault={faults['stockNumber']}
              onChange={(stockNumber) => setDraft({ ...draft, stockNumber })}
            />
            <QuantityField
              label="In stock"
              unit="count"
              min={0}
              max={1_000_000}
              whole
              required={false}
              help="Left open: not counted."
              value={draft.stockCount}
              fault={faults['stockCount']}
              onChange={(stockCount, fault) => fault === null && setDraft({ ...draft, stockCount })}
            />
          </div>
          <PriceRows prices={draft.prices} faults={faults} onChange={(prices) => setDraft({ ...draft, prices })} />
        </fieldset>
        {stale ? (
          <StaleTold busy={compare.isPending} onCompare={() => compare.mutate()} />
        ) : clashes ? (
          <MergedTold clashes={clashes} />
        ) : (
          <ErrorNotice error={save.error} shown={['stockNumber', 'stockCount']} />
        )}
        {manages && (
          <p className="acts">
            <Button look="main" type="submit" busy={save.isPending}>
              Save the price
            </Button>
          </p>
        )}
      </form>
    </Screen>
  )
}
