import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { getCustomer, updateCustomer, type CustomerBody, type CustomerView } from '../client/customers.ts'
import { problemOf } from '../client/problem.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { QuoteTable } from '../quotes/quotes-screen.tsx'
import { SetupTable } from '../setups/setup-table.tsx'
import { useSession } from '../session/session.ts'
import { CustomerForm } from './customer-form.tsx'
import { EraseDialog } from './erase-dialog.tsx'
import { GearSection } from './gear-section.tsx'

/** One customer: who, their quotes, their setups. */
export function CustomerScreen(): ReactElement {
  const { customerId } = useParams({ from: '/customers/$customerId' })
  const customer = useQuery({ queryKey: ['customers', 'one', customerId], queryFn: () => getCustomer(customerId), staleTime: 0 })
  const [editing, setEditing] = useState(false)
  const [erasing, setErasing] = useState(false)
  const manages = useSession()?.person?.role === 'manager'
  const view = customer.data?.value
  if (!customer.data || !view)
    return (
      <Screen title="Customer">
        {customer.isError ? (
          <ErrorNotice error={customer.error} onRetry={() => void customer.refetch()} />
        ) : (
          <LoadingRows what="the customer" />
        )}
      </Screen>
    )
  const actions = (
    <>
      {!editing && !view.erasedOn && <Button onClick={() => setEditing(true)}>Edit</Button>}
      {manages && !view.erasedOn && (
        <Button look="plain" onClick={() => setErasing(true)}>
          Erase
        </Button>
      )}
      {!view.erasedOn && (
        <Link to="/quotes/new" search={{ customer: customerId }} className="btn main">
          New quote
        </Link>
      )}
    </>
  )
  return (
    <Screen
      title={view.erasedOn ? `Erased on ${view.erasedOn}` : view.name}
      above="Customer"
      below={view.reach || undefined}
      actions={actions}
    >
      {editing ? <Editing opened={customer.data} onDone={() => setEditing(false)} /> : view.note && <p>{view.note}</p>}
      <Records view={view} />
      {!view.erasedOn && <GearSection view={view} />}
      <EraseDialog customer={customer.data} open={erasing} onClose={() => setErasing(false)} />
    </Screen>
  )
}

function Editing({ opened, onDone }: { opened: Versioned<CustomerView>; onDone: () => void }): ReactElement {
  const queries = useQueryClient()
  const [base, setBase] = useState(opened)
  const [tried, setTried] = useState<CustomerBody | null>(null)
  const save = useMutation({
    mutationFn: (body: CustomerBody) => {
      setTried(body)
      return updateCustomer(base.value.id, body, base.etag || `"${base.value.version}"`)
    },
    onSuccess: async () => {
      await queries.invalidateQueries({ queryKey: ['customers'] })
      onDone()
    },
  })
  const newest = useMutation({ mutationFn: () => getCustomer(base.value.id), onSuccess: setBase })
  const stale = save.error !== null && problemOf(save.error).status === 412
  const { name, reach, note } = opened.value
  return (
    <section aria-label="Edit this customer">
      {stale && (
        <Told kind="stop" title="Not saved: someone changed this customer meanwhile." live>
          <p>What you typed is kept below.</p>
          {newest.data ? (
            <>
              <p>
                Saved now: {newest.data.value.name}, {newest.data.value.reach || 'no way to reach them'}
                {newest.data.value.note && `, ${newest.data.value.note}`}.
              </p>
              <div className="acts">
                <Button small onClick={() => tried && save.mutate(tried)}>
                  Keep mine
                </Button>
                <Button small onClick={() => void queries.invalidateQueries({ queryKey: ['customers'] }).then(onDone)}>
                  Take theirs
                </Button>
              </div>
            </>
          ) : (
            <p>
              <Button small onClick={() => newest.mutate()}>
                Compare with the newest
              </Button>
            </p>
          )}
          <ErrorNotice error={newest.error} />
        </Told>
      )}
      <CustomerForm
        start={{ name, reach, note }}
        error={save.error}
        busy={save.isPending}
        saveWords="Save changes"
        onSave={(body) => save.mutate(body)}
        onCancel={onDone}
      />
    </section>
  )
}

function Records({ view }: { view: CustomerView }): ReactElement {
  return (
    <>
      <section aria-labelledby="their-quotes">
        <div className="sechead">
          <h2 id="their-quotes">Quotes</h2>
        </div>
        {view.quotes.length > 0 ? (
          <QuoteTable rows={view.quotes} caption={`Quotes for ${view.name}`} withCustomer={false} />
        ) : (
          <Empty>No quotes yet.</Empty>
        )}
      </section>
      {view.setups.length > 0 && (
        <section aria-labelledby="their-setups">
          <div className="sechead">
            <h2 id="their-setups">Setups</h2>
          </div>
          <SetupTable rows={view.setups} caption={`Setups of ${view.name}`} />
        </section>
      )}
    </>
  )
}
