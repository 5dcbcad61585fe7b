import { mkdir } from 'node:fs/promises'
import { join } from 'node:path'
import { PGlite, types, type PGliteOptions } from '@electric-sql/pglite'
import { Kysely, PGliteDialect, sql } from 'kysely'
import postgres from 'postgres'
import type { Database } from './database.ts'
import { takeFolderLock } from './lock.ts'
import { PooledPostgresDialect } from './postgres-dialect.ts'
import { Lanes } from './postgres-lanes.ts'

export interface Connection {
  db: Kysely<Database>
  engine: 'embedded' | 'postgres'
  close(): Promise<void>
  /** Writes the log into the tables. The embedded engine never does so by itself: call it on a timer. */
  checkpoint(): Promise<void>
  /** Gives back the room of rows that are gone and counts the tables anew. The embedded engine never does so by itself either. */
  vacuum(): Promise<void>
}

/** Log kept between checkpoints: without a limit it grew to 1.5 GB, and opening the folder took 18 s. */
const LOG_LIMIT = '64MB'
const CONNECT_TIMEOUT_S = 10
/** Every statement here is a page or a save: what takes longer waits for a lock or holds one that others wait for. */
const STATEMENT_TIMEOUT_MS = 15_000
/** Nothing here waits for a person or a network inside a transaction: one that stands still has been forgotten, with its locks. */
const IDLE_IN_TRANSACTION_MS = 30_000
/** Lanes are closed long before by their own rule; this ends a connection that the driver opened once more after its lane was lost. */
const ABANDONED_S = 600

/** int8 and counts as numbers, civil days as the text they are: alike on both engines. Money stays far below 2^53 minor units. */
export const EMBEDDED_PARSERS = { [types.INT8]: Number, [types.DATE]: (text: string) => text }

const POSTGRES_TYPES = {
  bigint: { to: 20, from: [20], parse: Number, serialize: String },
  civilDate: { to: 1082, from: [1082], parse: (text: string) => text, serialize: (text: string) => text },
}

/**
 * Opens the database: PostgreSQL at `databaseUrl` if given, else the embedded one in `dataDir`. A test sets PostgreSQL a shorter limit.
 *
 * Errors: `FolderInUse` where another process holds the folder; the driver's own where the server cannot be reached (at the first query).
 */
export async function connect(where: { databaseUrl?: string; dataDir?: string; statementLimitMs?: number }): Promise<Connection> {
  if (where.databaseUrl) return connectPostgres(where.databaseUrl, where.statementLimitMs ?? STATEMENT_TIMEOUT_MS)
  if (!where.dataDir) throw new TypeError('connect needs a databaseUrl or a dataDir')
  return connectEmbedded(where.dataDir)
}

async function connectEmbedded(dataDir: string): Promise<Connection> {
  const release = await takeFolderLock(dataDir)
  try {
    const folder = join(dataDir, 'database')
    await mkdir(folder, { recursive: true, mode: 0o700 })
    const connection = await openEmbedded({ dataDir: folder })
    return { ...connection, close: () => connection.close().finally(release) }
  } catch (error) {
    await release()
    throw error
  }
}

/** An embedded database without a folder lock: in memory or from a dump, for tests. */
export async function openEmbedded(options: PGliteOptions): Promise<Connection> {
  const engine = await PGlite.create({
    ...options,
    parsers: EMBEDDED_PARSERS,
    startParams: [...PGlite.defaultStartParams, '-c', `max_wal_size=${LOG_LIMIT}`],
  })
  const db = new Kysely<Database>({ dialect: new PGliteDialect({ pglite: engine }) })
  const checkpoint = async (): Promise<void> => void (await sql`checkpoint`.execute(db))
  return {
    db,
    engine: 'embedded',
    checkpoint,
    vacuum: () => vacuumTables(db),
    close: async () => {
      await checkpoint()
      await db.destroy()
    },
  }
}

/** A table at a time, so that nobody waits for all of them; those in parts count theirs. */
async function vacuumTables(db: Kysely<Database>): Promise<void> {
  const { rows } = await sql<{ name: string }>`select relname as name from pg_class
    where relnamespace = current_schema()::regnamespace and relkind in ('r', 'p') and not relispartition`.execute(db)
  for (const { name } of rows) await sql`vacuum (analyze) ${sql.table(name)}`.execute(db)
}

function connectPostgres(databaseUrl: string, statementLimitMs: number): Connection {
  const lanes = new Lanes((onclose) =>
    postgres(databaseUrl, {
      max: 1,
      onclose,
      connect_timeout: CONNECT_TIMEOUT_S,
      idle_timeout: ABANDONED_S,
      max_lifetime: null,
      connection: { statement_timeout: statementLimitMs, idle_in_transaction_session_timeout: IDLE_IN_TRANSACTION_MS },
      types: POSTGRES_TYPES,
      onnotice: () => undefined,
    }),
  )
  const db = new Kysely<Database>({ dialect: new PooledPostgresDialect({ lanes }) })
  return { db, engine: 'postgres', checkpoint: async () => undefined, vacuum: async () => undefined, close: () => db.destroy() }
}
