import { sql, type Kysely, type Transaction } from 'kysely'
import { Migrator } from 'kysely/migration'
import type { Database } from './database.ts'
import { MIGRATIONS } from './migrate.ts'
import type { SnapshotTable } from './snapshot.ts'
import { executedMigrations } from './snapshot.ts'
import { listTableNames, listTables, OWN_TABLES } from './stored-tables.ts'
import { withoutLimits } from './without-limits.ts'

/** What a copy says of itself before its rows. */
export interface Refill {
  migrations: string[]
  sequences: Record<string, string>
  tables: SnapshotTable[]
  /** Rows as JSON texts, each chunk of one table. */
  chunks: AsyncIterable<{ table: string; rows: string[] }>
}

/** The database could not be filled from a copy, for a reason that a person can act on. */
export class RefillRefused extends Error {}

/** Why a database may not be filled; null where it may: it is empty, or nobody has ever had an account in it. */
export async function whyNotEmpty(db: Kysely<Database>): Promise<string | null> {
  const executed = await executedMigrations(db)
  if (executed.length === 0) {
    const { length } = await listTableNames(db)
    return length === 0 ? null : `it holds ${length} tables that this program did not make`
  }
  const { rows } = await sql<{ people: number }>`select count(*) as people from person`.execute(db)
  const people = rows[0]?.people ?? 0
  if (people === 0) return null
  return people === 1 ? 'someone has an account in it' : `${people} people have accounts in it`
}

/** Names of a copy's migrations that this release does not know. */
export const unknownMigrations = (names: readonly string[]): string[] => names.filter((name) => !Object.hasOwn(MIGRATIONS, name))

/**
 * Fills an empty database from a copy and brings it to this release. In one transaction: all of it, or the database as it was.
 *
 * Errors: RefillRefused where the tables of the copy are not those of its release, or a count differs; the database's own.
 */
export async function refill(trx: Transaction<Database>, copy: Refill): Promise<void> {
  await withoutLimits(trx)
  await dropEverything(trx)
  await migrateUpTo(trx, copy.migrations)
  await demandSameTables(trx, copy.tables)
  const keys = await foreignKeys(trx)
  for (const { table, name } of keys) await sql`alter table ${sql.table(table)} drop constraint ${sql.ref(name)}`.execute(trx)
  for (const { name } of copy.tables) await sql`alter table ${sql.table(name)} disable trigger user`.execute(trx)
  // What a migration or a first start seeds is in the copy as it had become.
  for (const { name } of copy.tables) await sql`delete from ${sql.table(name)}`.execute(trx)
  await load(trx, copy)
  for (const [name, at] of Object.entries(copy.sequences))
    await sql`select setval(${name}::text::regclass, ${at}::text::bigint)`.execute(trx)
  for (const { name } of copy.tables) await sql`alter table ${sql.table(name)} enable trigger user`.execute(trx)
  for (const { table, name, definition } of keys)
    await sql`alter table ${sql.table(table)} add constraint ${sql.ref(name)} ${sql.raw(definition)}`.execute(trx)
  await migrateUpTo(trx, Object.keys(MIGRATIONS))
}

/** A start before the copy was put in place made tables and seeds, of this release and not of the copy's. Tables of somebody else stay. */
async function dropEverything(trx: Transaction<Database>): Promise<void> {
  const tables = await sql<{ name: string }>`select c.relname as name from pg_class c join pg_namespace n on n.oid = c.relnamespace
    where n.nspname = current_schema() and c.relkind in ('r', 'p')
      and c.relname in (${sql.join([...OWN_TABLES, 'kysely_migration', 'kysely_migration_lock'])})`.execute(trx)
  for (const { name } of tables.rows) await sql`drop table ${sql.table(name)} cascade`.execute(trx)
  const routines = await sql<{ routine: string }>`select p.oid::regprocedure::text as routine from pg_proc p
    join pg_namespace n on n.oid = p.pronamespace where n.nspname = current_schema()
    and not exists (select from pg_depend d where d.objid = p.oid and d.deptype = 'e')`.execute(trx)
  for (const { routine } of routines.rows) await sql`drop routine ${sql.raw(routine)} cascade`.execute(trx)
}

async function migrateUpTo(trx: Transaction<Database>, names: readonly string[]): Promise<void> {
  const wanted = Object.fromEntries(names.flatMap((name) => (MIGRATIONS[name] === undefined ? [] : [[name, MIGRATIONS[name]]])))
  const { error } = await new Migrator({ db: trx, provider: { getMigrations: async () => wanted } }).migrateToLatest()
  if (error !== undefined) throw new RefillRefused('The tables of the copy could not be made.', { cause: error })
}

async function demandSameTables(trx: Transaction<Database>, tables: readonly SnapshotTable[]): Promise<void> {
  const shapeOf = ({ name, columns }: { name: string; columns: string[] }): string => `${name}(${columns.toSorted().join(',')})`
  const have = new Set((await listTables(trx)).map(shapeOf))
  const stray = tables.find((table) => !have.has(shapeOf(table)))
  if (stray !== undefined || have.size !== tables.length)
    throw new RefillRefused(`The tables of the copy are not those of its release${stray === undefined ? '' : `: ${stray.name} differs`}.`)
}

async function foreignKeys(trx: Transaction<Database>): Promise<Array<{ table: string; name: string; definition: string }>> {
  const { rows } = await sql<{ table: string; name: string; definition: string }>`select r.relname as "table", c.conname as name,
      pg_get_constraintdef(c.oid) as definition
    from pg_constraint c join pg_class r on r.oid = c.conrelid join pg_namespace n on n.oid = r.relnamespace
    where c.contype = 'f' and c.conparentid = 0 and n.nspname = current_schema() and r.relname in (${sql.join([...OWN_TABLES])}) order by r.relname, c.conname`.execute(
    trx,
  )
  return rows
}

async function load(trx: Transaction<Database>, { tables, chunks }: Refill): Promise<void> {
  const loaded = new Map(tables.map(({ name }) => [name, 0]))
  const columnsOf = new Map(tables.map(({ name, columns }) => [name, columns]))
  for await (const { table, rows } of chunks) {
    const columns = sql.join((columnsOf.get(table) ?? []).map((column) => sql.ref(column)))
    // As text first: one of the drivers would make a JSON string of what is JSON already.
    await sql`insert into ${sql.table(table)} (${columns}) overriding system value
      select ${columns} from json_populate_recordset(null::${sql.table(table)}, ${`[${rows.join(',')}]`}::text::json)`.execute(trx)
    loaded.set(table, (loaded.get(table) ?? 0) + rows.length)
  }
  for (const { name, rows } of tables) {
    if (loaded.get(name) !== rows) throw new RefillRefused(`Of ${rows} rows of ${name} ${loaded.get(name)} arrived.`)
  }
}
