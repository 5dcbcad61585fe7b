import { sql, type Kysely } from 'kysely'
import { short } from '../core/catalog/csv-cell.ts'
import type { ProductRow } from '../core/exchange/product-rows.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'

/** Ids of livestock groups, by themselves and by name in small letters. */
export type GroupIndex = ReadonlyMap<string, string>

const groupOf = ({ kind, spec }: ProductRow): string | undefined => (kind === 'livestock' && 'group' in spec ? spec.group : undefined)

/** The groups of this place, where some of these rows name one; there are a few dozen. */
export async function indexGroups(db: Kysely<Database>, rows: readonly ProductRow[]): Promise<GroupIndex> {
  if (rows.every((row) => groupOf(row) === undefined)) return new Map()
  const groups = await db
    .selectFrom('livestock_group')
    .select(['id', 'name'])
    .orderBy(sql`lower(name)`)
    .execute()
  return new Map([...groups.map(({ id, name }) => [name.toLowerCase(), id] as const), ...groups.map(({ id }) => [id, id] as const)])
}

/** The id of the group that a row names; null where it names none. Errors: `group` where there is none of that id or name. */
export function groupNamed(index: GroupIndex, row: ProductRow): Result<string | null, { code: 'group'; words: string }> {
  const said = groupOf(row)
  if (said === undefined) return ok(null)
  const id = index.get(said) ?? index.get(said.toLowerCase())
  if (id !== undefined) return ok(id)
  const known = [...new Set(index.values())].join(', ')
  return refuse({
    code: 'group',
    words: `"${short(said)}" is no livestock group of this place. Write the name or the id of one of them: ${known}.`,
  })
}
