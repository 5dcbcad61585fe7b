import { sql, type Kysely, type Transaction } from 'kysely'
import type { SightingRow } from '../core/pricing/record.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { refreshPairs } from './price-summaries.ts'
import { inTransaction, isId, type Refusal } from './refusal.ts'
import { findSighting } from './sightings.ts'
import { manages, standsApart, type Viewer } from './viewer.ts'

/** One vote a person, which a later one replaces. Locks the sighting, so that its counts follow the votes. */
export async function voteOnSighting(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
  vote: 'confirm' | 'dispute',
): Promise<Result<SightingRow, Refusal<'not_found' | 'own' | 'withdrawn'>>> {
  if (!isId(id)) return refuse(NOT_FOUND)
  const found = await trx
    .selectFrom('sighting')
    .select((eb) => ['withdrawn_at', standsApart(viewer, eb).as('apart')])
    .where('id', '=', id)
    .forUpdate()
    .executeTakeFirst()
  if (!found) return refuse(NOT_FOUND)
  if (!found.apart) {
    return refuse({ code: 'own', message: 'Someone else has to confirm or dispute this one: not its reporter, nor who invited whom.' })
  }
  if (found.withdrawn_at !== null) return refuse({ code: 'withdrawn', message: 'This sighting was withdrawn.' })
  await trx
    .insertInto('sighting_vote')
    .values({ sighting_id: id, person_id: viewer.id, vote })
    .onConflict((clash) => clash.columns(['sighting_id', 'person_id']).doUpdateSet({ vote, at: sql`now()` }))
    .execute()
  await recount(trx, id)
  return readBack(trx, viewer, id)
}

/** Takes one's own vote back, as if it had never been given; that one found it gone stays said. Without one, and on a withdrawn sighting, nothing changes. */
export async function takeBackVote(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
): Promise<Result<SightingRow, Refusal<'not_found'>>> {
  if (!isId(id)) return refuse(NOT_FOUND)
  const found = await trx.selectFrom('sighting').select('id').where('id', '=', id).forUpdate().executeTakeFirst()
  if (!found) return refuse(NOT_FOUND)
  const own = trx.updateTable('sighting_vote').where('sighting_id', '=', id).where('person_id', '=', viewer.id)
  await own.where('gone_on', 'is not', null).set({ vote: null }).execute()
  await trx
    .deleteFrom('sighting_vote')
    .where('sighting_id', '=', id)
    .where('person_id', '=', viewer.id)
    .where('gone_on', 'is', null)
    .execute()
  await recount(trx, id)
  return readBack(trx, viewer, id)
}

/** Whoever imported and whom she invited, or who invited her, are one voice. */
const TIED = sql<boolean>`(coalesce(voter.invited_by = importer.id, false) or coalesce(importer.invited_by = voter.id, false))`

/**
 * Counts the votes. Of what came with a file those of people tied to whoever imported it count from the second on: one person's two accounts settle nothing, and a club whose one manager
 * invited everybody settles an import with two.
 */
async function recount(trx: Transaction<Database>, id: string): Promise<void> {
  const votes = (
    vote: 'confirm' | 'dispute',
  ) => sql<number>`(select count(*) filter (where not tied) + greatest(0, count(*) filter (where tied) - 1)
    from (select sighting.imported and ${TIED} as tied from sighting_vote join person as voter on voter.id = sighting_vote.person_id
      join person as importer on importer.id = sighting.reporter_id where sighting_vote.sighting_id = ${id} and vote = ${vote}) as said)`
  const pairs = await trx
    .updateTable('sighting')
    .set({ confirmations: votes('confirm'), disputes: votes('dispute') })
    .where('id', '=', id)
    .returning(PAIR)
    .execute()
  await refreshPairs(trx, pairs, false)
}

/** By its reporter, or by a manager. Withdrawing again changes nothing. */
export async function withdrawSighting(
  db: Kysely<Database>,
  viewer: Viewer,
  id: string,
): Promise<Result<SightingRow, Refusal<'not_found' | 'not_yours'>>> {
  if (!isId(id)) return refuse(NOT_FOUND)
  const withdrawn = await inTransaction(db, async (trx) => {
    const pairs = await trx
      .updateTable('sighting')
      // What a manager took back with all the others and its reporter withdraws stays withdrawn, whatever is put back.
      .set({ withdrawn_at: sql`coalesce(withdrawn_at, now())`, undo_id: null })
      .where('id', '=', id)
      .where((eb) => eb.or([eb('reporter_id', '=', viewer.id), manages(viewer)]))
      .returning(PAIR)
      .execute()
    await refreshPairs(trx, pairs, false)
    return pairs.length > 0
  })
  if (withdrawn) return readBack(db, viewer, id)
  const there = await findSighting(db, viewer, id)
  return refuse(there ? { code: 'not_yours', message: 'Only its reporter or a manager withdraws a sighting.' } : NOT_FOUND)
}

const PAIR = ['product_id as productId', 'store_id as storeId'] as const
const NOT_FOUND: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such sighting.' }

async function readBack(db: Kysely<Database>, viewer: Viewer, id: string): Promise<Result<SightingRow, Refusal<'not_found'>>> {
  const row = await findSighting(db, viewer, id)
  return row ? ok(row) : refuse(NOT_FOUND)
}
