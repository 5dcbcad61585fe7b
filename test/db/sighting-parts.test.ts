import { sql, type Kysely } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { uuidV7 } from '../../core/uuid-v7.ts'
import { board } from '../../db/board.ts'
import { connect } from '../../db/connect.ts'
import type { Database } from '../../db/database.ts'
import { createInstall } from '../../db/install.ts'
import { migrate, MIGRATIONS } from '../../db/migrate.ts'
import { keepSightingParts, makeSightingPart } from '../../db/sighting-parts.ts'
import { seenPricesOfProducts } from '../../db/seen-prices.ts'
import { findSighting, insertSighting, sightingRowsOfProduct } from '../../db/sightings.ts'
import { voteOnSighting } from '../../db/sighting-votes.ts'
import { listStrayTables } from '../../db/stored-tables.ts'
import { rebuildSummaries } from '../../db/summary-rebuild.ts'
import type { Viewer } from '../../db/viewer.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person, product, sighting, store } from '../support/rows.ts'
import { schemaLines } from '../support/make-release-fixture.ts'

const NOW = Date.UTC(2026, 10, 26, 12)
let made = 0
/** An id as a phone would have made it on a day, never the same twice. */
const idOn = (day: string): string => uuidV7(Date.parse(`${day}T12:00:00Z`), new Uint8Array(10).fill((made += 1) % 250))

let test: TestDatabase
let reporter: Viewer
let other: Viewer
let productId: string
let storeId: string

beforeAll(async () => {
  test = await testDatabase()
  granted(await createInstall(test.db, install))
  ;[reporter, other] = [await person(test.db), await person(test.db)]
  productId = (await product(test.db)).id
  storeId = (await store(test.db)).id
})
afterAll(() => test.close())

/** One seen on a day under an id of that day or another, and voted on by somebody else. */
async function seen(seenOn: string, priceMinor: number, idDay = seenOn): Promise<string> {
  const id = idOn(idDay)
  granted(await insertSighting(test.db, reporter, sighting(productId, storeId, { id, seenOn, priceMinor }), null))
  granted(await test.db.transaction().execute((trx) => voteOnSighting(trx, other, id, 'confirm')))
  return id
}

/** Rows of many phones, past the hour's limit and the summaries. */
const many = (count: number, day: string): Promise<unknown> =>
  sql`insert into sighting (id, product_id, store_id, condition, price_minor, seen_on, evidence, reporter_id, received_at)
    select (${idOn(day).slice(0, 24)}::text || lpad(to_hex(n), 12, '0'))::uuid, ${productId}::uuid, ${storeId}::uuid, 'shelf', 5000, ${day}::date, 'tag', ${reporter.id}::uuid, now() - interval '1 day'
    from generate_series(1, ${count}::integer) as n`.execute(test.db)

/** How many there are with their votes, and one hash of every field of all of them. */
async function everything(db: Kysely<Database>): Promise<unknown> {
  const { rows } = await sql`select (select count(*) from sighting) as sightings, (select count(*) from sighting_vote) as votes,
    (select md5(string_agg((to_jsonb(s))::text, '|' order by id)) from sighting s) as hash,
    (select md5(string_agg((to_jsonb(v))::text, '|' order by sighting_id, person_id)) from sighting_vote v) as votes_hash`.execute(db)
  return rows[0]
}

async function partOf(id: string): Promise<string | undefined> {
  const { rows } = await sql<{ part: string }>`select tableoid::regclass::text as part from sighting where id = ${id}`.execute(test.db)
  return rows[0]?.part
}

