import type { Kind } from '../catalog/kinds.ts'
import { kindWords } from '../catalog/spec-fields.ts'
import type { ExchangeColumn } from './column.ts'
import { CUSTOMER_COLUMNS } from './customer-rows.ts'
import type { ExportSet } from './data-set.ts'
import { PRICE_LIST_COLUMNS } from './price-list-rows.ts'
import { catalogColumns, productColumns } from './product-columns.ts'
import { SIGHTING_COLUMNS } from './sighting-rows.ts'
import { STORE_COLUMNS } from './store-values.ts'

/** Columns of a file of a set; of the catalog those of one kind, or of all kinds. @example columnsOf('customers', null)[1]?.heading // 'name' */
export function columnsOf(set: ExportSet, kind: Kind | null): readonly ExchangeColumn[] {
  if (set === 'catalog') return kind === null ? catalogColumns() : productColumns(kind)
  return OTHER_COLUMNS[set]
}

const OTHER_COLUMNS: { readonly [S in Exclude<ExportSet, 'catalog'>]: readonly ExchangeColumn[] } = {
  price_list: PRICE_LIST_COLUMNS,
  sightings: SIGHTING_COLUMNS,
  customers: CUSTOMER_COLUMNS,
  stores: STORE_COLUMNS,
}

/** What the rows of a file are called in a sentence. @example rowWords('catalog', 'heater') // 'a heater' */
export const rowWords = (set: ExportSet, kind: Kind | null): string =>
  set === 'catalog' ? (kind === null ? 'a catalog' : kindWords(kind)) : set === 'price_list' ? 'a price list' : set
