import type { ReactElement, ReactNode } from 'react'
import { KIND_NAMES, KINDS, type Kind } from '../../../core/catalog/kinds.ts'
import { SelectField } from './choice-fields.tsx'
import { SearchField } from './search-field.tsx'

/** What every list of products is narrowed by. */
export interface ProductSearchTerms {
  q?: string | undefined
  kind?: Kind | undefined
}

/** Words and kind, and beside them what only this list has; `below` goes under the whole row. */
export function ProductFilters({
  search,
  onChange,
  children,
  below,
}: {
  search: ProductSearchTerms
  onChange: (change: ProductSearchTerms) => void
  children?: ReactNode
  below?: ReactNode
}): ReactElement {
  return (
    <search className="form">
      <div className="filters form-row">
        <SearchField label="Search" value={search.q} onChange={(q) => onChange({ q })} />
        <SelectField
          label="Kind"
          none="Every kind"
          value={search.kind ?? ''}
          onChange={(kind) => onChange({ kind: kind || undefined })}
          options={KINDS.map((kind) => ({ value: kind, label: KIND_NAMES[kind] }))}
        />
        {children}
      </div>
      {below}
    </search>
  )
}
