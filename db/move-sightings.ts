import { sql, type Kysely, type RawBuilder, type Transaction } from 'kysely'
import type { SightingPart } from '../core/pricing/sighting-part.ts'
import type { Database } from './database.ts'
import { patiently, SERIALIZATION_FAILURE } from './patiently.ts'
import { inTransaction } from './refusal.ts'
import { listTables, PART_IN_THE_MAKING } from './stored-tables.ts'
import { withoutLimits } from './without-limits.ts'

/** Where everything lies that no part of a year is of: nothing is ever refused for want of a part. */
export const REST = 'sighting_rest'
/** Rows that one transaction copies: a post beside it waits for none of them, and on the embedded engine for no more than these. */
const BATCH = 2_000
/** Whoever waits for a whole table holds up everybody behind him: after this long he gives way and tries again. */
const LOCK_WAIT = '500ms'
/** That a copy holds nothing but its year, proven as each row comes: the database need not read all of them once more as it is put in place. */
const OF_ITS_YEAR = `${PART_IN_THE_MAKING}_within`
/** Any number would do, as long as no other lock here has it. */
const ONE_AT_A_TIME = 20_261_205

/** Makes whoever makes parts wait for one another until the end of the transaction. */
export const oneAtATime = (trx: Transaction<Database>): Promise<unknown> =>
  sql`select pg_advisory_xact_lock(${sql.lit(ONE_AT_A_TIME)})`.execute(trx)

const givingWay = (trx: Transaction<Database>): Promise<unknown> => sql`set local lock_timeout = ${sql.lit(LOCK_WAIT)}`.execute(trx)

/** Takes the whole record for this transaction, or gives way. */
export async function lockSightings(trx: Transaction<Database>): Promise<void> {
  await givingWay(trx)
  await sql`lock table sighting in access exclusive mode`.execute(trx)
}

/** Rows of a table whose ids are of a part. */
export const within = ({ from, to }: SightingPart): RawBuilder<unknown> => sql`id >= ${sql.lit(from)}::uuid and id < ${sql.lit(to)}::uuid`

/** Read from the tables of the catalog and not by `to_regclass`: that remembers of before a lock what somebody else has made since. */
export async function isThere(db: Kysely<Database>, { name }: SightingPart): Promise<boolean> {
  const { rows } = await sql<{ there: boolean }>`select exists (
    select from pg_class where relname = ${name}::text and relnamespace = (select relnamespace from pg_class where oid = 'sighting'::regclass)
  ) as there`.execute(db)
  return rows[0]?.there === true
}

/** Which filling this is, and from when on what was written may have been missed by it. */
interface Filling {
  table: string
  since: string
}

interface Filled extends Filling {
  /** Rows of the copy. */
  copied: number
}

/**
 * Moves the rows of a part out of the rest. They are copied beside the record in small steps while everybody reads and writes; in a last, short one, which holds the whole record, what was
 * written meanwhile is taken from the rest again, the copy is put in place and its rows leave the rest: in one transaction, so that no row is ever missing or twice.
 *
 * Returns how many moved; undefined where another process began the same meanwhile, who then ends it. Errors: the database's own, such as a lock that is not to be had; nothing having changed,
 * and the copy being gone: while it is there nothing that its rows refer to can be deleted.
 */
export async function moveIntoPart(db: Kysely<Database>, part: SightingPart): Promise<number | undefined> {
  const columns = (await listTables(db)).find(({ name }) => name === 'sighting')?.columns ?? []
  const filling = await patiently(() => beginFilling(db, part))
  try {
    const moved = await fill(db, part, filling, columns)
    if (moved !== undefined) await proveVotes(db)
    return moved
  } catch (error) {
    // Where the database is gone, the next turn begins with this.
    await patiently(() => dropCopy(db, filling)).catch(() => undefined)
    throw error
  }
}

async function fill(db: Kysely<Database>, part: SightingPart, filling: Filling, columns: readonly string[]): Promise<number | undefined> {
  let reached: string | null | undefined = NOTHING_BEFORE
  while (typeof reached === 'string') {
    const after: string = reached
    reached = await patiently(() => copySome(db, part, filling, columns, after))
  }
  if (reached === undefined) return undefined
  let from = filling
  return patiently(async () => {
    const caughtUp = await catchUp(db, part, from, columns)
    if (caughtUp === undefined) return undefined
    from = caughtUp
    const filled = await catchUpOnce(db, part, caughtUp, columns)
    return filled && putInPlace(db, part, filled, columns)
  })
}

const NOTHING_BEFORE = '00000000-0000-0000-0000-000000000000'

