import { sql, type Kysely } from 'kysely'
import type { PartReference } from '../core/catalog/csv-parts.ts'
import type { KitPart } from '../core/catalog/product.ts'
import { checkKit, type KnownPart } from '../core/catalog/kit.ts'
import { KINDS } from '../core/catalog/kinds.ts'
import type { ProductRow } from '../core/exchange/product-rows.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'

interface Known extends KnownPart {
  id: string
}
/** Products that parts may mean, by id and by name in small letters. */
export interface PartIndex {
  byId: Map<string, Known>
  byName: Map<string, Known[]>
  /** A part that nothing here is called may be in a row that could not be read. */
  hasUnread: boolean
}
type PartRefusal = { code: 'part'; words: string }

const keyOf = ({ kind, name }: KnownPart): string => `${kind} ${name.toLowerCase()}`

/** The database folds case by its own rules, which differ from ours beyond ASCII. */
const folded = (name: string) => sql<string>`lower(${name}::text)`

/** What the parts of some kits may mean: products that are here, and with a job those that its file makes, by the ids too that another install gave them. */
export async function indexParts(db: Kysely<Database>, kits: readonly ProductRow[], jobId: string | null): Promise<PartIndex> {
  const said = [...new Set(kits.flatMap((kit) => kit.parts.map(({ product }) => product)))]
  const index: PartIndex = { byId: new Map(), byName: new Map(), hasUnread: false }
  if (said.length === 0) return index
  const ids = said.filter(isId).map((id) => id.toLowerCase())
  const elsewhere = jobId === null ? [] : await rowsWithIds(db, jobId, ids)
  const names = [...new Set([...said, ...elsewhere.map(({ name }) => name)])]
  const here = await db
    .selectFrom('product')
    .select(['id', 'kind', 'name'])
    .where((eb) =>
      eb.or([
        eb.and([eb('kind', 'in', [...KINDS]), eb(sql`lower(name)`, 'in', names.map(folded))]),
        ...(ids.length > 0 ? [eb('id', 'in', ids)] : []),
      ]),
    )
    .execute()
  const known = new Map(here.map((product) => [keyOf(product), product]))
  for (const product of here) index.byId.set(product.id, product)
  if (jobId !== null && said.some((name) => !index.byId.has(name.toLowerCase())))
    for (const made of await madeParts(db, jobId, said)) if (!known.has(keyOf(made))) known.set(keyOf(made), made)
  for (const product of known.values()) {
    index.byId.set(product.id, product)
    const name = product.name.toLowerCase()
    index.byName.set(name, [...(index.byName.get(name) ?? []), product])
  }
  for (const { id, line, kind, name } of elsewhere) {
    if (index.byId.has(id)) continue
    const meant = known.get(keyOf({ kind, name })) ?? { id: `line ${line}`, kind, name }
    index.byId.set(id, meant).set(meant.id, meant)
  }
  return index
}

/** Rows of the file that bear these ids. */
async function rowsWithIds(db: Kysely<Database>, jobId: string, ids: readonly string[]): Promise<Array<Known & { line: number }>> {
  if (ids.length === 0) return []
  const { rows } = await sql<Known & { line: number }>`
    select data ->> 'id' as id, line, data ->> 'kind' as kind, data ->> 'name' as name from import_row
    where job_id = ${jobId} and data ->> 'id' in (${sql.join(ids)}) order by line`.execute(db)
  return rows
}

/** Rows of the file with these names, sound or not; a line stands for an id that is not given yet. */
async function madeParts(db: Kysely<Database>, jobId: string, names: readonly string[]): Promise<Known[]> {
  const { rows } = await sql<{ line: number; kind: Known['kind']; name: string }>`
    select line, data ->> 'kind' as kind, data ->> 'name' as name from import_row
    where job_id = ${jobId} and lower(data ->> 'name') in (${sql.join(names.map(folded))}) order by line`.execute(db)
  return rows.map(({ line, kind, name }) => ({ id: `line ${line}`, kind, name }))
}

/** Parts written the other way round: "2 x Torvane 150 W", "2 Torvane 150 W". */
const COUNT_FIRST = /^\d+\s*[x×*]?\s+\S/i

/** A kit's parts as ids, or why they cannot be meant. `id` is null while the kit is new. */
export function resolveParts(index: PartIndex, kit: ProductRow, id: string | null): Result<KitPart[], PartRefusal> {
  const parts: KitPart[] = []
  for (const { product, quantity } of kit.parts) {
    const found = meant(index, product)
    if (!found.ok) return found
    parts.push({ productId: found.value.id, quantity })
  }
  const checked = checkKit({ id, name: kit.name, parts }, index.byId)
  return checked.ok ? ok(parts) : refuse({ code: 'part', words: checked.refusal.words })
}

function meant(index: PartIndex, product: PartReference['product']): Result<Known, PartRefusal> {
  const byId = index.byId.get(product.toLowerCase())
  const [only, another] = byId === undefined ? (index.byName.get(product.toLowerCase()) ?? []) : [byId]
  if (only === undefined) {
    const fix = COUNT_FIRST.test(product) ? 'How many stands behind the name, as in "Torvane 150 W x 2".' : 'Add it to the file, or check the name.' // prettier-ignore
    const where = index.hasUnread ? 'in the catalog, nor in a row that could be read' : 'in the catalog'
    return refuse({ code: 'part', words: `"${product}" is not ${where}. ${fix}` })
  }
  if (another !== undefined)
    return refuse({ code: 'part', words: `"${product}" names products of different kinds. Write the id in place of the name.` })
  return ok(only)
}
