import { keepPreviousData, useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import type { Customer } from '../../../core/quote/quote-view.ts'
import { createCustomer, listCustomers } from '../client/customers.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { CustomerForm, EMPTY_CUSTOMER } from './customer-form.tsx'
import '../quotes/quotes.css'

const COLUMNS: ReadonlyArray<Column<Customer>> = [
  { key: 'name', head: 'Name', rowHead: true, phone: 'lead', cell: (row) => (
    <Link to="/customers/$customerId" params={{ customerId: row.id }} className="row-link">
      {row.erasedOn ? `erased on ${row.erasedOn}` : row.name}
    </Link>
  ) },
  { key: 'reach', head: 'Reach', phone: 'below', cell: (row) => row.reach || <span className="quiet">not entered</span> },
  { key: 'note', head: 'Note', cell: (row) => row.note },
] // prettier-ignore

/** Everyone a quote was made for. */
export function CustomersScreen(): ReactElement {
  const [q, setQ] = useState('')
  const [adding, setAdding] = useState(false)
  const words = q.trim()
  const customers = useQuery({ queryKey: ['customers', words], queryFn: () => listCustomers(words), placeholderData: keepPreviousData })
  const rows = customers.data ?? []
  const add = (
    <Button look="main" onClick={() => setAdding(true)}>
      New customer
    </Button>
  )
  return (
    <Screen title="Customers" actions={adding ? undefined : add}>
      {adding && <NewCustomer onCancel={() => setAdding(false)} />}
      <search className="form-row list-filter">
        <TextField label="Name or how to reach" type="search" value={q} onChange={setQ} />
      </search>
      {customers.isError && <ErrorNotice error={customers.error} onRetry={() => void customers.refetch()} />}
      {customers.isPending && <LoadingRows what="the customers" />}
      {customers.data && rows.length === 0 && (
        <Empty>{words ? 'No customer matches.' : 'No customers yet. A new quote makes one, or add one here.'}</Empty>
      )}
      {rows.length > 0 && <RuledTable caption="Customers" columns={COLUMNS} rows={rows} rowKey={(row) => row.id} />}
    </Screen>
  )
}

function NewCustomer({ onCancel }: { onCancel: () => void }): ReactElement {
  const navigate = useNavigate()
  const queries = useQueryClient()
  const create = useMutation({
    mutationFn: createCustomer,
    onSuccess: async (customer) => {
      await queries.invalidateQueries({ queryKey: ['customers'] })
      await navigate({ to: '/customers/$customerId', params: { customerId: customer.id } })
    },
  })
  return (
    <section aria-labelledby="new-customer">
      <div className="sechead">
        <h2 id="new-customer">New customer</h2>
      </div>
      <CustomerForm
        start={EMPTY_CUSTOMER}
        error={create.error}
        busy={create.isPending}
        saveWords="Save customer"
        onSave={(body) => create.mutate(body)}
        onCancel={onCancel}
      />
    </section>
  )
}
