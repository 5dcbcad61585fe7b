import { sql, type Kysely, type Transaction } from 'kysely'
import type { Connection } from './connect.ts'
import type { Database } from './database.ts'
import { listTables, OWN_TABLES, rowsQuery, type StoredTable } from './stored-tables.ts'
import { withoutLimits } from './without-limits.ts'

/** A table as it stood at the moment of the snapshot. */
export interface SnapshotTable {
  name: string
  columns: string[]
  rows: number
}

/** The whole of our own tables at one moment, whatever is written meanwhile. */
export interface Snapshot {
  /** Names of the migrations that made these tables. */
  migrations: string[]
  /** Where each sequence stands. */
  sequences: Record<string, string>
  tables: SnapshotTable[]
  /** The rows of one table as JSON texts of the database's own making, in order of the primary key, some at a time. */
  rowsOf(table: string): AsyncGenerator<string[]>
}

/** Rows asked for first; afterwards as many as make about this much text, so that pictures and numbers take the same memory. */
const FIRST_ROWS = 16
const CHUNK_CHARS = 500_000
const MOST_ROWS = 2_000

const cursorOf = (table: string): string => `snapshot_of_${table}`

/**
 * Takes a snapshot and hands it to `work`. On PostgreSQL a transaction stays open meanwhile; the embedded engine, which has one connection
 * for everybody, sets the rows aside in its own files at once and lets others write while they are read.
 *
 * Errors: the database's own. Two at a time on one embedded connection are the caller's to prevent.
 */
export async function withSnapshot<Value>({ db, engine }: Connection, work: (snapshot: Snapshot) => Promise<Value>): Promise<Value> {
  const begin = () => db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only')
  if (engine === 'postgres') {
    const hasRecord = (await executedMigrations(db)).length > 0
    return begin().execute(async (trx) => {
      // Counting or sorting a large table, or a disk that takes its time, is no page that somebody waits for.
      await withoutLimits(trx)
      // Before anything is read, since then it is settled what is seen: a year put in place after that would be seen where it was and where it is.
      if (hasRecord) await sql`lock table sighting in access share mode`.execute(trx)
      return work(snapshotOver(trx, await declare(trx, false)))
    })
  }
  const declared = await begin().execute((trx) => declare(trx, true))
  try {
    return await work(snapshotOver(db, declared))
  } finally {
    for (const { name } of declared.tables) await sql`close ${sql.ref(cursorOf(name))}`.execute(db).catch(() => undefined)
  }
}

type Declared = Omit<Snapshot, 'rowsOf'>

async function declare(trx: Transaction<Database>, hold: boolean): Promise<Declared> {
  // JSON tells instants in the zone of the session.
  await sql`set local time zone 'UTC'`.execute(trx)
  const stored = await listTables(trx)
  const tables: SnapshotTable[] = []
  for (const table of stored) {
    tables.push({ name: table.name, columns: table.columns, rows: await countRows(trx, table) })
    const held = hold ? sql`with hold` : sql``
    await sql`declare ${sql.ref(cursorOf(table.name))} no scroll cursor ${held} for ${rowsQuery(table)}`.execute(trx)
  }
  return { migrations: await executedMigrations(trx), sequences: await sequencesOf(trx), tables }
}

async function countRows(db: Kysely<Database>, { name }: StoredTable): Promise<number> {
  const { rows } = await sql<{ count: number }>`select count(*) as count from ${sql.table(name)}`.execute(db)
  return rows[0]?.count ?? 0
}

/** Names of the migrations that the database has been through; none where it was never migrated. */
export async function executedMigrations(db: Kysely<Database>): Promise<string[]> {
  const { rows } = await sql<{ there: boolean }>`select to_regclass('kysely_migration') is not null as there`.execute(db)
  if (rows[0]?.there !== true) return []
  const executed = await sql<{ name: string }>`select name from kysely_migration order by name collate "C"`.execute(db)
  return executed.rows.map(({ name }) => name)
}

/** Another text once anything has been written, by anyone: the number of the next transaction that writes. */
export async function changeMark(db: Kysely<Database>): Promise<string> {
  const { rows } = await sql<{ mark: string }>`select pg_snapshot_xmax(pg_current_snapshot())::text as mark`.execute(db)
  return rows[0]?.mark ?? ''
}

async function sequencesOf(db: Kysely<Database>): Promise<Record<string, string>> {
  const { rows } = await sql<{ name: string; at: string }>`select s.sequencename as name, s.last_value::text as at from pg_sequences s
    join pg_class c on c.relname = s.sequencename and c.relnamespace = current_schema()::regnamespace
    join pg_depend d on d.classid = 'pg_class'::regclass and d.objid = c.oid and d.deptype in ('a', 'i')
    join pg_class t on t.oid = d.refobjid and t.relname in (${sql.join([...OWN_TABLES])})
    where s.schemaname = current_schema() and s.last_value is not null order by s.sequencename collate "C"`.execute(db)
  return Object.fromEntries(rows.map(({ name, at }) => [name, at]))
}

function snapshotOver(db: Kysely<Database>, declared: Declared): Snapshot {
  return {
    ...declared,
    async *rowsOf(table) {
      for (let asked = FIRST_ROWS; ;) {
        const { rows } = await sql<{ row: string }>`fetch ${sql.raw(String(asked))} from ${sql.ref(cursorOf(table))}`.execute(db)
        if (rows.length > 0) yield rows.map(({ row }) => row)
        if (rows.length < asked) return
        const chars = rows.reduce((sum, { row }) => sum + row.length, 0)
        asked = Math.min(MOST_ROWS, Math.max(1, Math.floor((asked * CHUNK_CHARS) / chars)))
      }
    },
  }
}
