import { sql, type Kysely } from 'kysely'
import type { Database } from './database.ts'

/** A probe that takes longer finds nothing that a reader would wait for. */
const PROBE_MS = 2_000

/** True while the database answers. */
export async function isReachable(db: Kysely<Database>): Promise<boolean> {
  let timer: NodeJS.Timeout | undefined
  const late = new Promise<false>((resolve) => (timer = setTimeout(() => resolve(false), PROBE_MS)))
  const probe = sql`select 1`.execute(db).then(
    () => true,
    () => false,
  )
  return Promise.race([probe, late]).finally(() => clearTimeout(timer))
}

/** What the driver, the network and the server say while there is no database to talk to. */
const CODES = new Set([
  'CONNECTION_CLOSED', 'CONNECTION_ENDED', 'CONNECTION_DESTROYED', 'CONNECT_TIMEOUT', 'ECONNREFUSED', 'ECONNRESET', 'EPIPE', 'ENOTFOUND', 'EAI_AGAIN', 'ETIMEDOUT', 'EHOSTUNREACH', 'ENOENT',
  // Server shutting down, crashed, starting up, or out of connections; a statement or a transaction beyond its time: PostgreSQL, Appendix A.
  '57P01', '57P02', '57P03', '53300', '57014', '25P03',
]) // prettier-ignore

/** True for a failure of the connection and not of the statement: trying again later may well work. */
export function isUnreachable(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  const { code } = error as { code?: unknown }
  if (typeof code === 'string' && (CODES.has(code) || code.startsWith('08'))) return true
  if (error instanceof AggregateError) return error.errors.some(isUnreachable)
  return error.cause !== undefined && isUnreachable(error.cause)
}

/** What PostgreSQL (Appendix A), and the file system under the embedded engine, say where there is no room left. */
const FULL = new Set(['53100', 'ENOSPC', 'EDQUOT'])

/** True where a write found no room on a disk. */
export function isDiskFull(error: unknown): boolean {
  if (!(error instanceof Error)) return false
  const { code } = error as { code?: unknown }
  if (typeof code === 'string' && FULL.has(code)) return true
  return /no space left on device/i.test(error.message) || (error.cause !== undefined && isDiskFull(error.cause))
}
