import type { Kysely, Transaction } from 'kysely'
import type { Database } from './database.ts'

/** Why a row was not written, in a code for programs and words for people. `field` is the domain field it is about. */
export interface Refusal<Code extends string> {
  code: Code
  message: string
  field?: string
  /** Where waiting helps: after how many seconds it may be tried again. */
  retryAfterS?: number
}

/** The constraint that a failed statement ran into, whichever driver tells it. */
export function constraintOf(error: unknown): string | undefined {
  if (typeof error !== 'object' || error === null) return undefined
  const { constraint, constraint_name } = error as { constraint?: unknown; constraint_name?: unknown }
  const name = constraint_name ?? constraint
  return typeof name === 'string' && name !== '' ? name : undefined
}

/** Runs in the transaction given, or in a new one. On the embedded engine the outer `db` inside a transaction waits for ever. */
export const inTransaction = <Value>(db: Kysely<Database>, work: (trx: Transaction<Database>) => Promise<Value>): Promise<Value> =>
  db.isTransaction ? work(db as Transaction<Database>) : db.transaction().execute(work)

/** Text to find anywhere in a column with `ilike`: the pattern signs in it stand for themselves. @example containing('50%') // '%50\\%%' */
export const containing = (text: string): string => `%${text.replace(/[\\%_]/g, '\\$&').replaceAll('\0', '')}%`

const UUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{4}-[0-9a-f]{12}$/i
/** An address with something else in place of an id finds nothing, where PostgreSQL would fail at the cast. */
export const isId = (text: string): boolean => UUID.test(text)
