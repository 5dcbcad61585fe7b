import { sql, type Kysely, type Transaction } from 'kysely'
import type { Notice, NoticeAnswer } from '../core/pricing/watches/notice.ts'
import type { Database } from './database.ts'
import { isId } from './refusal.ts'
import type { Viewer } from './viewer.ts'

const notices = (db: Kysely<Database>, personId: string) =>
  db
    .selectFrom('notice')
    .innerJoin('product', 'product.id', 'notice.product_id')
    .innerJoin('store', 'store.id', 'notice.store_id')
    .leftJoin('sighting', 'sighting.id', 'notice.sighting_id')
    .selectAll('notice')
    .select(['product.name as product_name', 'product.kind', 'store.name as store_name', 'sighting.withdrawn_at'])
    .where('notice.person_id', '=', personId)

const noticeOf = (row: Awaited<ReturnType<ReturnType<typeof notices>['execute']>>[number]): Notice => ({
  id: row.id,
  watchId: row.watch_id,
  productId: row.product_id,
  productName: row.product_name,
  kind: row.kind,
  storeId: row.store_id,
  storeName: row.store_name,
  condition: row.condition,
  priceMinor: row.price_minor,
  currency: row.currency,
  totalMinor: row.total_minor,
  totalCurrency: row.total_currency,
  sightingId: row.sighting_id,
  withdrawn: row.withdrawn_at !== null,
  seenOn: row.seen_on,
  until: row.condition === 'shelf' ? null : row.deal_until,
  lastDayStated: row.last_day_stated,
  toldAt: row.told_at.toISOString(),
  seenAt: row.seen_at?.toISOString() ?? null,
  answer: row.answer,
  answeredAt: row.answered_at?.toISOString() ?? null,
})

/** What one was told, newest first. */
export async function listNotices(
  db: Kysely<Database>,
  { id }: Pick<Viewer, 'id'>,
  page: { limit: number; offset: number },
): Promise<Notice[]> {
  const rows = await notices(db, id)
    .orderBy('notice.told_at', 'desc')
    .orderBy('notice.id', 'desc')
    .limit(page.limit)
    .offset(page.offset)
    .execute()
  return rows.map(noticeOf)
}

/** One's own. */
export async function findNotice(db: Kysely<Database>, { id: personId }: Pick<Viewer, 'id'>, id: string): Promise<Notice | undefined> {
  if (!isId(id)) return undefined
  const row = await notices(db, personId).where('notice.id', '=', id).executeTakeFirst()
  return row && noticeOf(row)
}

/** How many one was told, and how many of them one has not looked at. */
export async function countNotices(db: Kysely<Database>, { id }: Pick<Viewer, 'id'>): Promise<{ total: number; notSeen: number }> {
  return db
    .selectFrom('notice')
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .select(sql<number>`count(*) filter (where seen_at is null)`.as('notSeen'))
    .where('person_id', '=', id)
    .executeTakeFirstOrThrow()
}

/** All that one was told up to an instant has been looked at. */
export async function markSeen(db: Kysely<Database>, { id }: Viewer, upTo: Date, now: Date): Promise<void> {
  await db
    .updateTable('notice')
    .set({ seen_at: now })
    .where('person_id', '=', id)
    .where('seen_at', 'is', null)
    .where('told_at', '<=', upTo)
    .execute()
}

/** Keeps what somebody found at the store; a later answer takes the place of an earlier one. */
export async function answerNotice(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
  answer: NoticeAnswer,
  now: Date,
): Promise<Notice | undefined> {
  if (!isId(id)) return undefined
  await db
    .updateTable('notice')
    .set({ answer, answered_at: now, seen_at: sql`coalesce(seen_at, ${now}::timestamptz)` })
    .where('id', '=', id)
    .where('person_id', '=', viewer.id)
    .execute()
  return findNotice(db, viewer, id)
}

/** Takes back what somebody said of a deal. Must run with what else it undoes. */
export async function clearAnswer(trx: Transaction<Database>, viewer: Pick<Viewer, 'id'>, id: string): Promise<Notice | undefined> {
  await trx.updateTable('notice').set({ answer: null, answered_at: null }).where('id', '=', id).where('person_id', '=', viewer.id).execute()
  return findNotice(trx, viewer, id)
}
