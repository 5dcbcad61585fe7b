import { sql, type Kysely, type Transaction } from 'kysely'
import { sightingPart, type SightingPart } from '../core/pricing/sighting-part.ts'
import type { Database } from './database.ts'
import { inTransaction } from './refusal.ts'
import { listTables } from './stored-tables.ts'
import { withoutLimits } from './without-limits.ts'

/** Where everything lies that no part of a year is of: nothing is ever refused for want of a part. */
const REST = 'sighting_rest'
/** Any number would do, as long as no other lock here has it. */
const ONE_AT_A_TIME = 20_261_205
/** A past year with fewer rows than this in the rest stays there: a phone whose clock is wrong begins no part, and every part is one more look-up. */
const LEAST_ROWS = 1_000
/** Whoever waits for the whole table holds up everybody behind him: after this long the next turn tries again. A part is made a year before it is needed. */
const LOCK_WAIT = '5s'

/** Whether a constraint is what keeps ids apart: each part has its own, and one that the database made has a name of its making. */
export const isSightingKey = (constraint: string | undefined): boolean => /^sighting(?:_rest|_\d{4})?_pk(?:ey)?$/.test(constraint ?? '')

export interface MadePart {
  name: string
  /** Rows that had lain in the rest. */
  moved: number
}

/**
 * Makes the parts of this year and the next, and of each past year of which many rows lie in the rest; these move. One transaction a part, so that no row is ever missing or twice.
 * Counts the whole anew each time. Returns what was made: nothing on most days. Errors: the database's own, such as a lock that is not to be had for five seconds; nothing having changed.
 */
export async function keepSightingParts(
  db: Kysely<Database>,
  nowMs: number,
  made: (part: MadePart) => void = () => undefined,
): Promise<MadePart[]> {
  const year = new Date(nowMs).getUTCFullYear()
  const wanted = new Set([...(await crowdedYears(db, year)), year, year + 1])
  const parts: MadePart[] = []
  for (const one of [...wanted].toSorted((a, b) => a - b)) {
    const part = await makeSightingPart(db, one)
    if (part === undefined) continue
    parts.push(part)
    made(part)
  }
  await countAll(db)
  return parts
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
  return inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await sql`select pg_advisory_xact_lock(${sql.lit(ONE_AT_A_TIME)})`.execute(trx)
    if (await isThere(trx, part)) return undefined
    await sql`set local lock_timeout = ${sql.lit(LOCK_WAIT)}`.execute(trx)
    await sql`lock table sighting in access exclusive mode`.execute(trx)
    const moved = (await hasRows(trx, part)) ? await moveInto(trx, part) : 0
    if (moved === 0)
      await sql`create table ${sql.table(part.name)} partition of sighting for values from (${sql.lit(part.from)}) to (${sql.lit(part.to)})`.execute(
        trx,
      )
    return { name: part.name, moved }
  })
}

const within = ({ from, to }: SightingPart) => sql`id >= ${sql.lit(from)}::uuid and id < ${sql.lit(to)}::uuid`

/** Read from the tables of the catalog and not by `to_regclass`: that remembers of before a lock what somebody else has made since. */
async function isThere(db: Kysely<Database>, { name }: SightingPart): Promise<boolean> {
  const { rows } = await sql<{ there: boolean }>`select exists (
    select from pg_class where relname = ${name}::text and relnamespace = (select relnamespace from pg_class where oid = 'sighting'::regclass)
  ) as there`.execute(db)
  return rows[0]?.there === true
}

async function hasRows(trx: Transaction<Database>, part: SightingPart): Promise<boolean> {
  const { rows } = await sql<{ there: boolean }>`select exists (select from ${sql.table(REST)} where ${within(part)}) as there`.execute(trx)
  return rows[0]?.there === true
}

/** Votes are of sightings wherever they lie: their key is taken off while the rows move, or it would take the votes with them, and is held against all rows when it is put back. */
async function moveInto(trx: Transaction<Database>, part: SightingPart): Promise<number> {
  const columns = (await listTables(trx)).find(({ name }) => name === 'sighting')?.columns ?? []
  const picked = sql.join(columns.map((column) => sql.ref(column)))
  const name = sql.table(part.name)
  await sql`alter table sighting_vote drop constraint sighting_vote_sighting_fk`.execute(trx)
  await sql`create table ${name} (like ${sql.table(REST)} including defaults including generated including constraints)`.execute(trx)
  const moved =
    await sql`insert into ${name} (${picked}) select ${picked} from ${sql.table(REST)} where ${within(part)} order by id`.execute(trx)
  const gone = await sql`delete from ${sql.table(REST)} where ${within(part)}`.execute(trx)
  if (moved.numAffectedRows !== gone.numAffectedRows) throw new Error(`of ${gone.numAffectedRows} sightings ${moved.numAffectedRows} moved`)
  await sql`alter table sighting attach partition ${name} for values from (${sql.lit(part.from)}) to (${sql.lit(part.to)})`.execute(trx)
  await sql`alter table sighting_vote add constraint sighting_vote_sighting_fk
    foreign key (sighting_id) references sighting (id) on delete cascade`.execute(trx)
  return Number(moved.numAffectedRows ?? 0)
}