describe('sightings in parts of years', () => {
  it('lie in the rest until there is a part of their year, and move there with their votes, nothing lost', async () => {
    const ids = [await seen('2024-11-20', 5100), await seen('2025-11-20', 5200), await seen('2026-11-20', 5300)]
    expect(await partOf(ids[2] ?? '')).toBe('sighting_rest')
    const [before, rowsBefore] = [await everything(test.db), await sightingRowsOfProduct(test.db, other, productId)]
    const told: string[] = []
    expect(await keepSightingParts(test.db, NOW, ({ name }) => told.push(name))).toEqual([
      { name: 'sighting_2026', moved: 1 },
      { name: 'sighting_2027', moved: 0 },
    ])
    expect(told).toEqual(['sighting_2026', 'sighting_2027'])
    for (const year of [2024, 2025]) expect(await makeSightingPart(test.db, year)).toEqual({ name: `sighting_${year}`, moved: 1 })
    expect(await Promise.all(ids.map(partOf))).toEqual(['sighting_2024', 'sighting_2025', 'sighting_2026'])
    expect(await everything(test.db)).toEqual(before)
    expect(await sightingRowsOfProduct(test.db, other, productId)).toEqual(rowsBefore)
    expect(await keepSightingParts(test.db, NOW)).toEqual([])
    expect(await makeSightingPart(test.db, 2025)).toBeUndefined()
  })

  it('are one record to the product page, the board and the summaries', async () => {
    const rows = await sightingRowsOfProduct(test.db, other, productId)
    expect(rows.map(({ priceMinor, myVote }) => [priceMinor, myVote])).toEqual([
      [5300, 'confirm'],
      [5200, 'confirm'],
      [5100, 'confirm'],
    ])
    expect((await board(test.db, other, { since: '2026-06-01', limit: 10, offset: 0 })).rows.map((row) => row.sighting.priceMinor)).toEqual(
      [5300],
    )
    expect(await rebuildSummaries(test.db)).toMatchObject({ changed: 0 })
    expect(await seenPricesOfProducts(test.db, [productId], '2026-11-26')).toMatchObject([{ regular: { priceMinor: 5300 } }])
  })

  it('are taken into the part of their year, and whatever the clock of a phone said into the rest; the same id once', async () => {
    expect(await partOf(await seen('2026-11-21', 5400))).toBe('sighting_2026')
    const stray = await seen('2026-11-22', 5500, '1999-05-05')
    expect(await partOf(stray)).toBe('sighting_rest')
    expect(await partOf(await seen('2026-11-22', 5500, '2048-05-05'))).toBe('sighting_rest')
    expect(await keepSightingParts(test.db, NOW)).toEqual([])
    const body = sighting(productId, storeId, { id: idOn('2026-11-23'), seenOn: '2026-11-23' })
    const answers = await Promise.all([1, 2, 3].map(() => insertSighting(test.db, reporter, body, null)))
    expect(answers.map((answer) => granted(answer).repeated).toSorted()).toEqual([false, true, true])
  })

  it('of a past year get a part once there are many', async () => {
    await many(999, '2023-06-01')
    expect(await keepSightingParts(test.db, NOW)).toEqual([])
    const { rows } = await sql<{
      counted: number
      there: number
    }>`select reltuples::integer as counted, (select count(*)::integer from sighting) as there
      from pg_class where relname = 'sighting'`.execute(test.db)
    expect(rows[0]?.counted, 'the whole is counted though no part was made').toBe(rows[0]?.there)
    await many(1, '2023-06-02')
    const before = await everything(test.db)
    expect(await keepSightingParts(test.db, NOW)).toEqual([{ name: 'sighting_2023', moved: 1000 }])
    expect(await everything(test.db)).toEqual(before)
  })

  it('move where the numbers of transactions have gone round: they no longer fit into 32 bits', async () => {
    await many(3, '2036-06-01')
    // The database says the number of the present one as if four thousand million had gone before it.
    await sql`create function public.pg_current_snapshot() returns pg_snapshot language sql as $$
      select (pg_snapshot_xmin(now.s)::text::bigint + 4294967296 || ':' || pg_snapshot_xmax(now.s)::text::bigint + 4294967296 || ':')::pg_snapshot
      from (select pg_catalog.pg_current_snapshot() as s) as now $$`.execute(test.db)
    const part = await test.db.connection().execute(async (one) => {
      await sql`set search_path = public, pg_catalog`.execute(one)
      return makeSightingPart(one, 2036).finally(() => sql`reset search_path`.execute(one))
    })
    await sql`drop function public.pg_current_snapshot`.execute(test.db)
    expect(part).toEqual({ name: 'sighting_2036', moved: 3 })
  })

  it('are made once where two services start at the same moment, and both do', async () => {
    const second = test.url === undefined ? undefined : await connect({ databaseUrl: test.url })
    try {
      for (const year of [2031, 2032, 2033, 2034]) {
        const both = await Promise.all([makeSightingPart(test.db, year), makeSightingPart(second?.db ?? test.db, year)])
        expect(both.filter((part) => part !== undefined)).toEqual([{ name: `sighting_${year}`, moved: 0 }])
      }
    } finally {
      await second?.close()
    }
  })

  it('take what is posted, voted on and corrected while they are moved, each once, and its last state', async () => {
    await many(4500, '2022-06-01')
    const { rows: old } = await sql<{ id: string }>`select id from sighting_rest where id >= ${idOn('2022-01-01')}::uuid
      and id < ${idOn('2023-01-01')}::uuid order by id desc`.execute(test.db)
    expect(old).toHaveLength(4500)
    const written = new Map<string, { price: number; votes: number }>()
    const done = new AbortController()
    const writing = async (): Promise<void> => {
      for (let turn = 0; !done.signal.aborted; turn += 1) {
        // The last ones are copied last, the first ones first, and a new one lies before or behind all of them.
        const [late, early] = [old[turn], old.at(-1 - turn)]
        if (late === undefined || early === undefined) return
        // An hour takes no more posts of one person.
        if (turn < 60) written.set(await seen(turn % 2 === 0 ? '2022-02-02' : '2022-10-10', 6000 + turn), { price: 6000 + turn, votes: 1 })
        granted(await test.db.transaction().execute((trx) => voteOnSighting(trx, other, late.id, 'confirm')))
        written.set(late.id, { price: 5000, votes: 1 })
        await test.db
          .updateTable('sighting')
          .set({ price_minor: 10_000 + turn })
          .where('id', '=', early.id)
          .execute()
        written.set(early.id, { price: 10_000 + turn, votes: 0 })
      }
    }
    const moving = makeSightingPart(test.db, 2022).finally(() => done.abort())
    await writing()
    const posted = [...written.values()].filter(({ price }) => price >= 6000 && price < 10_000).length
    expect(posted, 'some were posted meanwhile').toBeGreaterThan(1)
    const { moved = 0 } = (await moving) ?? {}
    const { rows } = await sql<{ id: string; part: string; price: number; votes: number }>`
      select id, tableoid::regclass::text as part, price_minor as price,
        (select count(*)::integer from sighting_vote where sighting_id = sighting.id) as votes
      from sighting where id >= ${idOn('2022-01-01')}::uuid and id < ${idOn('2023-01-01')}::uuid`.execute(test.db)
    expect(rows).toHaveLength(4500 + posted)
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length)
    expect(new Set(rows.map(({ part }) => part))).toEqual(new Set(['sighting_2022']))
    expect(moved).toBeLessThanOrEqual(rows.length)
    for (const { id, price, votes } of rows) expect({ price, votes }, id).toEqual(written.get(id) ?? { price: 5000, votes: 0 })
  })

  it('whose move was cut off are moved by the next turn: what it left is nobody’s table, and the votes are held to their sightings again', async () => {
    await sql`create table sighting_moving (like sighting_rest)`.execute(test.db)
    expect(await listStrayTables(test.db)).toEqual([])
    await many(1200, '2029-06-01')
    const both = await Promise.all([makeSightingPart(test.db, 2029), makeSightingPart(test.db, 2029)])
    expect(both.filter((part) => part !== undefined)).toEqual([{ name: 'sighting_2029', moved: 1200 }])
    const names = await sql<{ name: string }>`select relname as name from pg_class where relname like 'sighting_moving%'`.execute(test.db)
    expect(names.rows).toEqual([])
    const keyIsProven = async (): Promise<unknown> =>
      (
        await sql<{
          proven: boolean
        }>`select bool_and(convalidated) as proven from pg_constraint where conrelid = 'sighting_vote'::regclass and conparentid = 0`.execute(
          test.db,
        )
      ).rows[0]?.proven
    expect(await keyIsProven()).toBe(true)
    await sql`alter table sighting_vote drop constraint sighting_vote_sighting_fk`.execute(test.db)
    await sql`alter table sighting_vote add constraint sighting_vote_sighting_fk foreign key (sighting_id) references sighting (id)
      on delete cascade not valid`.execute(test.db)
    expect(await keyIsProven()).toBe(false)
    expect(await keepSightingParts(test.db, NOW)).toEqual([])
    expect(await keyIsProven()).toBe(true)
  })

  it('are looked for by id in one part alone', async () => {
    const id = await seen('2026-11-24', 5600)
    const { rows } = await sql<Record<string, string>>`explain select * from sighting where id = ${sql.lit(id)}::uuid`.execute(test.db)
    const plan = rows.map((row) => Object.values(row)[0]).join('\n')
    expect(plan).toContain('sighting_2026')
    expect(plan).not.toMatch(/sighting_rest|sighting_2025/)
  })

  it('take their votes with them where one is deleted, and keep their rules in every part', async () => {
    const id = await seen('2026-11-25', 5700)
    await test.db.deleteFrom('sighting').where('id', '=', id).execute()
    expect(await findSighting(test.db, reporter, id)).toBeUndefined()
    const { rows } = await sql`select from sighting_vote where sighting_id = ${id}`.execute(test.db)
    expect(rows).toEqual([])
    await expect(
      sql`insert into sighting_vote (sighting_id, person_id, vote) values (${id}, ${other.id}, 'confirm')`.execute(test.db),
    ).rejects.toThrow('sighting_vote_sighting_fk')
    const wrong = test.db.insertInto('sighting').values({
      id: idOn('2025-03-03'),
      product_id: productId,
      store_id: storeId,
      condition: 'shelf',
      price_minor: 0,
      seen_on: '2025-03-03',
      evidence: 'tag',
      reporter_id: reporter.id,
    })
    await expect(wrong.execute()).rejects.toThrow('sighting_price')
  })

  it('leave no table that looks like somebody else’s, and are noted for watches once a statement', async () => {
    expect(await listStrayTables(test.db)).toEqual([])
    const watch = { id: uuidV7(NOW, new Uint8Array(10)), person_id: other.id, product_id: productId, limit_minor: 6000, currency: 'USD' }
    await test.db
      .insertInto('watch')
      .values({ ...watch, conditions: ['new'] })
      .execute()
    await test.db.deleteFrom('watch_due').execute()
    const days = ['2025-06-01', '2026-06-01']
    const both = days.map((day) => ({ ...row(productId, storeId, reporter.id), id: idOn(day), seen_on: day }))
    const ids = both.map(({ id }) => id)
    await test.db.insertInto('sighting').values(both).execute()
    expect(await Promise.all(ids.map(partOf))).toEqual(['sighting_2025', 'sighting_2026'])
    const due = () => test.db.selectFrom('watch_due').select(['product_id', 'store_id']).execute()
    const once = { product_id: productId, store_id: storeId }
    expect(await due()).toEqual([once])
    await test.db.updateTable('sighting').set({ price_minor: 4888 }).where('id', 'in', ids).execute()
    expect(await due()).toEqual([once, once])
  })
})

