import { setTimeout as pause } from 'node:timers/promises'
import { sql, type Kysely, type RawBuilder, type Transaction } from 'kysely'
import type { SightingPart } from '../core/pricing/sighting-part.ts'
import type { Database } from './database.ts'
import { inTransaction } from './refusal.ts'
import { listTables, PART_IN_THE_MAKING } from './stored-tables.ts'
import { withoutLimits } from './without-limits.ts'

/** Where everything lies that no part of a year is of: nothing is ever refused for want of a part. */
export const REST = 'sighting_rest'
/** Rows that one transaction copies: a post beside it waits for none of them, and on the embedded engine for no more than these. */
const BATCH = 2_000
/** Whoever waits for the whole table holds up everybody behind him: after this long he gives way and tries again, so many times. */
const LOCK_WAIT = '500ms'
const TURNS = 10
const BETWEEN_TURNS_MS = 1_000
/** Any number would do, as long as no other lock here has it. */
const ONE_AT_A_TIME = 20_261_205

/** Makes whoever makes parts wait for one another until the end of the transaction. */
export const oneAtATime = (trx: Transaction<Database>): Promise<unknown> =>
  sql`select pg_advisory_xact_lock(${sql.lit(ONE_AT_A_TIME)})`.execute(trx)

/** Takes the whole record for this transaction, or gives way. */
export async function lockSightings(trx: Transaction<Database>): Promise<void> {
  await sql`set local lock_timeout = ${sql.lit(LOCK_WAIT)}`.execute(trx)
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

/**
 * Moves the rows of a part out of the rest. They are copied beside the record in small steps while everybody reads and writes; in a last, short one, which holds the whole record, what was
 * written meanwhile is taken from the rest again, the copy is put in place and its rows leave the rest: in one transaction, so that no row is ever missing or twice.
 *
 * Returns how many moved; undefined where another process began the same meanwhile, who then ends it. Errors: the database's own, such as a lock that is not to be had; nothing having changed.
 */
export async function moveIntoPart(db: Kysely<Database>, part: SightingPart): Promise<number | undefined> {
  const columns = (await listTables(db)).find(({ name }) => name === 'sighting')?.columns ?? []
  const picked = sql.join(columns.map((column) => sql.ref(column)))
  const filling = await beginFilling(db)
  let reached: string | null | undefined = NOTHING_BEFORE
  while (typeof reached === 'string') reached = await copySome(db, part, filling, picked, reached)
  const since = reached === undefined ? undefined : await catchUp(db, part, filling, picked)
  if (since === undefined) return undefined
  const moved = await patiently(() => putInPlace(db, part, { ...filling, since }, picked))
  if (moved !== undefined) await proveVotes(db)
  return moved
}

const NOTHING_BEFORE = '00000000-0000-0000-0000-000000000000'

const beginFilling = (db: Kysely<Database>): Promise<Filling> =>
  inTransaction(db, async (trx) => {
    await oneAtATime(trx)
    await sql`drop table if exists ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
    await sql`create table ${sql.table(PART_IN_THE_MAKING)}
      (like ${sql.table(REST)} including defaults including generated including constraints including indexes)`.execute(trx)
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

/**
 * Number of the oldest transaction that still writes: what those before it wrote is seen by every statement that follows. In the 32 bits of a row's own, which go round: the whole number is out
 * of their range after four thousand million transactions.
 */
async function presentMoment(trx: Transaction<Database>): Promise<string> {
  const { rows } = await sql<{ moment: string }>`select pg_snapshot_xmin(pg_current_snapshot())::xid::text as moment`.execute(trx)
  return rows[0]?.moment ?? ''
}

/** The next rows by id. Returns the last one's, null behind the last, undefined where the table is no longer the one that was begun. */
const copySome = (db: Kysely<Database>, part: SightingPart, filling: Filling, picked: RawBuilder<unknown>, after: string) =>
  inTransaction(db, async (trx): Promise<string | null | undefined> => {
    await oneAtATime(trx)
    if (!(await isOurs(trx, filling))) return undefined
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

/** Brings the copy up to date while everybody writes, so that little is left to do while nobody can. Returns from when on something may have been missed again. */
const catchUp = (db: Kysely<Database>, part: SightingPart, filling: Filling, picked: RawBuilder<unknown>): Promise<string | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (!(await isOurs(trx, filling))) return undefined
    const since = await presentMoment(trx)
    await takeAgain(trx, part, filling, picked)
    await sql`delete from ${sql.table(PART_IN_THE_MAKING)} m
      where not exists (select from ${sql.table(REST)} r where r.id = m.id)`.execute(trx)
    return since
  })

/** What was written since a moment is copied anew, whatever of it was copied before. */
async function takeAgain(trx: Transaction<Database>, part: SightingPart, { since }: Filling, picked: RawBuilder<unknown>): Promise<void> {
  const [moving, rest] = [sql.table(PART_IN_THE_MAKING), sql.table(REST)]
  const written = sql`${within(part)} and age(xmin) <= age(${since}::xid)`
  await sql`delete from ${moving} where id in (select id from ${rest} where ${written})`.execute(trx)
  await sql`insert into ${moving} (${picked}) select ${picked} from ${rest} where ${written}`.execute(trx)
}

/** Votes are of sightings wherever they lie: their key is taken off while the rows move, or it would take the votes with them. */
const putInPlace = (db: Kysely<Database>, part: SightingPart, filling: Filling, picked: RawBuilder<unknown>): Promise<number | undefined> =>
  inTransaction(db, async (trx) => {
    await withoutLimits(trx)
    await oneAtATime(trx)
    if (!(await isOurs(trx, filling))) return undefined
    await lockSightings(trx)
    if (await isThere(trx, part)) {
      await sql`drop table ${sql.table(PART_IN_THE_MAKING)}`.execute(trx)
      return undefined
    }
    const [moving, rest] = [sql.table(PART_IN_THE_MAKING), sql.table(REST)]
    await sql`alter table sighting_vote drop constraint sighting_vote_sighting_fk`.execute(trx)
    await takeAgain(trx, part, filling, picked)
    const gone = await sql`delete from ${rest} where ${within(part)}`.execute(trx)
    const { rows } = await sql<{ moved: number }>`select count(*)::integer as moved from ${moving}`.execute(trx)
    const moved = rows[0]?.moved
    if (BigInt(moved ?? -1) !== gone.numAffectedRows) throw new Error(`of ${gone.numAffectedRows} sightings ${moved} were copied`)
    await nameAfter(trx, part)
    await sql`alter table sighting attach partition ${sql.table(part.name)} for values from (${sql.lit(part.from)}) to (${sql.lit(part.to)})`.execute(
      trx,
    )
    await sql`alter table sighting_vote add constraint sighting_vote_sighting_fk
      foreign key (sighting_id) references sighting (id) on delete cascade not valid`.execute(trx)
    return moved
  })

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

/** Tries again while the lock is not to be had. */
async function patiently<Value>(work: () => Promise<Value>): Promise<Value> {
  for (let turn = 1; ; turn += 1) {
    try {
      return await work()
    } catch (error) {
      if (turn === TURNS || (error as { code?: string }).code !== LOCK_NOT_AVAILABLE) throw error
      await pause(BETWEEN_TURNS_MS)
    }
  }
}

const LOCK_NOT_AVAILABLE = '55P03'
