import { sql, type Kysely, type RawBuilder } from 'kysely'
import { TABLES, type Database } from './database.ts'

/** One of our own tables, as the database describes it. */
export interface StoredTable {
  name: string
  /** Those that hold something of their own: what the database computes is left out. */
  columns: string[]
  /** What its rows are put in order by. */
  key: Array<{ column: string; isText: boolean }>
}

/** Who is signed in and who mistyped a password: neither is worth keeping, and neither should travel. What the price record taught is learnt anew from it; watches are looked at anew. */
const NOT_KEPT = new Set<string>([
  'session',
  'sign_in_attempt',
  'price_snapshot',
  'price_snapshot_product',
  'price_snapshot_reporter',
  'watch_due',
])
/** Tables that an older release made and a later one did without: what is kept before an upgrade holds them still. */
const FORMER: readonly string[] = []
/** What our migrations make, as opposed to what else somebody keeps in the same database. */
export const OWN_TABLES: readonly string[] = [...TABLES, ...FORMER]
const KEPT = OWN_TABLES.filter((name) => !NOT_KEPT.has(name))

/** A part of the sightings while it is filled beside them (`db/move-sightings.ts`). What was cut off leaves it there for the next turn, and nobody misses it. */
export const PART_IN_THE_MAKING = 'sighting_moving'

/** Names of all tables but parts of one, also in the making, those of an extension and those in which the migrations are noted. */
export async function listTableNames(db: Kysely<Database>): Promise<string[]> {
  const { rows } = await sql<{ name: string }>`select c.relname as name from pg_class c join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = current_schema() and c.relkind in ('r', 'p') and not c.relispartition and c.relname not like 'kysely%' and c.relname <> ${PART_IN_THE_MAKING}
      and not exists (select from pg_depend d where d.classid = 'pg_class'::regclass and d.objid = c.oid and d.deptype = 'e')
    order by c.relname collate "C"`.execute(db)
  return rows.map(({ name }) => name)
}

/** Names of the tables that somebody else keeps beside ours. */
export async function listStrayTables(db: Kysely<Database>): Promise<string[]> {
  const own = new Set(OWN_TABLES)
  return (await listTableNames(db)).filter((name) => !own.has(name))
}

/** Every table of ours whose rows are kept, by name. */
export async function listTables(db: Kysely<Database>): Promise<StoredTable[]> {
  const { rows } = await sql<StoredTable>`
    select c.relname as name,
      (select json_agg(a.attname order by a.attnum) from pg_attribute a
        where a.attrelid = c.oid and a.attnum > 0 and not a.attisdropped and a.attgenerated = '') as columns,
      coalesce((select json_agg(json_build_object('column', a.attname, 'isText', a.attcollation <> 0) order by k.place)
        from pg_index i cross join unnest(i.indkey::int2[]) with ordinality as k (attnum, place)
        join pg_attribute a on a.attrelid = i.indrelid and a.attnum = k.attnum
        where i.indrelid = c.oid and i.indisprimary), '[]'::json) as key
    from pg_class c join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = current_schema() and c.relkind in ('r', 'p') and c.relname in (${sql.join(KEPT)})
    order by c.relname collate "C"`.execute(db)
  return rows
}

/** The rows of a table as JSON, in an order that is the same on every machine. */
export function rowsQuery({ name, columns, key }: StoredTable): RawBuilder<unknown> {
  const picked = sql.join(columns.map((column) => sql.ref(column)))
  const order = key.map(({ column, isText }) => (isText ? sql`t.${sql.ref(column)} collate "C"` : sql`t.${sql.ref(column)}`))
  const sorted = order.length > 0 ? sql.join(order) : sql`row_to_json(t)::text collate "C"`
  return sql`select row_to_json(t)::text as row from (select ${picked} from ${sql.table(name)}) t order by ${sorted}`
}
