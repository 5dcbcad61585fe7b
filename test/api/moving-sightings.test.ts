import { PassThrough } from 'node:stream'
import { setTimeout as pause } from 'node:timers/promises'
import { sql } from 'kysely'
import { pino } from 'pino'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { keepParts } from '../../api/service/sighting-parts.ts'
import { uuidV7 } from '../../core/uuid-v7.ts'
import { connect } from '../../db/connect.ts'
import { createInstall } from '../../db/install.ts'
import { writtenSince } from '../../db/move-sightings.ts'
import { makeSightingPart } from '../../db/sighting-parts.ts'
import { withSnapshot } from '../../db/snapshot.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'
import { granted, install, person, product, store } from '../support/rows.ts'

const idOn = (day: string): string => uuidV7(Date.parse(`${day}T12:00:00Z`), new Uint8Array(10))

let test: TestDatabase
let reporterId: string
let productId: string
let storeId: string

beforeAll(async () => {
  test = await testDatabase()
  granted(await createInstall(test.db, install))
  reporterId = (await person(test.db)).id
  productId = (await product(test.db)).id
  storeId = (await store(test.db)).id
})
afterAll(() => test.close())

const many = (count: number, day: string): Promise<unknown> =>
  sql`insert into sighting (id, product_id, store_id, condition, price_minor, seen_on, evidence, reporter_id, received_at)
    select (${idOn(day).slice(0, 24)}::text || lpad(to_hex(n), 12, '0'))::uuid, ${productId}::uuid, ${storeId}::uuid, 'shelf', 5000, ${day}::date, 'tag', ${reporterId}::uuid, now() - interval '1 day'
    from generate_series(1, ${count}::integer) as n`.execute(test.db)