describe('the step to parts', () => {
  it('keeps every row, vote, rule and index of a record that lay in one table', async () => {
    const old = await testDatabase()
    try {
      const names = Object.keys(MIGRATIONS)
      const step = names.indexOf('2026-12-05-sighting-parts')
      const upTo = (end: number) => Object.fromEntries(names.slice(0, end).map((name) => [name, MIGRATIONS[name]!]))
      await sql`drop schema public cascade`.execute(old.db)
      await sql`create schema public`.execute(old.db)
      await migrate(old.db, upTo(step))
      const rules = async (table: string): Promise<string[]> => (await schemaLines(old.db)).filter((line) => line.includes(table))
      const linesBefore = await rules('sighting')
      granted(await createInstall(old.db, install))
      const [who, what, where] = [await person(old.db), (await product(old.db)).id, (await store(old.db)).id]
      for (const day of ['2024-02-02', '2025-02-02', '2026-02-02'])
        await old.db
          .insertInto('sighting')
          .values({ ...row(what, where, who.id), id: idOn(day), seen_on: day })
          .execute()
      await sql`insert into sighting_vote (sighting_id, person_id, vote) select id, reporter_id, 'confirm' from sighting`.execute(old.db)
      const rowsBefore = await everything(old.db)
      await migrate(old.db, upTo(step + 1))
      expect(await everything(old.db)).toEqual(rowsBefore)
      const linesAfter = new Set(await rules('sighting'))
      const asBefore = (line: string): string => line.replace(' ON public.sighting USING', ' ON ONLY public.sighting USING')
      for (const line of linesBefore) expect(linesAfter.has(line) || linesAfter.has(asBefore(line)), line).toBe(true)
    } finally {
      await old.close()
    }
  })
})

const row = (productOf: string, storeOf: string, reporterId: string) => ({
  product_id: productOf,
  store_id: storeOf,
  condition: 'shelf' as const,
  price_minor: 4999,
  evidence: 'tag' as const,
  reporter_id: reporterId,
})

it('counts nothing while nothing is there: plans made for no rows are kept while the first thousands come', async () => {
  const fresh = await testDatabase()
  const counted = async () =>
    (
      await sql<{ counted: number }>`select reltuples::integer as counted from pg_class where relname = 'sighting_2026'`.execute(fresh.db)
    ).rows.map((row) => row.counted)
  await keepSightingParts(fresh.db, NOW)
  expect(await counted()).toEqual([-1])
  await fresh.close()
})
