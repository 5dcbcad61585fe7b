import { sql, type Kysely } from 'kysely'
import { sightingPart, type SightingPart } from '../core/pricing/sighting-part.ts'
import type { Database } from './database.ts'
import { isThere, lockSightings, moveIntoPart, oneAtATime, proveVotes, REST, within } from './move-sightings.ts'
import { inTransaction } from './refusal.ts'
import { withoutLimits } from './without-limits.ts'

/** A past year with fewer rows than this in the rest stays there: a phone whose clock is wrong begins no part, and every part is one more look-up. */
const LEAST_ROWS = 1_000
/** Whether a constraint is what keeps ids apart: each part has its own, and one that the database made has a name of its making. */
export const isSightingKey = (constraint: string | undefined): boolean => /^sighting(?:_rest|_\d{4})?_pk(?:ey)?$/.test(constraint ?? '')

export interface MadePart {
  name: string
  /** Rows that had lain in the rest. */
  moved: number
}

/**
 * Makes the parts of this year and the next, and of each past year of which many rows lie in the rest; these move (`moveIntoPart`).
 * Counts the whole anew each time. Returns what was made: nothing on most days.
 *
 * Errors: the database's own, such as a lock that is not to be had; what is not done has changed nothing. One with a single part is told to `failed`, and the other parts are made nevertheless.
 */
export async function keepSightingParts(
  db: Kysely<Database>,
  nowMs: number,
  made: (part: MadePart) => void = () => undefined,
  failed: (name: string, error: unknown) => void = throwOn,
): Promise<MadePart[]> {
  await proveVotes(db)
  const year = new Date(nowMs).getUTCFullYear()
  const wanted = new Set([...(await crowdedYears(db, year)), year, year + 1])
  const parts: MadePart[] = []
  for (const one of [...wanted].toSorted((a, b) => a - b)) {
    try {
      const part = await makeSightingPart(db, one)
      if (part === undefined) continue
      parts.push(part)
      made(part)
    } catch (error) {
      failed(sightingPart(one).name, error)
    }
  }
  await countAll(db)
  return parts
}

function throwOn(_name: string, error: unknown): never {
  throw error
}

/**
 * Nothing else ever counts a table that lies in parts as a whole, and a plan is made by the count. Nobody waits for it: it reads a sample, beside whoever reads and writes.
 * Where there is nothing yet, nothing is counted: a plan that is made for no rows is kept while the first thousands come, and reads all of them each time.
 */
const countAll = (db: Kysely<Database>): Promise<void> =>
  inTransaction(db, async (trx) => {
    const { rows } = await sql<{ any: boolean }>`select exists (select from sighting) as any`.execute(trx)
    if (rows[0]?.any !== true) return
    await withoutLimits(trx)
    await sql`analyze sighting`.execute(trx)
  })

/** Years up to this one of which many rows lie in the rest. */
async function crowdedYears(db: Kysely<Database>, year: number): Promise<number[]> {
  const first = sightingPart(FIRST_YEAR).from
  const { rows } = await sql<{ year: number }>`
    select extract(year from to_timestamp(('x' || left(replace(id::text, '-', ''), 12))::bit(48)::bigint / 1000.0) at time zone 'UTC')::integer as year
    from ${sql.table(REST)} where id >= ${first}::uuid and id < ${sightingPart(year).to}::uuid
    group by 1 having count(*) >= ${LEAST_ROWS}`.execute(db)
  return rows.map((row) => row.year)
}

/** Ids of version 7 were not made before. */
const FIRST_YEAR = 2022

/** Makes the part of one year, with what of it lies in the rest. Undefined where there is one already. */
export async function makeSightingPart(db: Kysely<Database>, year: number): Promise<MadePart | undefined> {
  const part = sightingPart(year)
  if (await isThere(db, part)) return undefined
  const empty = (await hasRows(db, part)) ? 'has_rows' : await makeEmptyPart(db, part)
  if (empty !== 'has_rows') return empty
  const moved = await moveIntoPart(db, part)
  return moved === undefined ? undefined : { name: part.name, moved }
}

/** Undefined where somebody made it meanwhile. */
const makeEmptyPart = (db: Kysely<Database>, part: SightingPart): Promise<MadePart | 'has_rows' | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (await isThere(trx, part)) return undefined
    await lockSightings(trx)
    if (await hasRows(trx, part)) return 'has_rows'
    await sql`create table ${sql.table(part.name)} partition of sighting for values from (${sql.lit(part.from)}) to (${sql.lit(part.to)})`.execute(
      trx,
    )
    return { name: part.name, moved: 0 }
  })

async function hasRows(db: Kysely<Database>, part: SightingPart): Promise<boolean> {
  const { rows } = await sql<{ there: boolean }>`select exists (select from ${sql.table(REST)} where ${within(part)}) as there`.execute(db)
  return rows[0]?.there === true
}
