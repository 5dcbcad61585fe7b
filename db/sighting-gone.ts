import { sql, type Kysely, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { Notice } from '../core/pricing/watches/notice.ts'
import type { Database } from './database.ts'
import { refreshPairs } from './price-summaries.ts'
import { isId } from './refusal.ts'
import type { Viewer } from './viewer.ts'

/** A price at a store, as a notice told of it. */
export type ToldPrice = Pick<Notice, 'productId' | 'storeId' | 'condition' | 'priceMinor'>

/**
 * Notes that somebody found gone on a day what some sightings tell of. It is a word of its own: it judges no report, so that whoever reported it may say it, and a vote stays as it is. Said
 * again, the first day stands. Locks the sightings, so that their day follows what was said.
 */
export async function markGone(
  trx: Transaction<Database>,
  viewer: Pick<Viewer, 'id'>,
  sightingIds: readonly string[],
  day: CivilDate,
): Promise<void> {
  const ids = await lockSightings(trx, sightingIds)
  if (ids.length === 0) return
  await trx
    .insertInto('sighting_vote')
    .values(ids.map((id) => ({ sighting_id: id, person_id: viewer.id, vote: null, gone_on: day })))
    .onConflict((clash) =>
      clash.columns(['sighting_id', 'person_id']).doUpdateSet({ gone_on: sql`least(sighting_vote.gone_on, excluded.gone_on)` }),
    )
    .execute()
  await follow(trx, ids)
}

/** Takes back what somebody said to be gone of prices of one sort at a store within some days; others' words stay. */
export async function unmarkGone(
  trx: Transaction<Database>,
  viewer: Pick<Viewer, 'id'>,
  { productId, storeId, condition }: ToldPrice,
  { since, until }: { since: CivilDate; until: CivilDate },
): Promise<void> {
  const said = await trx
    .selectFrom('sighting_vote')
    .innerJoin('sighting', 'sighting.id', 'sighting_vote.sighting_id')
    .select('sighting.id')
    .where('sighting_vote.person_id', '=', viewer.id)
    .where('sighting_vote.gone_on', '>=', since)
    .where('sighting_vote.gone_on', '<=', until)
    .where('sighting.product_id', '=', productId)
    .where('sighting.store_id', '=', storeId)
    .where(SORT, '=', condition === 'clearance' ? 'sale' : condition)
    .execute()
  const ids = await lockSightings(
    trx,
    said.map(({ id }) => id),
  )
  if (ids.length === 0) return
  const own = trx.deleteFrom('sighting_vote').where('person_id', '=', viewer.id).where('sighting_id', 'in', ids)
  await own.where('vote', 'is', null).execute()
  await trx
    .updateTable('sighting_vote')
    .set({ gone_on: null })
    .where('person_id', '=', viewer.id)
    .where('sighting_id', 'in', ids)
    .where('vote', 'is not', null)
    .execute()
  await follow(trx, ids)
}

/** A clearance is a sale here, and so is a shelf tag below its own printed price. */
const SORT = sql<'used' | 'shelf' | 'sale'>`case when sighting.condition = 'used' then 'used'
  when sighting.condition = 'shelf' and sighting.price_minor >= coalesce(sighting.printed_regular_minor, 0) then 'shelf' else 'sale' end`

async function lockSightings(trx: Transaction<Database>, sightingIds: readonly string[]): Promise<string[]> {
  const wanted = [...new Set(sightingIds.filter(isId))]
  if (wanted.length === 0) return []
  const rows = await trx.selectFrom('sighting').select('id').where('id', 'in', wanted).orderBy('id').forUpdate().execute()
  return rows.map(({ id }) => id)
}

/** The first day on which anybody found each gone, and the summaries with it. */
async function follow(trx: Transaction<Database>, ids: readonly string[]): Promise<void> {
  const pairs = await trx
    .updateTable('sighting')
    .set({ gone_on: sql<string | null>`(select min(gone_on) from sighting_vote where sighting_id = sighting.id)` })
    .where('id', 'in', ids)
    .returning(['product_id as productId', 'store_id as storeId'])
    .execute()
  await refreshPairs(trx, pairs, false)
}

/**
 * The id under which somebody posts on a day that a price is still there: the one that came first, whichever of several presses at one moment asks. Posted twice under it, it is one sighting.
 */
export async function idSaidThere(
  db: Kysely<Database>,
  viewer: Pick<Viewer, 'id'>,
  { productId, storeId, condition, priceMinor }: ToldPrice,
  day: CivilDate,
  sightingId: string,
): Promise<string> {
  const { sighting_id: first } = await db
    .insertInto('said_there')
    .values({
      person_id: viewer.id,
      product_id: productId,
      store_id: storeId,
      condition,
      price_minor: priceMinor,
      day,
      sighting_id: sightingId,
    })
    .onConflict((clash) =>
      // A write of nothing new, so that whoever comes second waits for the first and reads its id.
      clash
        .columns(['person_id', 'product_id', 'store_id', 'condition', 'price_minor', 'day'])
        .doUpdateSet({ sighting_id: sql`said_there.sighting_id` }),
    )
    .returning('sighting_id')
    .executeTakeFirstOrThrow()
  return first
}
