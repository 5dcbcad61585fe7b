import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { SelectField } from '../parts/choice-fields.tsx'
import { ProductFilters } from '../parts/product-filters.tsx'
import { useInstall } from '../session/session.ts'
import { regionsQuery, storesQuery } from '../stores/stores-query.ts'
import type { BoardSearch } from './board-search.ts'

export function BoardFilters({ search, onChange }: { search: BoardSearch; onChange: (search: BoardSearch) => void }): ReactElement {
  const stores = useQuery(storesQuery)
  const regions = useQuery(regionsQuery)
  // A place that is a store has its own alone.
  if (useInstall().mode === 'store') return <ProductFilters search={search} onChange={(change) => onChange({ ...search, ...change })} />
  return (
    <ProductFilters search={search} onChange={(change) => onChange({ ...search, ...change })}>
      <SelectField
        label="Store"
        none="Every store"
        value={search.store ?? ''}
        onChange={(store) => onChange({ ...search, store: store || undefined })}
        options={(stores.data ?? []).filter((store) => !store.archived).map((store) => ({ value: store.id, label: store.name }))}
      />
      {regions.data && regions.data.length > 0 && (
        <SelectField
          label="Region"
          none="Every region"
          value={search.region ?? ''}
          onChange={(region) => onChange({ ...search, region: region || undefined })}
          options={regions.data.map(({ id, name }) => ({ value: id, label: name }))}
        />
      )}
    </ProductFilters>
  )
}
