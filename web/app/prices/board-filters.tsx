import { useQuery } from '@tanstack/react-query'
import { useEffect, useState, type ReactElement } from 'react'
import { KIND_NAMES, KINDS } from '../../../core/catalog/kinds.ts'
import { SelectField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { storesQuery } from '../stores/stores-query.ts'
import type { BoardSearch } from './board-search.ts'

/** A pause in typing this long means that the word is meant. */
const PAUSE_MS = 250

export function BoardFilters({ search, onChange }: { search: BoardSearch; onChange: (search: BoardSearch) => void }): ReactElement {
  const stores = useQuery(storesQuery)
  const [q, setQ] = useState(search.q ?? '')
  useEffect(() => {
    if (q.trim() === (search.q ?? '')) return
    const timer = setTimeout(() => onChange({ ...search, q: q.trim() || undefined }), PAUSE_MS)
    return () => clearTimeout(timer)
  }, [q, search, onChange])
  return (
    <search className="filters form-row">
      <TextField label="Search" type="search" value={q} onChange={setQ} enterKeyHint="search" />
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