const beginFilling = (db: Kysely<Database>, part: SightingPart): Promise<Filling> =>
  inTransaction(db, async (trx) => {
    await oneAtATime(trx)
    await givingWay(trx)
    await sql`drop table if exists ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
    await sql`create table ${sql.table(PART_IN_THE_MAKING)}
      (like ${sql.table(REST)} including defaults including generated including constraints including indexes)`.execute(trx)
    await sql`alter table ${sql.table(PART_IN_THE_MAKING)} add constraint ${sql.ref(OF_ITS_YEAR)} check (${within(part)})`.execute(trx)
    // What a row refers to is looked up as it is copied, and needs not be for all of them at the end.
    for (const { name, definition } of await keysOf(trx))
      await sql`alter table ${sql.table(PART_IN_THE_MAKING)} add constraint ${sql.ref(name)} ${sql.raw(definition)}`.execute(trx)
    const { rows } = await sql<{ table: string }>`select ${PART_IN_THE_MAKING}::regclass::oid::text as "table"`.execute(trx)
    return { table: rows[0]?.table ?? '', since: await presentMoment(trx) }
  })

async function keysOf(trx: Transaction<Database>): Promise<Array<{ name: string; definition: string }>> {
  const { rows } = await sql<{ name: string; definition: string }>`select conname as name, pg_get_constraintdef(oid) as definition
    from pg_constraint where conrelid = 'sighting'::regclass and contype = 'f'`.execute(trx)
  return rows
}

/** Number of the oldest transaction that still writes, in all its 64 bits: what those before it wrote is seen by every statement that follows. */
async function presentMoment(trx: Transaction<Database>): Promise<string> {
  const { rows } = await sql<{ moment: string }>`select pg_snapshot_xmin(pg_current_snapshot())::text as moment`.execute(trx)
  return rows[0]?.moment ?? ''
}

/** The next rows by id. Returns the last one's, null behind the last, undefined where the table is no longer the one that was begun. */
const copySome = (db: Kysely<Database>, part: SightingPart, filling: Filling, columns: readonly string[], after: string) =>
  inTransaction(db, async (trx): Promise<string | null | undefined> => {
    await oneAtATime(trx)
    if (!(await isOurs(trx, filling))) return undefined
    const picked = listed(columns)
    const { rows } = await sql<{ id: string }>`
      with batch as (select ${picked} from ${sql.table(REST)} where ${within(part)} and id > ${after}::uuid order by id limit ${BATCH}::integer),
        copied as (insert into ${sql.table(PART_IN_THE_MAKING)} (${picked}) select ${picked} from batch)
      select id from batch order by id desc limit 1`.execute(trx)
    return rows[0]?.id ?? null
  })

async function isOurs(trx: Transaction<Database>, { table }: Filling): Promise<boolean> {
  const { rows } = await sql<{ ours: boolean }>`select exists (
    select from pg_class where oid = ${table}::oid and relname = ${PART_IN_THE_MAKING}::text) as ours`.execute(trx)
  return rows[0]?.ours === true
}

const listed = (columns: readonly string[]): RawBuilder<unknown> => sql.join(columns.map((column) => sql.ref(column)))

const dropCopy = (db: Kysely<Database>, filling: Filling): Promise<void> =>
  inTransaction(db, async (trx) => {
    await oneAtATime(trx)
    await givingWay(trx)
    if (await isOurs(trx, filling)) await sql`drop table ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
  })

