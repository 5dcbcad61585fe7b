import { Link } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { KIND_NAMES } from '../../../core/catalog/kinds.ts'
import type { Install } from '../../../core/install.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import type { ProductPage } from '../client/products.ts'
import { ProductThumb } from '../parts/product-thumb.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { useInstall, useReader } from '../session/session.ts'
import { specWords } from './spec-words.ts'

/** Words that fit one line of the list; the form holds the rest. */
const MOST_WORDS = 4

type Pictures = ProductPage['pictures']

/** The pictures stand first, where any of the products has one. */
export function CatalogTable({ items, pictures }: { items: readonly Product[]; pictures: Pictures }): ReactElement {
  const columns = catalogColumns(useReader(), useInstall())
  const shown = Object.keys(pictures).length > 0 ? [pictureColumn(pictures), ...columns] : columns
  return <RuledTable caption="Products" columns={shown} rows={items} rowKey={({ id }) => id} />
}

const pictureColumn = (pictures: Pictures): Column<Product> => ({
  key: 'picture',
  head: <span className="sr">Picture</span>,
  phone: 'picture',
  cell: ({ id, name }) => <ProductThumb hash={pictures[id]} name={name} />,
})

const catalogColumns = (reader: ReaderUnits, place: Install): Array<Column<Product>> => [
  { key: 'name', head: 'Product', rowHead: true, phone: 'lead', cell: nameCell },
  { key: 'kind', head: 'Kind', phone: 'figure', cell: ({ kind }) => KIND_NAMES[kind] },
  { key: 'spec', head: 'What the maker states', phone: 'below', cell: (product) => statedWords(product, reader, place) },
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

function statedWords(product: Product, reader: ReaderUnits, place: Install): string {
  const words = specWords(product, reader, place)
  const all = product.kind === 'kit' ? [product.parts.length === 1 ? '1 part' : `${product.parts.length} parts`, ...words] : words
  return all.length > 0 ? all.slice(0, MOST_WORDS).join(' · ') : 'nothing entered'
}
