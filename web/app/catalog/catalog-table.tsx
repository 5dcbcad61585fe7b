import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useReader } from '../session/session.ts'
import { specWords } from './spec-words.ts'

/** Words that fit one line of the list; the form holds the rest. */
const MOST_WORDS = 4

export function CatalogTable({ items }: { items: readonly Product[] }): ReactElement {
  return <RuledTable caption="Products" columns={catalogColumns(useReader())} rows={items} rowKey={({ id }) => id} />
}

const catalogColumns = (reader: ReaderUnits): Array<Column<Product>> => [
  { key: 'name', head: 'Product', rowHead: true, phone: 'lead', cell: nameCell },
  { key: 'kind', head: 'Kind', phone: 'figure', cell: ({ kind }) => KIND_NAMES[kind] },
  { key: 'spec', head: 'What the maker states', phone: 'below', cell: (product) => statedWords(product, reader) },
  { key: 'state', head: 'State', phone: 'state', cell: ({ archived }) => (archived ? 'archived' : '') },
  { key: 'prices', head: 'Prices', end: true, cell: pricesCell },
]

const nameCell = ({ id, name }: Product): ReactElement => (
  <Link to="/catalog/$productId" params={{ productId: id }}>
    {name}
  </Link>
)

const pricesCell = ({ id, name }: Product): ReactElement => (
  <Link to="/prices/$productId" params={{ productId: id }} aria-label={`See prices of ${name}`}>
    See
  </Link>
)

function statedWords(product: Product, reader: ReaderUnits): string {
  const words = specWords(product, reader)
  const all = product.kind === 'kit' ? [product.parts.length === 1 ? '1 part' : `${product.parts.length} parts`, ...words] : words
  return all.length > 0 ? all.slice(0, MOST_WORDS).join(' · ') : 'nothing entered'
}
