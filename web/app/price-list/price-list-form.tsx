import { useMutation, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf, problemOf } from '../client/problem.ts'
import { savePriceListEntry, type PriceListBody, type PriceListEntry } from '../client/price-list.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { MergedTold, StaleTold, type Clash } from '../parts/conflict-told.tsx'
import { DateField, TextField } from '../parts/field.tsx'
import { MoneyField, QuantityField } from '../parts/figure-fields.tsx'
import { mergeTyped } from '../parts/merge.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { usePerson, useToday } from '../session/session.ts'

type Read = Versioned<PriceListEntry>
interface Draft {
  stockNumber: string
  stockCount: number | null
  prices: Array<{ validFrom: string; priceMinor: number | null }>
}

const draftOf = ({ stockNumber, stockCount, prices }: PriceListEntry): Draft => ({ stockNumber: stockNumber ?? '', stockCount, prices })
const LABELS: Record<keyof Draft, string> = { stockNumber: 'Stock number', stockCount: 'In stock', prices: 'Prices' }
const say = (value: Draft[keyof Draft]): string =>
  Array.isArray(value) ? value.map(({ validFrom }) => `from ${validFrom}`).join(', ') : String(value ?? '')

/** What is missing before the list can be saved, by field. */
function faultsIn({ prices }: Draft): Record<string, string> {
  return Object.fromEntries(
    prices.flatMap(({ validFrom, priceMinor }, at) => [
      ...(priceMinor === null ? [[`prices.${at}.priceMinor`, 'The price is missing. Write it, or take the row out.']] : []),
      ...(validFrom === '' ? [[`prices.${at}.validFrom`, 'The day is missing.']] : []),
      ...(prices.findIndex((other) => other.validFrom === validFrom) !== at
        ? [[`prices.${at}.validFrom`, 'Another price begins on this day.']]
        : []),
    ]),
  ) as Record<string, string>
}

/** One product's own number, stock and prices, each price from a day on. */
export function PriceListForm({ read, reload }: { read: Read; reload: () => Promise<Read | undefined> }): ReactElement {
  const queries = useQueryClient()
  const navigate = useNavigate()
  const today = useToday()
  const manages = usePerson().role === 'manager'
  const [based, setBased] = useState(() => ({ etag: read.etag, draft: draftOf(read.value) }))
  const [draft, setDraft] = useState(based.draft)
  const [clashes, setClashes] = useState<Clash[] | null>(null)
  const [tried, setTried] = useState(false)
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
  const missing = faultsIn(draft)
  const faults: Record<string, string> = { ...faultsOf(save.error), ...(tried ? missing : {}) }
  const submit = (form: HTMLFormElement): void => {
    setTried(true)
    if (Object.keys(missing).length > 0 || form.querySelector('[aria-invalid="true"]') !== null || save.isPending) return
    const prices = draft.prices.flatMap(({ validFrom, priceMinor }) => (priceMinor === null ? [] : [{ validFrom, priceMinor }]))
    save.mutate({ stockNumber: draft.stockNumber.trim() || null, stockCount: draft.stockCount, prices })
  }
  const stale = save.error !== null && problemOf(save.error).status === 412
  const setPrice = (at: number, part: Partial<Draft['prices'][number]>): void =>
    setDraft({ ...draft, prices: draft.prices.map((price, index) => (index === at ? { ...price, ...part } : price)) })
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
          {draft.prices.map((price, at) => (
            // oxlint-disable-next-line react/no-array-index-key -- a price has no id, and its day changes while it is typed
            <div className="form-row" key={at}>
              <MoneyField
                label="Price"
                least={1}
                value={price.priceMinor}
                fault={faults[`prices.${at}.priceMinor`]}
                onChange={(priceMinor, fault) => fault === null && setPrice(at, { priceMinor })}
              />
              <DateField
                label="Valid from"
                value={price.validFrom}
                fault={faults[`prices.${at}.validFrom`]}
                onChange={(validFrom) => setPrice(at, { validFrom })}
              />
              <Button small look="plain" onClick={() => setDraft({ ...draft, prices: draft.prices.filter((_, index) => index !== at) })}>
                Take out<span className="sr"> the price from {price.validFrom || 'no day'}</span>
              </Button>
            </div>
          ))}
          <p>
            <Button small onClick={() => setDraft({ ...draft, prices: [...draft.prices, { validFrom: today, priceMinor: null }] })}>
              Add a price
            </Button>
          </p>
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
