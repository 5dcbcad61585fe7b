import { keepPreviousData, useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { listProducts } from '../client/products.ts'
import { TickField } from '../parts/choice-fields.tsx'
import { byName } from '../parts/by-name.ts'
import { MoreRows } from '../parts/more-rows.tsx'
import { ProductFilters } from '../parts/product-filters.tsx'
import { Screen } from '../parts/screen.tsx'
import { Empty, ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { usePerson } from '../session/session.ts'
import type { CatalogSearch } from './catalog-search.ts'
import { CatalogTable } from './catalog-table.tsx'
import { SpecFilters } from './spec-filters.tsx'

const PAGE = 50

/** The catalog by kind and name; a row opens the product's form. */
export function CatalogScreen(): ReactElement {
  const search = useSearch({ from: '/catalog' })
  const navigate = useNavigate({ from: '/catalog' })
  const [shown, setShown] = useState(PAGE)
  const found = useQuery({
    queryKey: ['products', 'list', search, shown],
    queryFn: () => listProducts({ kind: search.kind, q: search.q, archived: search.archived, spec: search.spec, limit: shown }),
    placeholderData: keepPreviousData,
  })
  const change = (next: CatalogSearch): void => {
    setShown(PAGE)
    void navigate({ search: next, replace: true })
  }
  // With words the server's order stands: the best first.
  const items = search.q ? (found.data?.items ?? []) : (found.data?.items ?? []).toSorted(byName)
  return (
    <Screen title="Catalog" below="What can stand in a build, with what its maker states." actions={<CatalogActions />}>
      <CatalogFilters search={search} onChange={change} />
      <ErrorNotice error={found.error} onRetry={() => void found.refetch()} />
      {found.isPending && <LoadingRows rows={10} what="the catalog" />}
      {found.data && items.length === 0 && (
        <Empty action={<Link to="/catalog/new">Add a product</Link>}>
          {(search.kind ?? search.q ?? search.spec)
            ? 'Nothing in the catalog matches.'
            : 'The catalog is empty. Add the first product, or import a file.'}
        </Empty>
      )}
      {items.length > 0 && <CatalogTable items={items} pictures={found.data?.pictures ?? {}} />}
      {items.length > 0 && (
        <MoreRows
          shown={items.length}
          total={found.data?.total ?? 0}
          page={PAGE}
          busy={found.isFetching}
          onMore={() => setShown(shown + PAGE)}
        />
      )}
    </Screen>
  )
}

function CatalogActions(): ReactElement {
  const person = usePerson()
  return (
    <>
      <Link to="/catalog/price-list" className="btn">
        Price list
      </Link>
      {person.role === 'manager' && (
        <Link to="/catalog/exchange" className="btn">
          Import and export
        </Link>
      )}
      <Link to="/catalog/new" className="btn main">
        Add a product
      </Link>
    </>
  )
}

function CatalogFilters({ search, onChange }: { search: CatalogSearch; onChange: (search: CatalogSearch) => void }): ReactElement {
  const { kind } = search
  return (
    <ProductFilters
      search={search}
      // What was asked of one kind's spec means nothing to another.
      onChange={(change) => onChange({ ...search, ...change, ...('kind' in change ? { spec: undefined } : {}) })}
      below={
        kind && (
          <SpecFilters
            key={kind}
            kind={kind}
            spec={search.spec ?? ''}
            onChange={(spec) => onChange({ ...search, spec: spec || undefined })}
          />
        )
      }
    >
      {kind && (
        <Link to="/watches" search={{ kind, ...(search.spec ? { spec: search.spec } : {}) }}>
          Watch for these
        </Link>
      )}
      <TickField
        label="Archived ones"
        checked={search.archived === true}
        onChange={(archived) => onChange({ ...search, archived: archived || undefined })}
      />
    </ProductFilters>
  )
}
