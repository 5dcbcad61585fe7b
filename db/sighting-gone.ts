import { sql, type Kysely, type RawBuilder, type Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { Notice } from '../core/pricing/watches/notice.ts'
import type { Database } from './database.ts'
import { refreshPairs } from './price-summaries.ts'
import { isId } from './refusal.ts'
import type { Viewer } from './viewer.ts'

/** A price at a store, as a notice told of it. */
export type ToldPrice = Pick<Notice, 'productId' | 'storeId' | 'condition' | 'priceMinor'>

/**
 * Notes that somebody found gone on a day what some sightings tell of, and in which answer to a notice. It is a word of its own: it judges no report, so that whoever reported it may say it, and a
 * vote stays as it is. Said again, the first day stands. Locks the sightings, so that their day follows what was said.
 */
export async function markGone(
  trx: Transaction<Database>,
  viewer: Pick<Viewer, 'id'>,
  noticeId: string,
  sightingIds: readonly string[],
  day: CivilDate,
): Promise<void> {
  const ids = await lockSightings(trx, sightingIds)
  if (ids.length === 0) return
  await trx
    .insertInto('sighting_vote')
    .values(ids.map((id) => ({ sighting_id: id, person_id: viewer.id, vote: null, gone_on: day, gone_by: sql`array[${noticeId}::uuid]` })))
    .onConflict((clash) =>
      clash.columns(['sighting_id', 'person_id']).doUpdateSet({
        gone_on: sql`least(sighting_vote.gone_on, excluded.gone_on)`,
        gone_by: sql`array_remove(sighting_vote.gone_by, ${noticeId}::uuid) || excluded.gone_by`,
      }),
    )
    .execute()
  await follow(trx, ids)
}

/** Says the same in one more answer to a notice, where the person found gone before what the notice tells of; false where not. */
export async function joinGone(
  trx: Transaction<Database>,
  viewer: Pick<Viewer, 'id'>,
  noticeId: string,
  sightingId: string,
): Promise<boolean> {
  const { numUpdatedRows } = await trx
    .updateTable('sighting_vote')
    .set({ gone_by: sql`array_remove(gone_by, ${noticeId}::uuid) || ${noticeId}::uuid` })
    .where('person_id', '=', viewer.id)
    .where('gone_on', 'is not', null)
    .where(
      sql<boolean>`(sighting_id = ${sightingId} or gone_by && (select gone_by from sighting_vote where person_id = ${viewer.id} and sighting_id = ${sightingId} and gone_on is not null))`,
    )
    .executeTakeFirstOrThrow()
  return numUpdatedRows > 0n
}

/** Takes back what an answer to a notice found gone, but for what another answer of the same person says too; others' words stay. */
export async function unmarkGone(trx: Transaction<Database>, viewer: Pick<Viewer, 'id'>, noticeId: string): Promise<void> {
  const said = await trx
    .selectFrom('sighting_vote')
    .select('sighting_id as id')
    .where('person_id', '=', viewer.id)
    .where('gone_on', 'is not', null)
    .where(sql<boolean>`${noticeId}::uuid = any (gone_by)`)
    .execute()
  const ids = await lockSightings(
    trx,
    said.map(({ id }) => id),
  )
  if (ids.length === 0) return
  await trx
    .updateTable('sighting_vote')
    .set({ gone_by: sql`array_remove(gone_by, ${noticeId}::uuid)` })
    .where('person_id', '=', viewer.id)
    .where('sighting_id', 'in', ids)
    .execute()
  await dropGone(trx, viewer.id, ids, sql<boolean>`cardinality(gone_by) = 0`)
}

/** Lets go what a person said to be gone of some sightings, where something holds of it. A vote beside it stays. */
async function dropGone(trx: Transaction<Database>, personId: string, ids: readonly string[], where: RawBuilder<boolean>): Promise<void> {
  await trx
    .deleteFrom('sighting_vote')
    .where('person_id', '=', personId)
    .where('sighting_id', 'in', ids)
    .where('vote', 'is', null)
    .where(where)
    .execute()
  await trx
    .updateTable('sighting_vote')
    .set({ gone_on: null, gone_by: sql`'{}'` })
    .where('person_id', '=', personId)
    .where('sighting_id', 'in', ids)
    .where(where)
    .execute()
  await follow(trx, ids)
}

/** Takes back whatever a person said to be gone, as part of an undo, which keeps it. Returns of how many sightings. */
export async function takeGoneOf(trx: Transaction<Database>, personId: string, undoId: string): Promise<number> {
  const ids = await lockGoneOf(trx, personId)
  if (ids.length === 0) return 0
  await sql`insert into undone_gone (undo_id, sighting_id, gone_on, gone_by) select ${undoId}, sighting_id, gone_on, gone_by from sighting_vote
    where person_id = ${personId} and gone_on is not null and sighting_id in (${sql.join(ids)})`.execute(trx)
  await dropGone(trx, personId, ids, sql<boolean>`gone_on is not null`)
  return ids.length
}

/** Says it again for the person, but for what that person took back meanwhile. */
export async function putGoneBack(trx: Transaction<Database>, personId: string, undoId: string): Promise<void> {
  const kept = await trx.selectFrom('undone_gone').select('sighting_id as id').where('undo_id', '=', undoId).execute()
  const ids = await lockSightings(
    trx,
    kept.map(({ id }) => id),
  )
  if (ids.length === 0) return
  await sql`insert into sighting_vote (sighting_id, person_id, gone_on, gone_by)
    select kept.sighting_id, ${personId}, kept.gone_on, still.said from undone_gone kept cross join lateral (select array(select said from unnest(kept.gone_by) as said
      where not exists (select from notice where notice.id = said and notice.answer is distinct from 'gone')) as said) as still
    where kept.undo_id = ${undoId} and kept.sighting_id in (${sql.join(ids)}) and (cardinality(still.said) > 0 or cardinality(kept.gone_by) = 0)
    on conflict (sighting_id, person_id) do update set gone_on = least(sighting_vote.gone_on, excluded.gone_on),
      gone_by = array(select distinct unnest(sighting_vote.gone_by || excluded.gone_by))`.execute(trx)
  await trx.deleteFrom('undone_gone').where('undo_id', '=', undoId).execute()
  await follow(trx, ids)
}

async function lockSightings(trx: Transaction<Database>, sightingIds: readonly string[]): Promise<string[]> {
  const wanted = [...new Set(sightingIds.filter(isId))]
  if (wanted.length === 0) return []
  const rows = await trx.selectFrom('sighting').select('id').where('id', 'in', wanted).orderBy('id').forUpdate().execute()
  return rows.map(({ id }) => id)
}

/** Locks what a person found gone, before that person's own row: who marks locks in that order. */
export async function lockGoneOf(trx: Transaction<Database>, personId: string): Promise<string[]> {
  const said = await trx
    .selectFrom('sighting_vote')
    .select('sighting_id as id')
    .where('person_id', '=', personId)
    .where('gone_on', 'is not', null)
    .execute()
  return lockSightings(
    trx,
    said.map(({ id }) => id),
  )
}

/** The first day on which anybody who may sign in found each gone, and the summaries with it. Must run again for what somebody found who is disabled or let in. */
export async function follow(trx: Transaction<Database>, ids: readonly string[]): Promise<void> {
  if (ids.length === 0) return
  const pairs = await trx
    .updateTable('sighting')
    .set({
      gone_on: sql<string | null>`(select min(said.gone_on) from sighting_vote as said
        join person on person.id = said.person_id and person.disabled_at is null where said.sighting_id = sighting.id)`,
    })
    .where('id', 'in', ids)
    .returning(['product_id as productId', 'store_id as storeId'])
    .execute()
  await refreshPairs(trx, pairs, false)
}

/**
 * The id under which somebody posts on a day that a price is still there: the one that came first, whichever of several presses at one moment asks. Posted twice under it, it is one sighting.
 * Where what was posted under it was withdrawn or found gone since, the next press begins another.
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
        .doUpdateSet({ sighting_id: sql`case when ${OUTLIVED} then excluded.sighting_id else said_there.sighting_id end` }),
    )
    .returning('sighting_id')
    .executeTakeFirstOrThrow()
  return first
}

const OUTLIVED = sql<boolean>`exists (select from sighting where sighting.id = said_there.sighting_id and (sighting.withdrawn_at is not null or sighting.gone_on is not null))`
