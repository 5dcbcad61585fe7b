import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useEffect, useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { listProducts } from '../client/products.ts'
import { Button } from '../parts/button.tsx'
import { SelectField, TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { useReader } from '../session/session.ts'
import type { CatalogSearch } from './catalog-search.ts'
import { specWords } from './spec-words.ts'

const PAGE = 50
/** A pause in typing this long means that the word is meant. */
const PAUSE_MS = 250

/** The catalog by kind and name; a row opens the product's form. */
export function CatalogScreen(): ReactElement {
  const search = useSearch({ from: '/catalog' })
  const [shown, setShown] = useState(PAGE)
  const found = useQuery({
    queryKey: ['products', 'list', search, shown],
    queryFn: () => listProducts({ kind: search.kind, q: search.q, archived: search.archived, limit: shown }),
    placeholderData: keepPreviousData,
  })
  const items = found.data?.items ?? []
  const total = found.data?.total ?? 0
  return (
    <Screen
      title="Catalog"
      below="What can stand in a build, with what its maker states."
      actions={
        <>
          <Link to="/catalog/import" className="btn">
            Import a CSV file
          </Link>
          <Link to="/catalog/new" className="btn main">
            Add a product
          </Link>
        </>
      }
    >
      <CatalogFilters search={search} onSearch={() => setShown(PAGE)} />
      <ErrorNotice error={found.error} onRetry={() => void found.refetch()} />
      {found.isPending && <LoadingRows rows={10} what="the catalog" />}
      {found.data && items.length === 0 && (
        <Empty
          action={
            <Link to="/catalog/new" className="btn">
              Add a product
            </Link>
          }
        >
          {(search.kind ?? search.q) ? 'Nothing in the catalog matches.' : 'The catalog is empty. Add the first product, or import a file.'}
        </Empty>
      )}
      {items.length > 0 && <CatalogTable items={items} />}
      {items.length > 0 && (
        <p className="acts">
          <span className="quiet" role="status">
            {items.length} of {total}
          </span>
          {items.length < total && (
            <Button small busy={found.isFetching} onClick={() => setShown(shown + PAGE)}>
              Show {Math.min(PAGE, total - items.length)} more
            </Button>
          )}
        </p>
      )}
    </Screen>
  )
}

function CatalogFilters({ search, onSearch }: { search: CatalogSearch; onSearch: () => void }): ReactElement {
  const navigate = useNavigate({ from: '/catalog' })
  const [q, setQ] = useState(search.q ?? '')
  const change = (next: CatalogSearch): void => {
    onSearch()
    void navigate({ search: next, replace: true })
  }
  useEffect(() => {
    if (q.trim() === (search.q ?? '')) return
    const timer = setTimeout(() => {
      onSearch()
      void navigate({ search: { ...search, q: q.trim() || undefined }, replace: true })
    }, PAUSE_MS)
    return () => clearTimeout(timer)
  }, [q, search, navigate, onSearch])
  return (
    <search className="form-row">
      <TextField label="Search" type="search" value={q} onChange={setQ} enterKeyHint="search" />
      <SelectField
        label="Kind"
        none="Every kind"
        value={search.kind ?? ''}
        onChange={(kind) => change({ ...search, kind: kind || undefined })}
        options={KINDS.map((kind) => ({ value: kind, label: KIND_NAMES[kind] }))}
      />
      <TickField
        label="Archived ones"
        checked={search.archived === true}
        onChange={(archived) => change({ ...search, archived: archived || undefined })}
      />
    </search>
  )
}

function CatalogTable({ items }: { items: readonly Product[] }): ReactElement {
  const reader = useReader()
  const columns: Array<Column<Product>> = [
    {
      key: 'name',
      head: 'Product',
      rowHead: true,
      phone: 'lead',
      cell: (product) => (
        <Link to="/catalog/$productId" params={{ productId: product.id }}>
          {product.name}
        </Link>
      ),
    },
    { key: 'kind', head: 'Kind', phone: 'figure', cell: (product) => KIND_NAMES[product.kind] },
    {
      key: 'spec',
      head: 'What the maker states',
      phone: 'below',
      cell: (product) => {
        const words = product.kind === 'kit' ? [`${product.parts.length} parts`, ...specWords(product, reader)] : specWords(product, reader)
        return words.length > 0 ? words.slice(0, 4).join(' · ') : <span className="quiet">nothing entered</span>
      },
    },
    { key: 'state', head: 'State', phone: 'state', cell: (product) => (product.archived ? 'archived' : '') },
    {
      key: 'prices',
      head: <span className="sr">Prices</span>,
      cell: (product) => (
        <Link to="/prices/$productId" params={{ productId: product.id }} aria-label={`Prices of ${product.name}`}>
          Prices
        </Link>
      ),
    },
  ]
  return <RuledTable caption="Products" columns={columns} rows={items} rowKey={({ id }) => id} />
}