/** Brings the copy up to date while everybody writes, so that little is left to do while nobody can; what it misses again was written from its own moment on. */
const catchUp = (db: Kysely<Database>, part: SightingPart, filling: Filling, columns: readonly string[]): Promise<Filled | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (!(await isOurs(trx, filling))) return undefined
    const since = await presentMoment(trx)
    await takeAgain(trx, part, filling, columns)
    await sql`delete from ${sql.table(PART_IN_THE_MAKING)} m
      where not exists (select from ${sql.table(REST)} r where r.id = m.id)`.execute(trx)
    const { rows } = await sql<{ copied: number }>`select count(*)::integer as copied from ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
    return { table: filling.table, since, copied: rows[0]?.copied ?? 0 }
  })

/** The same for what was written while that went on, which took its time over the whole year: only this much again is left for the last step. */
const catchUpOnce = (db: Kysely<Database>, part: SightingPart, filled: Filled, columns: readonly string[]): Promise<Filled | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (!(await isOurs(trx, filled))) return undefined
    const since = await presentMoment(trx)
    return { table: filled.table, since, copied: filled.copied + (await takeAgain(trx, part, filled, columns)) }
  })

/**
 * What was written since a moment is copied anew, whatever of it was copied before. It is one statement, which sees one state of the record: of two, what is written between them would be
 * new to the second and known to the copy. Returns how many rows of it the copy did not have, each looked up by its id: how few they are no plan can know.
 */
async function takeAgain(trx: Transaction<Database>, part: SightingPart, { since }: Filling, columns: readonly string[]): Promise<number> {
  const [moving, picked] = [sql.table(PART_IN_THE_MAKING), listed(columns)]
  const anew = sql.join(columns.map((column) => sql`${sql.ref(column)} = excluded.${sql.ref(column)}`))
  const { rows } = await sql<{ added: number }>`
    with changed as materialized (select ${picked} from ${sql.table(REST)} where ${within(part)} and ${writtenSince(since)}),
      taken as (insert into ${moving} (${picked}) select ${picked} from changed on conflict (id) do update set ${anew})
    select count(*)::integer as added from changed c where (select m.id from ${moving} m where m.id = c.id) is null`.execute(trx)
  return rows[0]?.added ?? 0
}

/** Half of what a row's number of its writer can be ahead of another's: past it "before" and "after" change places. */
const FAR_APART = 2 ** 30

/**
 * Whether a row was written by the transaction of a moment or a later one. A row keeps 32 bits of its writer's number, a moment has all 64, so that both are held as ages, which go round the
 * circle of 32 bits alike: a writer from the moment on is never the older one as long as the moment lies less than half a circle back. After a quarter of it, all rows count as written. A row
 * of a whole circle ago keeps its number though it is frozen, and may count as written too: it is copied once more, as it is. Writers inside a savepoint have numbers behind their transaction's.
 */
export const writtenSince = (since: string): RawBuilder<boolean> => sql<boolean>`(age(xmin) <= (select age(${since}::text::xid8::xid))
  or (select pg_snapshot_xmax(pg_current_snapshot())::text::bigint - ${since}::text::bigint > ${sql.lit(FAR_APART)}))`

/** Votes are of sightings wherever they lie: their key is taken off while the rows move, or it would take the votes with them. */
const putInPlace = (db: Kysely<Database>, part: SightingPart, filled: Filled, columns: readonly string[]): Promise<number | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (!(await isOurs(trx, filled))) return undefined
    await lockSightings(trx)
    if (await isThere(trx, part)) {
      await sql`drop table ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
      return undefined
    }
    await sql`alter table sighting_vote drop constraint sighting_vote_sighting_fk`.execute(trx)
    const moved = filled.copied + (await takeAgain(trx, part, filled, columns))
    const gone = await sql`delete from ${sql.table(REST)} where ${within(part)}`.execute(trx)
    // Some were deleted meanwhile: the copy loses them in another turn.
    if (BigInt(moved) !== gone.numAffectedRows)
      throw Object.assign(new Error(`of ${gone.numAffectedRows} sightings ${moved} were copied`), { code: SERIALIZATION_FAILURE })
    await attach(trx, part)
    await sql`alter table sighting_vote add constraint sighting_vote_sighting_fk
      foreign key (sighting_id) references sighting (id) on delete cascade not valid`.execute(trx)
    return moved
  })

async function attach(trx: Transaction<Database>, part: SightingPart): Promise<void> {
  await nameAfter(trx, part)
  const [table, from, to] = [sql.table(part.name), sql.lit(part.from), sql.lit(part.to)]
  await sql`alter table sighting attach partition ${table} for values from (${from}) to (${to})`.execute(trx)
  await sql`alter table ${table} drop constraint ${sql.ref(OF_ITS_YEAR)}`.execute(trx)
}

/** The table and its indexes lose the name that they were filled under. */
async function nameAfter(trx: Transaction<Database>, { name }: SightingPart): Promise<void> {
  const { rows } = await sql<{ index: string }>`select c.relname as index from pg_index i join pg_class c on c.oid = i.indexrelid
    where i.indrelid = ${PART_IN_THE_MAKING}::regclass`.execute(trx)
  for (const { index } of rows)
    await sql`alter index ${sql.ref(index)} rename to ${sql.ref(index.replace(PART_IN_THE_MAKING, name))}`.execute(trx)
  await sql`alter table ${sql.table(PART_IN_THE_MAKING)} rename to ${sql.ref(name)}`.execute(trx)
}

/** Holds the votes of before against all rows, beside whoever votes: from when the key is put back, new ones are held to it. */
export async function proveVotes(db: Kysely<Database>): Promise<void> {
  await inTransaction(db, async (trx) => {
    const { rows } =
      await sql`select from pg_constraint where conrelid = 'sighting_vote'::regclass and contype = 'f' and conparentid = 0 and not convalidated`.execute(
        trx,
      )
    if (rows.length === 0) return
    await withoutLimits(trx)
    await sql`alter table sighting_vote validate constraint sighting_vote_sighting_fk`.execute(trx)
  })
}
