import { useQuery } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { KIND_NAMES, KINDS } from '../../../core/catalog/kinds.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { SearchField } from '../parts/search-field.tsx'
import { storesQuery } from '../stores/stores-query.ts'
import type { BoardSearch } from './board-search.ts'

export function BoardFilters({ search, onChange }: { search: BoardSearch; onChange: (search: BoardSearch) => void }): ReactElement {
  const stores = useQuery(storesQuery)
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
    </search>
  )
}