describe('sightings of a year', () => {
  it('move while many write at the same moment: none is in the way, missing or twice, and each has its last state', async () => {
    // One connection has no moment between two statements of its own.
    const count = test.url === undefined ? 2400 : 6000
    await many(count, '2043-06-01')
    const first = idOn('2043-06-01').slice(0, 24)
    const idAt = (n: number): string => first + n.toString(16).padStart(12, '0')
    const others = test.url === undefined ? undefined : await connect({ databaseUrl: test.url })
    const db = others?.db ?? test.db
    const last = new Map<string, number>()
    const done = new AbortController()
    // Each writes rows of its own, old ones again and again and new ones in between.
    const write = async (who: number): Promise<void> => {
      for (let turn = 1; !done.signal.aborted; turn += 1) {
        const id = idAt(1 + who + 4 * ((turn * 7) % (count / 4)))
        await sql`update sighting set price_minor = ${6000 + turn} where id = ${id}::uuid`.execute(db)
        last.set(id, 6000 + turn)
        if (turn % 5 > 0) continue
        const added = idAt(100_000 + 4 * turn + who)
        await sql`insert into sighting (id, product_id, store_id, condition, price_minor, seen_on, evidence, reporter_id, received_at)
          select ${added}::uuid, product_id, store_id, condition, ${turn}::integer, seen_on, evidence, reporter_id, received_at from sighting where id = ${idAt(1)}::uuid`.execute(
          db,
        )
        last.set(added, turn)
      }
    }
    const moving = makeSightingPart(test.db, 2043).finally(() => done.abort())
    await Promise.all([moving, ...[0, 1, 2, 3].map(write)])
    const { rows } = await sql<{
      id: string
      part: string
      price: number
    }>`select id, tableoid::regclass::text as part, price_minor as price
      from sighting where id >= ${idOn('2043-01-01')}::uuid and id < ${idOn('2044-01-01')}::uuid`.execute(test.db)
    await others?.close()
    const added = [...last.values()].filter((price) => price < 5000).length
    expect(added, 'some came meanwhile').toBeGreaterThan(0)
    expect(rows).toHaveLength(count + added)
    expect(new Set(rows.map(({ part }) => part))).toEqual(new Set(['sighting_2043']))
    expect(new Map(rows.map(({ id, price }) => [id, price]))).toEqual(
      new Map([...Array.from({ length: count }, (_, index): [string, number] => [idAt(index + 1), 5000]), ...last]),
    )
  })

  it.skipIf(process.env['TEST_ENGINE'] === 'embedded')(
    'move without one that is deleted as they are about to be put in place',
    async () => {
      await many(5, '2044-06-01')
      const other = await connect({ databaseUrl: test.url ?? '' })
      const waits = async (): Promise<boolean> =>
        (
          await sql`select from pg_locks where relation = 'sighting'::regclass and mode = 'AccessExclusiveLock' and not granted`.execute(
            test.db,
          )
        ).rows.length > 0
      const moving = other.db.transaction().execute(async (trx) => {
        await sql`delete from sighting where id in (select id from sighting where id >= ${idOn('2044-01-01')}::uuid limit 1)`.execute(trx)
        const moved = makeSightingPart(test.db, 2044)
        await expect.poll(waits, { interval: 10, timeout: 10_000 }).toBe(true)
        return { moved }
      })
      expect(await (await moving).moved).toEqual({ name: 'sighting_2044', moved: 4 })
      await other.close()
    },
  )

  it.skipIf(process.env['TEST_ENGINE'] === 'embedded')('are in a backup once, though they move while it is made', async () => {
    await many(7, '2045-06-01')
    const { rows: all } = await sql<{ count: number }>`select count(*)::integer as count from sighting`.execute(test.db)
    const others = await connect({ databaseUrl: test.url ?? '' })
    const waitsFor = async (table: string): Promise<boolean> =>
      (await sql`select from pg_locks where relation = ${table}::regclass and not granted`.execute(test.db)).rows.length > 0
    const held = { record: Promise.withResolvers<void>(), install: Promise.withResolvers<void>() }
    const hold = (table: string, mode: string, until: Promise<void>): Promise<void> =>
      others.db.transaction().execute(async (trx) => {
        await sql.raw(`lock table ${table} in ${mode} mode`).execute(trx)
        await until
      })
    // The copy is made, and may not be put in place yet; the backup has begun, and has not come to the sightings.
    const recordHeld = hold('sighting', 'row exclusive', held.record.promise)
    const moving = makeSightingPart(test.db, 2045)
    await expect.poll(() => waitsFor('sighting'), { interval: 10, timeout: 10_000 }).toBe(true)
    const installHeld = hold('install', 'access exclusive', held.install.promise)
    const counted = withSnapshot(others, async ({ tables }) => tables.find(({ name }) => name === 'sighting')?.rows)
    await expect.poll(() => waitsFor('install'), { interval: 10, timeout: 10_000 }).toBe(true)
    held.record.resolve()
    await Promise.race([moving, pause(1_800)])
    held.install.resolve()
    expect(await counted).toBe(all[0]?.count)
    expect(await moving).toEqual({ name: 'sighting_2045', moved: 7 })
    await Promise.all([recordHeld, installHeld])
    await others.close()
  })

  it('of a year that cannot be moved stay in the rest, its copy is gone, and the years after it have their parts', async () => {
    await many(1000, '2038-06-01')
    await many(1001, '2039-06-01')
    await sql`create sequence sighting_2038_pkey`.execute(test.db)
    const [in2040, lines] = [Date.UTC(2040, 5, 1), new PassThrough()]
    const said = (): unknown[] =>
      String(lines.read() ?? '')
        .split('\n')
        .flatMap((line) => {
          if (line === '') return []
          const { part, moved, level, msg } = JSON.parse(line) as Record<string, unknown>
          return [{ part, moved, level, msg }]
        })
    await keepParts(test, in2040, pino(lines))
    const moved = { moved: 1001, level: 30, msg: 'a year of sightings moved into its own part' }
    const failed = 'a part was not made; the sightings of its year are where they were, and the next day tries again'
    expect(said()).toEqual([
      { part: 'sighting_2038', level: 40, msg: failed },
      { part: 'sighting_2039', ...moved },
    ])
    const { rows } =
      await sql`select relname from pg_class where relname like 'sighting_moving%' or relname in ('sighting_2040', 'sighting_2041')
      order by relname`.execute(test.db)
    expect(rows).toEqual([{ relname: 'sighting_2040' }, { relname: 'sighting_2041' }])
    await sql`drop sequence sighting_2038_pkey`.execute(test.db)
    await keepParts(test, in2040, pino(lines))
    expect(said()).toEqual([{ part: 'sighting_2038', ...moved, moved: 1000 }])
  })

  it('leave no copy behind where their year cannot be moved and no other begins after it', async () => {
    await many(3, '2037-06-01')
    await sql`create sequence sighting_2037_pkey`.execute(test.db)
    await expect(makeSightingPart(test.db, 2037)).rejects.toThrow(/sighting_2037_pkey/)
    const { rows } = await sql`select relname from pg_class where relname like 'sighting_moving%' or relname = 'sighting_2037'`.execute(
      test.db,
    )
    expect(rows).toEqual([])
    await sql`drop sequence sighting_2037_pkey`.execute(test.db)
    expect(await makeSightingPart(test.db, 2037)).toEqual({ name: 'sighting_2037', moved: 3 })
  })

  it('are known by the number of who wrote them, also where those have gone round', async () => {
    const verdicts = (since: bigint, on = test.db) =>
      sql<{
        written: boolean
      }>`select ${writtenSince(String(since))} as written from (select x.xmin from product x where id = ${productId}) p (xmin)`
        .execute(on)
        .then(({ rows }) => rows.map(({ written }) => written))
    const { rows } = await sql<{ by: string; now: string }>`select xmin::text as by, pg_snapshot_xmax(pg_current_snapshot())::text as now
      from product where id = ${productId}`.execute(test.db)
    const [by, now] = [BigInt(rows[0]?.by ?? 0), BigInt(rows[0]?.now ?? 0)]
    expect([await verdicts(by - 1n), await verdicts(by), await verdicts(by + 1n), await verdicts(now)]).toEqual([
      [true],
      [true],
      [false],
      [false],
    ])
    // As if the circle had been gone round once between, with the row before or behind: a number that does not fit into 32 bits is no fault.
    expect(await verdicts(by + 2n ** 32n)).toEqual([true])
    expect(await verdicts(by + 2n ** 32n + 1n)).toEqual([false])
    await sql`create function public.pg_current_snapshot() returns pg_snapshot language sql as 'select ''9000000000:9000000000:''::pg_snapshot'`.execute(
      test.db,
    )
    const longAfter = await test.db.connection().execute(async (one) => {
      await sql`set search_path = public, pg_catalog`.execute(one)
      return verdicts(by + 1n, one).finally(() => sql`reset search_path`.execute(one))
    })
    await sql`drop function public.pg_current_snapshot`.execute(test.db)
    expect(longAfter, 'so long after, nobody can tell').toEqual([true])
  })
})
