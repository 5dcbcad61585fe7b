import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import type { Store } from '../../../core/catalog/store.ts'
import { storeCurrency } from '../../../core/pricing/foreign-stores.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useCurrency } from '../session/session.ts'
import { RatesSection } from './rates-section.tsx'
import { RegionsSection } from './regions-section.tsx'
import { storesQuery } from './stores-query.ts'
import { sayDelivery, sayTax } from './store-words.ts'

const ADD = (
  <Link to="/stores/new" className="btn main">
    Add a store
  </Link>
)

/** Every store with what it charges. */
export function StoresScreen(): ReactElement {
  const stores = useQuery(storesQuery)
  const currency = useCurrency()
  const columns: Array<Column<Store>> = [
    {
      key: 'name',
      head: 'Store',
      rowHead: true,
      phone: 'lead',
      cell: (store) => (
        <Link to="/stores/$storeId" params={{ storeId: store.id }}>
          {store.name}
        </Link>
      ),
    },
    { key: 'where', head: 'Where', phone: 'figure', cell: (store) => (store.kind === 'online' ? 'online' : (store.town ?? 'local')) },
    {
      key: 'delivery',
      head: 'Delivery',
      phone: 'below',
      cell: (store) => sayDelivery(store.delivery, storeCurrency(store, currency), currency),
    },
    { key: 'tax', head: 'Tax', phone: 'state', cell: sayTax },
    { key: 'returns', head: 'Returns', cell: (store) => (store.returnDays === null ? 'not stated' : `${store.returnDays} days`) },
    {
      key: 'state',
      head: 'State',
      cell: (store) => [store.own ? 'our own' : '', store.archived ? 'archived' : ''].filter(Boolean).join(', '),
    },
  ]
  return (
    <Screen
      title="Stores"
      below="Where prices are seen, with what each charges on top."
      actions={stores.data && stores.data.length > 0 ? ADD : undefined}
    >
      <ErrorNotice error={stores.error} onRetry={() => void stores.refetch()} />
      {stores.isPending && <LoadingRows what="the stores" />}
      {stores.data && stores.data.length === 0 && <Empty action={ADD}>No stores yet. A sighting needs one.</Empty>}
      {stores.data && stores.data.length > 0 && (
        <RuledTable caption="Stores" columns={columns} rows={stores.data} rowKey={({ id }) => id} />
      )}
      {stores.data && stores.data.length > 1 && <RegionsSection stores={stores.data} />}
      {stores.data && <RatesSection stores={stores.data} />}
    </Screen>
  )
}
