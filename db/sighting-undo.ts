import { sql, type Kysely, type Transaction } from 'kysely'
import { ok, refuse, type Result } from '../core/result.ts'
import type { Database } from './database.ts'
import { nameFor } from './person-names.ts'
import { refreshPairs } from './price-summaries.ts'
import { isId, type Refusal } from './refusal.ts'
import { putGoneBack, takeGoneOf } from './sighting-gone.ts'
import { manages, type Viewer } from './viewer.ts'

/** Long enough to find out that it was a mistake, short enough that a record does not change under quotes of last season. */
export const REVERSIBLE_DAYS = 30
const DAY_MS = 86_400_000

/** One taking back of all that a person reported. */
export interface SightingUndo {
  id: string
  reporter: { id: string; name: string }
  undoneBy: string
  at: Date
  /** How many it took back. */
  sightings: number
  /** Of how many sightings, anybody's, it took back that this person had found them gone. */
  foundGone: number
  reversibleUntil: Date
  reversedAt: Date | null
}

/** What a manager was told that a person has standing. */
export type Standing = Pick<SightingUndo, 'sightings' | 'foundGone'>

/** Who has sightings standing or said of some that they are gone, and of how many; managers only. */
export async function reportersWithCounts(db: Kysely<Database>, viewer: Viewer): Promise<Array<{ id: string; name: string } & Standing>> {
  const { rows } = await sql<{ id: string; name: string } & Standing>`
    select person.id, ${nameFor(viewer, 'person')} as name, coalesce(posted.number, 0)::integer as sightings, coalesce(gone.number, 0)::integer as "foundGone"
    from person
    left join (select reporter_id, count(*) as number from sighting where withdrawn_at is null group by reporter_id) as posted on posted.reporter_id = person.id
    left join (select person_id, count(*) as number from sighting_vote where gone_on is not null group by person_id) as gone on gone.person_id = person.id
    where (posted.number > 0 or gone.number > 0) and ${manages(viewer)} order by person.name, person.id`.execute(db)
  return rows
}

/** Newest first; managers only. */
export async function listUndos(db: Kysely<Database>, viewer: Viewer): Promise<SightingUndo[]> {
  const rows = await undos(db, viewer)
    .where(manages(viewer))
    .orderBy('sighting_undo.at', 'desc')
    .orderBy('sighting_undo.id')
    .limit(100)
    .execute()
  return rows.map(undoOf)
}

/**
 * Withdraws every standing sighting of a person, and whatever that person said to be gone. Must run in a transaction that a refusal undoes.
 *
 * Errors: `stale` where there are not as many as the manager was told before she said yes: nothing is done.
 */
export async function undoSightings(
  trx: Transaction<Database>,
  viewer: Viewer,
  reporterId: string,
  told: Standing,
  at: Date,
): Promise<Result<SightingUndo, Refusal<'not_found' | 'stale'>>> {
  const reporter =
    isId(reporterId) && (await trx.selectFrom('person').select('id').where('id', '=', reporterId).where(manages(viewer)).executeTakeFirst())
  if (!reporter) return refuse({ code: 'not_found', message: 'There is no such person.' })
  const { id } = await trx
    .insertInto('sighting_undo')
    .values({ reporter_id: reporterId, undone_by: viewer.id, at, sightings: told.sightings, found_gone: told.foundGone })
    .returning('id')
    .executeTakeFirstOrThrow()
  // What is counted is what was taken back: one that came a moment ago cannot slip in between.
  const taken = await trx
    .updateTable('sighting')
    .set({ withdrawn_at: at, undo_id: id })
    .where('reporter_id', '=', reporterId)
    .where('withdrawn_at', 'is', null)
    .returning(['product_id as productId', 'store_id as storeId'])
    .execute()
  const foundGone = await takeGoneOf(trx, reporterId, id)
  if (taken.length + foundGone === 0) return refuse({ code: 'not_found', message: NOTHING_STANDS })
  if (taken.length !== told.sightings)
    return refuse({ code: 'stale', field: 'sightings', message: `There are ${taken.length} by now. Look again, then take them back.` })
  if (foundGone !== told.foundGone)
    return refuse({ code: 'stale', field: 'foundGone', message: `It is said of ${foundGone} by now. Look again, then take them back.` })
  await refreshPairs(trx, taken, false)
  return ok(await getUndo(trx, viewer, id))
}

/** Puts back what an undo took, but for what its reporter withdrew meanwhile. Must run in a transaction: it locks the undo. */
export async function reverseUndo(
  trx: Transaction<Database>,
  viewer: Viewer,
  undoId: string,
  at: Date,
): Promise<Result<SightingUndo, Refusal<'not_found' | 'closed' | 'too_late'>>> {
  const found =
    isId(undoId) &&
    (await trx.selectFrom('sighting_undo').selectAll().where('id', '=', undoId).where(manages(viewer)).forUpdate().executeTakeFirst())
  if (!found) return refuse({ code: 'not_found', message: 'There is nothing taken back under this id.' })
  if (found.reversed_at !== null) return refuse({ code: 'closed', message: 'These sightings were put back already.' })
  if (at.getTime() > found.at.getTime() + REVERSIBLE_DAYS * DAY_MS) {
    return refuse({ code: 'too_late', message: `This was more than ${REVERSIBLE_DAYS} days ago and stays. Right prices are posted anew.` })
  }
  const put = await trx
    .updateTable('sighting')
    .set({ withdrawn_at: null, undo_id: null })
    .where('undo_id', '=', undoId)
    .returning(['product_id as productId', 'store_id as storeId'])
    .execute()
  await refreshPairs(trx, put, false)
  await putGoneBack(trx, found.reporter_id, undoId)
  await trx.updateTable('sighting_undo').set({ reversed_at: at }).where('id', '=', undoId).execute()
  return ok(await getUndo(trx, viewer, undoId))
}

const NOTHING_STANDS = 'Nothing of this person stands: there is nothing to take back.'

const undos = (db: Kysely<Database>, viewer: Viewer) =>
  db
    .selectFrom('sighting_undo')
    .innerJoin('person as reporter', 'reporter.id', 'sighting_undo.reporter_id')
    .innerJoin('person as maker', 'maker.id', 'sighting_undo.undone_by')
    .selectAll('sighting_undo')
    .select([nameFor(viewer, 'reporter').as('reporter_name'), nameFor(viewer, 'maker').as('maker_name')])

async function getUndo(db: Kysely<Database>, viewer: Viewer, id: string): Promise<SightingUndo> {
  return undoOf(await undos(db, viewer).where('sighting_undo.id', '=', id).executeTakeFirstOrThrow())
}

interface Row {
  id: string
  reporter_id: string
  reporter_name: string
  maker_name: string
  at: Date
  sightings: number
  found_gone: number
  reversed_at: Date | null
}

const undoOf = (row: Row): SightingUndo => ({
  id: row.id,
  reporter: { id: row.reporter_id, name: row.reporter_name },
  undoneBy: row.maker_name,
  at: row.at,
  sightings: row.sightings,
  foundGone: row.found_gone,
  reversibleUntil: new Date(row.at.getTime() + REVERSIBLE_DAYS * DAY_MS),
  reversedAt: row.reversed_at,
})
