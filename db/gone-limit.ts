import { sql, type Transaction } from 'kysely'
import type { Role } from '../core/people/roles.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import type { Refusal } from './refusal.ts'
import type { Viewer } from './viewer.ts'

/** Deals that somebody may find gone within a day: a walk along the shelves of several stores. Whoever says more empties the record. */
const GONE_A_DAY: Record<Role, number> = { member: 20, advisor: 100, manager: 100 }
const DAY_MS = 86_400_000

/**
 * Whether somebody may say of one more deal that it is gone: what was said within a day counts while it stands. Must run in the transaction that says it, since the answers of one person
 * wait for each other.
 *
 * Errors: `too_many`, with when the next is taken.
 */
export async function mayFindGone(trx: Transaction<Database>, viewer: Viewer, now: Date): Promise<Result<null, Refusal<'too_many'>>> {
  await sql`select pg_advisory_xact_lock(hashtextextended(${viewer.id}, 0))`.execute(trx)
  const most = GONE_A_DAY[viewer.role]
  const row = await trx
    .selectFrom('notice')
    .select('answered_at')
    .where('person_id', '=', viewer.id)
    .where('answer', '=', 'gone')
    .where('sighting_id', 'is not', null)
    .where('answered_at', '>', new Date(now.getTime() - DAY_MS))
    .orderBy('answered_at', 'desc')
    .offset(most - 1)
    .limit(1)
    .executeTakeFirst()
  if (!row?.answered_at) return ok(null)
  const retryAfterS = Math.max(1, Math.ceil((row.answered_at.getTime() + DAY_MS - now.getTime()) / 1000))
  const minutes = Math.ceil(retryAfterS / 60)
  const wait = minutes < 120 ? `${minutes} min` : `${Math.ceil(minutes / 60)} h`
  return refuse({
    code: 'too_many',
    retryAfterS,
    message: `You said of ${most} deals within 24 hours that they are gone, as many as are taken of one person. The next is taken in ${wait}, or once you take one back.`,
  })
}
