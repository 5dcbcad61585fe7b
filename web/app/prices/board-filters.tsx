import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { KIND_NAMES, KINDS } from '../../../core/catalog/kinds.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { SearchField } from '../parts/search-field.tsx'
import { regionsQuery, storesQuery } from '../stores/stores-query.ts'
import type { BoardSearch } from './board-search.ts'

export function BoardFilters({ search, onChange }: { search: BoardSearch; onChange: (search: BoardSearch) => void }): ReactElement {
  const stores = useQuery(storesQuery)
  const regions = useQuery(regionsQuery)
  return (
    <search className="filters form-row">
      <SearchField label="Search" value={search.q} onChange={(q) => onChange({ ...search, q })} />
      <SelectField
        label="Kind"
        none="Every kind"
        value={search.kind ?? ''}
        onChange={(kind) => onChange({ ...search, kind: kind || undefined })}
        options={KINDS.map((kind) => ({ value: kind, label: KIND_NAMES[kind] }))}
      />
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
    </search>
  )
}
