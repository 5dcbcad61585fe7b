import { createHash } from 'node:crypto'
import type { Kysely } from 'kysely'
import type { Database } from '../../db/database.ts'
import { clearFailures, deleteFailuresBefore, failuresSince, recordFailure } from '../../db/sign-in-attempts.ts'

const WINDOW_MS = 15 * 60_000
/** A person who mistypes needs two or three; fifteen minutes for five more is 480 guesses a day, hopeless against fifteen characters. */
const PER_ACCOUNT_AND_ADDRESS = 5
/** A whole club behind one address on a meeting evening stays under it. */
const PER_ADDRESS = 50
/** One account guessed at from many addresses. Higher than the first, so that a stranger cannot lock a member out with five tries. */
const PER_ACCOUNT = 100

/** Keys are hashed: the table tells neither names nor addresses. */
const keyOf = (...parts: string[]): string => createHash('sha256').update(parts.join('\u0000')).digest('hex')

interface Gate {
  key: string
  limit: number
}
const gatesOf = (account: string, address: string): Gate[] => [
  { key: keyOf('both', account, address), limit: PER_ACCOUNT_AND_ADDRESS },
  { key: keyOf('address', address), limit: PER_ADDRESS },
  { key: keyOf('account', account), limit: PER_ACCOUNT },
]

const foldedAccount = (signInName: string): string => signInName.normalize('NFC').trim().toLowerCase()

/** Seconds to wait before the next try; null lets it through, and counts it as failed until it succeeds: parallel guesses find the count already raised. */
export async function admitSignIn(db: Kysely<Database>, signInName: string, address: string, nowMs: number): Promise<number | null> {
  const since = new Date(nowMs - WINDOW_MS)
  const gates = gatesOf(foldedAccount(signInName), address)
  for (const gate of gates) {
    if ((await failuresSince(db, gate.key, since)) >= gate.limit) return WINDOW_MS / 1000
  }
  for (const gate of gates) await recordFailure(db, gate.key, new Date(nowMs))
  return null
}

/** A right password clears what this person failed before from this address. */
export async function forgetFailures(db: Kysely<Database>, signInName: string, address: string): Promise<void> {
  const [both, , account] = gatesOf(foldedAccount(signInName), address)
  if (both !== undefined) await clearFailures(db, both.key)
  if (account !== undefined) await clearFailures(db, account.key)
}

export const sweepFailures = (db: Kysely<Database>, nowMs: number): Promise<unknown> =>
  deleteFailuresBefore(db, new Date(nowMs - WINDOW_MS))
