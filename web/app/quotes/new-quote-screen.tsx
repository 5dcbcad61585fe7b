import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { resolveConditions } from '../../../core/quote/conditions.ts'
import { emptyNeed } from '../../../core/quote/empty-draft.ts'
import { BUILD_LETTERS, type QuoteDraft } from '../../../core/quote/draft.ts'
import type { Need, NeedExact } from '../../../core/quote/need.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { createCustomer } from '../client/customers.ts'
import { faultsByField, problemOf } from '../client/problem.ts'
import { createQuote, getQuote } from '../client/quotes.ts'
import { listStores } from '../client/stores.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useInstall } from '../session/session.ts'
import { CustomerChoice, type ChosenCustomer } from './customer-choice.tsx'
import { focusFault } from './focus-fault.ts'
import { FirstExactFields, NeedExactFields } from './need-exact-fields.tsx'
import { regionsQuery } from '../stores/stores-query.ts'
import { NeedQuestions } from './need-questions.tsx'
import { newBuild } from './new-build.ts'
import { copiedDraft } from './quote-copy.ts'
import { titleOf } from './quote-title.ts'
import './desk.css'
import './quotes.css'

/** A quote begins with who and what for: the customer and the five questions, then the desk. */
export function NewQuoteScreen(): ReactElement {
  const search = useSearch({ from: '/quotes/new' })
  const from = search.from ?? ''
  const copied = useQuery({ queryKey: ['quote', from, 'copy'], queryFn: () => getQuote(from), enabled: from !== '', gcTime: 0 })
  if (from === '') return <NewQuoteForm customerId={search.customer ?? null} copied={null} />
  if (copied.data) return <NewQuoteForm customerId={copied.data.value.customer.id} copied={copied.data.value} />
  return (
    <Screen title="New quote" width="narrow">
      {copied.isError ? (
        <ErrorNotice error={copied.error} onRetry={() => void copied.refetch()} />
      ) : (
        <LoadingRows what="the quote" rows={8} />
      )}
    </Screen>
  )
}

const SIZELESS = 'Say how big: a length or a common size. Where nobody knows yet, press “Start the quote”.'

/** `copied`: the quote whose need and builds it begins with, for the same customer or another. */
function NewQuoteForm({ customerId, copied }: { customerId: string | null; copied: QuoteView | null }): ReactElement {
  const base = copied && copiedDraft(copied.draft, copied)
  const [customer, setCustomer] = useState<ChosenCustomer>({ id: customerId, name: '', reach: '' })
  const [need, setNeed] = useState<Need>(() => base?.need ?? emptyNeed())
  const [title, setTitle] = useState(base?.title ?? '')
  const [tried, setTried] = useState(false)
  const [hasty, setHasty] = useState(false)
  const make = useMakeQuote()
  const install = useInstall()
  const ready = customer.id !== null || customer.name.trim() !== ''
  const faults = make.error ? faultsByField(problemOf(make.error)) : {}
  const sized = need.lengthMm !== null || need.commonSizeId !== null
  const submit = (form: HTMLFormElement): void => {
    setTried(true)
    // Enter in a field is often meant for the field: it begins the quote only where the size is known too. The button asks for the customer alone.
    const early = !sized && form.querySelector('input:focus') !== null
    setHasty(early)
    // A figure that was refused would be lost on the way to the desk.
    if (!ready || early || form.querySelector('[aria-invalid="true"]') !== null) return focusFault(form)
    if (!make.isPending)
      make.mutate({
        customer,
        draft: {
          ...(base ?? { builds: [newBuild()], suggestion: null, standsUntil: null, note: '' }),
          title: title.trim() || titleOf(need, install.units),
          need,
        },
      })
  }
  return (
    <Screen title="New quote" width="narrow" {...(copied ? { below: sayCopied(copied) } : {})}>
      <form
        className="form new-quote"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          submit(event.currentTarget)
        }}
      >
        <CustomerChoice
          chosen={customer}
          onChange={setCustomer}
          fault={tried && !ready ? 'Choose a customer, or write the name of a new one.' : (faults['name'] ?? null)}
        />
        <NeedPart need={need} sizeFault={hasty && !sized ? SIZELESS : null} change={setNeed} />
        <TextField
          label="Title, as the customer reads it"
          required={false}
          help={`Left open it is “${titleOf(need, install.units)}”.`}
          value={title}
          maxLength={120}
          onChange={setTitle}
        />
        <ErrorNotice error={make.error} shown={['name']} />
        <p>
          <Button look="main" type="submit" busy={make.isPending}>
            Start the quote
          </Button>
        </p>
      </form>
    </Screen>
  )
}

/** What comes along, said before it is made. */
function sayCopied({ draft, number }: QuoteView): string {
  const names = draft.builds.map((build, index) => [BUILD_LETTERS[index], build.name].filter(Boolean).join(' '))
  return `A copy of ${number === null ? 'a draft' : `quote ${number}`}, at today’s prices, with ${names.join(', ')}. The quote it is copied from stays as it is.`
}

/** The customer is made first where there is none; a second try after a refusal does not make a second one. */
function useMakeQuote() {
  const navigate = useNavigate()
  const queries = useQueryClient()
  const [made, setMade] = useState<{ name: string; reach: string; id: string } | null>(null)
  return useMutation({
    mutationFn: async ({ customer, draft }: { customer: ChosenCustomer; draft: QuoteDraft }) => {
      const body = { name: customer.name.trim(), reach: customer.reach.trim(), note: '' }
      const known = customer.id ?? (made?.name === body.name && made.reach === body.reach ? made.id : null)
      const customerId = known ?? (await createCustomer(body)).id
      if (known === null) setMade({ name: body.name, reach: body.reach, id: customerId })
      return createQuote({ customerId, draft })
    },
    onSuccess: async (quote) => {
      await queries.invalidateQueries({ queryKey: ['customers'] })
      await navigate({ to: '/quotes/$quoteId', params: { quoteId: quote.id } })
    },
  })
}

interface NeedPartProps {
  need: Need
  sizeFault: string | null
  change: (next: (need: Need) => Need) => void
}

/** `change` is told what becomes of the newest need: one field may be left and the next changed before the screen is drawn again. */
function NeedPart({ need, sizeFault, change }: NeedPartProps): ReactElement {
  const install = useInstall()
  const stores = useQuery({ queryKey: ['stores'], queryFn: listStores })
  const regions = useQuery(regionsQuery)
  const conditions = resolveConditions(need, install)
  const changeExact = (part: Partial<NeedExact>): void =>
    change((now) => ({
      ...now,
      exact: Object.fromEntries(Object.entries({ ...now.exact, ...part }).filter(([, value]) => value !== undefined)),
    }))
  return (
    <fieldset className="new-need">
      <legend>The need</legend>
      <div className="form">
        <NeedQuestions
          need={need}
          stores={stores.data ?? []}
          regions={regions.data}
          sizeFault={sizeFault}
          onChange={(part) => change((now) => ({ ...now, ...part }))}
        />
        <FirstExactFields need={need} conditions={conditions} onChange={changeExact} />
        <details className="exact">
          <summary>More exact: outlet, tap water, animals</summary>
          <NeedExactFields need={need} conditions={conditions} onChange={changeExact} />
        </details>
      </div>
    </fieldset>
  )
}
