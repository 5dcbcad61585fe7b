import { sql, type Kysely, type Transaction } from 'kysely'
import type { DeviceWord } from '../core/people/device.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import type { Refusal } from './refusal.ts'

/** A browser that is told of deals. The hash names it and sends nothing. */
export interface PushDevice {
  idHash: string
  device: DeviceWord
  createdAt: Date
  /** Since when nothing reached it; null while it is reached. */
  failingSince: Date | null
}
/** What a browser gave for messages. */
export interface Subscription {
  idHash: string
  endpoint: string
  p256dh: string
  auth: string
  device: DeviceWord
}

/** Phone, tablet, desk and what was replaced without being removed; each costs a call a message. */
export const MOST_DEVICES = 10

/**
 * Notes a browser for a person. One that was somebody else's on the same device is hers from now on: who is signed in there now is told there.
 * Must run in a transaction: it locks the person's row, so that two at once are counted.
 */
export async function addPushDevice(
  trx: Transaction<Database>,
  personId: string,
  { idHash, endpoint, p256dh, auth, device }: Subscription,
  now: Date,
): Promise<Result<null, Refusal<'full'>>> {
  await trx.selectFrom('person').select('id').where('id', '=', personId).forUpdate().execute()
  const { others } = await trx
    .selectFrom('push_device')
    .select(sql<number>`count(*)::int4`.as('others'))
    .where('person_id', '=', personId)
    .where('id_hash', '<>', idHash)
    .executeTakeFirstOrThrow()
  if (others >= MOST_DEVICES)
    return refuse({ code: 'full', message: `${MOST_DEVICES} devices are told already. Remove one that you no longer use.` })
  const values = { person_id: personId, endpoint, p256dh, auth, device, created_at: now, failing_since: null }
  await trx
    .insertInto('push_device')
    .values({ id_hash: idHash, ...values })
    .onConflict((conflict) => conflict.column('id_hash').doUpdateSet(values))
    .execute()
  return ok(null)
}

/** The newest first. */
export async function listPushDevices(db: Kysely<Database>, personId: string): Promise<PushDevice[]> {
  const rows = await db
    .selectFrom('push_device')
    .select(['id_hash', 'device', 'created_at', 'failing_since'])
    .where('person_id', '=', personId)
    .orderBy('created_at', 'desc')
    .orderBy('id_hash')
    .execute()
  return rows.map((row) => ({ idHash: row.id_hash, device: row.device, createdAt: row.created_at, failingSince: row.failing_since }))
}

/** False where it is not this person's, or gone already. */
export async function removePushDevice(db: Kysely<Database>, personId: string, idHash: string): Promise<boolean> {
  const { numDeletedRows } = await db
    .deleteFrom('push_device')
    .where('person_id', '=', personId)
    .where('id_hash', '=', idHash)
    .executeTakeFirst()
  return numDeletedRows > 0n
}

/** Where a person's messages go. */
export async function listSubscriptions(db: Kysely<Database>, personId: string): Promise<Subscription[]> {
  const rows = await db.selectFrom('push_device').selectAll().where('person_id', '=', personId).orderBy('id_hash').execute()
  return rows.map(({ id_hash, endpoint, p256dh, auth, device }) => ({ idHash: id_hash, endpoint, p256dh, auth, device }))
}

/** The push service says that this browser wants nothing any more. Only where its keys are still those that were tried. */
export async function forgetSubscription(db: Kysely<Database>, { idHash, auth }: Subscription): Promise<void> {
  await db.deleteFrom('push_device').where('id_hash', '=', idHash).where('auth', '=', auth).execute()
}

/** Notes whether a browser was reached; the first time that it was not stays. */
export async function noteReached(db: Kysely<Database>, { idHash }: Subscription, reached: boolean, now: Date): Promise<void> {
  await db
    .updateTable('push_device')
    .set({ failing_since: reached ? null : sql<Date>`coalesce(failing_since, ${now}::timestamptz)` })
    .where('id_hash', '=', idHash)
    .execute()
}
