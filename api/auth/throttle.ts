import { createHash } from 'node:crypto'
import type { Kysely } from 'kysely'
import { COUNTED_MINUTES, MOST_WRONG_PASSWORDS } from '../../core/people/sign-in-limits.ts'
import { foldSignInName } from '../../core/people/sign-in-name.ts'
import type { Database } from '../../db/database.ts'
import { attemptsSince, deleteAttemptsBefore, forgetAttempt, forgetAttemptsUnder, recordAttempt } from '../../db/sign-in-attempts.ts'
import { networkOf } from './network.ts'

const WINDOW_MS = COUNTED_MINUTES * 60_000
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
function gatesOf(account: string, network: string): Gate[] {
  return [
    { key: keyOf('both', account, network), limit: MOST_WRONG_PASSWORDS },
    { key: keyOf('account', account), limit: PER_ACCOUNT },
    { key: keyOf('address', network), limit: PER_ADDRESS },
  ]
}

/** A try that was let in. It counts as failed until it is known to have succeeded. */
export interface Attempt {
  ids: number[]
  /** Keys of the person who tries, not of the place it came from. */
  ownKeys: string[]
}

/**
 * Lets a try in, or says how many seconds to wait.
 *
 * It is written down before it is counted, each on its own: of any number at the same moment at most the limit is let in, because the last
 * to be written sees all the others. One that is refused takes itself back, so that waiting is enough however often it was tried meanwhile.
 */
export async function admitSignIn(
  db: Kysely<Database>,
  signInName: string,
  address: string,
  nowMs: number,
): Promise<Attempt | { waitS: number }> {
  const gates = gatesOf(foldSignInName(signInName), networkOf(address))
  const keys = gates.map((gate) => gate.key)
  const ids = await recordAttempt(db, keys, new Date(nowMs))
  const counts = await attemptsSince(db, keys, new Date(nowMs - WINDOW_MS))
  if (gates.every((gate, index) => (counts[index] ?? 0) <= gate.limit)) return { ids, ownKeys: keys.slice(0, 2) }
  await forgetAttempt(db, ids)
  return { waitS: WINDOW_MS / 1000 }
}

/** A right password clears what this person failed before, and this try from the count of its place. */
export async function forgetFailures(db: Kysely<Database>, attempt: Attempt): Promise<void> {
  await forgetAttemptsUnder(db, attempt.ownKeys)
  await forgetAttempt(db, attempt.ids)
}

export const sweepFailures = (db: Kysely<Database>, nowMs: number): Promise<unknown> =>
  deleteAttemptsBefore(db, new Date(nowMs - WINDOW_MS))
