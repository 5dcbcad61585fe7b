import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { daysBetween, sayDate, yearOf } from '../../../core/dates.ts'
import { sayRateFigure, type CurrencyRate } from '../../../core/pricing/currency-rate.ts'
import { faultsOf } from '../client/problem.ts'
import { enterCurrencyRate } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { DateField, TextField } from '../parts/field.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useCurrency, useReader, useToday } from '../session/session.ts'
import { currencyRatesQuery } from './stores-query.ts'
import './stores.css'

/** What foreign currencies are worth: entered by hand with day and source, and printed wherever a price rests on one. */
export function RatesSection({ stores }: { stores: readonly Store[] }): ReactElement | null {
  const home = useCurrency()
  const today = useToday()
  const rates = useQuery(currencyRatesQuery)
  const used = [...new Set(stores.flatMap(({ currency, archived }) => (currency && !archived ? [currency] : [])))].sort()
  const known = rates.data?.items ?? []
  const lacking = used.filter((currency) => !known.some((rate) => rate.currency === currency))
  if (used.length === 0 && known.length === 0) return null
  const old = rates.data?.oldAfterDays ?? 0
  const columns: Array<Column<CurrencyRate>> = [
    { key: 'currency', head: 'Currency', rowHead: true, phone: 'lead', cell: ({ currency }) => currency },
    { key: 'rate', head: `One is worth, ${home}`, num: true, phone: 'figure', cell: ({ rate }) => sayRateFigure(rate) },
    {
      key: 'day',
      head: 'Rate of',
      phone: 'state',
      cell: ({ seenOn }) =>
        daysBetween(seenOn, today) > old ? (
          <>
            {sayDate(seenOn, yearOf(today))}, <b>old: {daysBetween(seenOn, today)} days</b>
          </>
        ) : (
          sayDate(seenOn, yearOf(today))
        ),
    },
    { key: 'source', head: 'Source', phone: 'below', cell: ({ source }) => source },
  ]
  return (
    <section className="store-part" aria-labelledby="rates-head">
      <div className="sechead">
        <h2 id="rates-head">Rates of exchange</h2>
        <p className="quiet">For stores of another currency. A quote prints the rate, its day and its source.</p>
      </div>
      <ErrorNotice error={rates.error} />
      {rates.data && lacking.length > 0 && (
        <Told kind="warn" title={`No rate for ${lacking.join(', ')}`}>
          <p>Prices of stores in that currency are in no total until a rate is entered.</p>
        </Told>
      )}
      {known.length > 0 && <RuledTable caption="Rates of exchange" columns={columns} rows={known} rowKey={({ currency }) => currency} />}
      <RateForm first={lacking[0] ?? used[0] ?? ''} />
    </section>
  )
}

function RateForm({ first }: { first: string }): ReactElement {
  const home = useCurrency()
  const today = useToday()
  const { decimal } = useReader()
  const queries = useQueryClient()
  const [typed, setTyped] = useState({ currency: first, rate: '', seenOn: today, source: '' })
  const [slip, setSlip] = useState<string | null>(null)
  const save = useMutation({
    mutationFn: enterCurrencyRate,
    onSuccess: async () => {
      setTyped({ ...typed, rate: '' })
      await queries.invalidateQueries({ queryKey: ['currency-rates'] })
    },
  })
  const faults = faultsOf(save.error)
  const submit = (): void => {
    const text = typed.rate.trim().replace(decimal, '.')
    const figure = /^\d+(\.\d+)?$/.test(text) ? Number(text) : null
    setSlip(figure === null ? `Write a plain number, like 0${decimal}7312.` : null)
    if (figure !== null && !save.isPending)
      save.mutate({ currency: typed.currency.trim().toUpperCase(), rate: figure, seenOn: typed.seenOn, source: typed.source.trim() })
  }
  return (
    <form
      className="form"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        submit()
      }}
    >
      <div className="form-row">
        <TextField
          label="Currency"
          value={typed.currency}
          maxLength={3}
          fault={faults['currency']}
          onChange={(currency) => setTyped({ ...typed, currency })}
        />
        <TextField
          label={`One is worth, ${home}`}
          value={typed.rate}
          inputMode="decimal"
          fault={slip ?? faults['rate']}
          onChange={(rate) => setTyped({ ...typed, rate })}
        />
        <DateField
          label="Rate of"
          value={typed.seenOn}
          max={today}
          fault={faults['seenOn']}
          onChange={(seenOn) => setTyped({ ...typed, seenOn })}
        />
        <TextField
          label="Source"
          help="Printed: the bank’s noon rate."
          value={typed.source}
          maxLength={120}
          fault={faults['source']}
          onChange={(source) => setTyped({ ...typed, source })}
        />
      </div>
      <ErrorNotice error={save.error} shown={['currency', 'rate', 'seenOn', 'source']} />
      <p className="acts">
        <Button type="submit" busy={save.isPending}>
          Enter the rate
        </Button>
      </p>
    </form>
  )
}
