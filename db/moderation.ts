import { sql, type Kysely, type Transaction } from 'kysely'
import type { SightingRow } from '../core/pricing/record.ts'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { refreshPairs } from './price-summaries.ts'
import { isId, type Refusal } from './refusal.ts'
import { rowOf, sightingRows } from './sighting-rows.ts'
import { findSighting } from './sightings.ts'
import { manages, type Viewer } from './viewer.ts'

/** Everything that waits for a second person: doubted and not confirmed, or disputed as often as confirmed. Newest first; managers only. */
export async function listWaiting(
  db: Kysely<Database>,
  viewer: Viewer,
  page: { limit: number; offset: number },
): Promise<{ items: SightingRow[]; total: number }> {
  const { total } = await db
    .selectFrom('sighting')
    .select((eb) => eb.fn.countAll<number>().as('total'))
    .where('accepted', '=', false)
    .where('withdrawn_at', 'is', null)
    .where(manages(viewer))
    .executeTakeFirstOrThrow()
  const rows = await sightingRows(db, viewer)
    .where('sighting.accepted', '=', false)
    .where('sighting.withdrawn_at', 'is', null)
    .where(manages(viewer))
    .orderBy('sighting.received_at', 'desc')
    .orderBy('sighting.id')
    .limit(page.limit)
    .offset(page.offset)
    .execute()
  return { items: rows.map((row) => rowOf(row, viewer)), total }
}

/** A manager's withdrawal of anybody's sighting, with the reason for it. Must run in a transaction: it locks the sighting. */
export async function withdrawAsManager(
  trx: Transaction<Database>,
  viewer: Viewer,
  id: string,
  reason: string,
): Promise<Result<SightingRow, Refusal<'not_found' | 'withdrawn'>>> {
  if (!isId(id)) return refuse(NO_SIGHTING)
  const found = await trx
    .selectFrom('sighting')
    .select('withdrawn_at')
    .where('id', '=', id)
    .where(manages(viewer))
    .forUpdate()
    .executeTakeFirst()
  if (!found) return refuse(NO_SIGHTING)
  if (found.withdrawn_at !== null) return refuse({ code: 'withdrawn', message: 'This sighting is withdrawn already.' })
  const pairs = await trx
    .updateTable('sighting')
    .set({ withdrawn_at: sql`now()`, withdrawn_reason: reason })
    .where('id', '=', id)
    .returning(['product_id as productId', 'store_id as storeId'])
    .execute()
  await refreshPairs(trx, pairs, false)
  const row = await findSighting(trx, viewer, id)
  return row ? ok(row) : refuse(NO_SIGHTING)
}

const NO_SIGHTING: Refusal<'not_found'> = { code: 'not_found', message: 'There is no such sighting.' }
