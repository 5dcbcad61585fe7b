import type { ImportFault } from '../../core/catalog/import-report.ts'
import type { KitPart, Product } from '../../core/catalog/product.ts'
import type { ProductRow } from '../../core/catalog/product-csv.ts'
import { checkKit } from '../../core/catalog/kit.ts'
import { kindWords } from '../../core/catalog/spec-fields.ts'
import type { ProductFields } from '../../db/products.ts'

/** The catalog as a file's rows name it: by id, by GTIN, by kind and name, and parts by name alone. */
export interface CatalogIndex {
  byId: Map<string, Product>
  byGtin: Map<string, Product>
  byKindAndName: Map<string, Product>
  byName: Map<string, Product[]>
}

const gtinKey = (gtin: string): string => gtin.padStart(14, '0')
const nameKey = (kind: string, name: string): string => `${kind} ${name.toLowerCase()}`

export function indexCatalog(products: Product[]): CatalogIndex {
  return {
    byId: new Map(products.map((product) => [product.id, product])),
    byGtin: new Map(products.flatMap((product) => (product.gtin === null ? [] : [[gtinKey(product.gtin), product]]))),
    byKindAndName: new Map(products.map((product) => [nameKey(product.kind, product.name), product])),
    byName: Map.groupBy(products, (product) => product.name.toLowerCase()),
  }
}

/** The product a row changes; undefined where it makes a new one. */
export function matchOf(catalog: CatalogIndex, row: ProductRow): Product | undefined {
  if (row.id !== null) return catalog.byId.get(row.id)
  const byGtin = row.gtin === null ? undefined : catalog.byGtin.get(gtinKey(row.gtin))
  return byGtin ?? catalog.byKindAndName.get(nameKey(row.kind, row.name))
}

/** Parts written the other way round: "2 x Torvane 150 W", "2 Torvane 150 W". */
const COUNT_FIRST = /^\d+\s*[x×*]?\s+\S/i

type Resolved = { parts: KitPart[] } | { fault: ImportFault }

function resolveParts(catalog: CatalogIndex, row: ProductRow): Resolved {
  const parts: KitPart[] = []
  for (const { product: reference, quantity } of row.parts) {
    const byId = catalog.byId.get(reference.toLowerCase())
    const named = byId === undefined ? (catalog.byName.get(reference.toLowerCase()) ?? []) : [byId]
    const [only, another] = named
    if (only === undefined)
      return {
        fault: {
          row: row.row,
          column: 'parts',
          message: `"${reference}" is not in the catalog. ${COUNT_FIRST.test(reference) ? `How many stands behind the name, as in "Torvane 150 W x 2".` : 'Import its kind first, or check the name.'}`,
        },
      }
    if (another !== undefined)
      return {
        fault: {
          row: row.row,
          column: 'parts',
          message: `"${reference}" names ${named.length} products of different kinds. Write the id in place of the name.`,
        },
      }
    parts.push({ productId: only.id, quantity })
  }
  return { parts }
}

/** One row of a file as a product to store, or what is wrong with it in the light of the catalog. An update keeps whether it is archived. */
export function fieldsOf(
  catalog: CatalogIndex,
  row: ProductRow,
): { fields: ProductFields; match: Product | undefined } | { fault: ImportFault } {
  const match = matchOf(catalog, row)
  if (row.id !== null && match === undefined)
    return { fault: { row: row.row, column: 'id', message: 'There is no product with this id. Leave the cell empty for a new one.' } }
  if (match !== undefined && match.kind !== row.kind) {
    return {
      fault: {
        row: row.row,
        column: row.id === null ? 'gtin' : 'id',
        message: `This is "${match.name}", ${kindWords(match.kind)}. Import it with its own kind.`,
      },
    }
  }
  const resolved = resolveParts(catalog, row)
  if ('fault' in resolved) return resolved
  if (row.kind === 'kit') {
    const checked = checkKit({ id: match?.id ?? null, name: row.name, parts: resolved.parts }, catalog.byId)
    if (!checked.ok) return { fault: { row: row.row, column: 'parts', message: checked.refusal.words } }
  }
  const { kind, name, maker, gtin, oversize, note, spec } = row
  // The row was read by its kind's own columns, so its spec is that kind's.
  const fields = {
    kind,
    name,
    maker,
    gtin,
    oversize,
    note,
    spec,
    parts: resolved.parts,
    archived: match?.archived ?? false,
  } as ProductFields
  return { fields, match }
}
