import { sql } from 'kysely'
import type { Migration } from 'kysely/migration'
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from 'vitest'
import { connect, type Connection } from '../../db/connect.ts'
import { isMigrated, migrate, MIGRATIONS } from '../../db/migrate.ts'
import { Lanes, WITHOUT_LIMIT, type Client } from '../../db/postgres-lanes.ts'
import { refill } from '../../db/refill.ts'
import { withSnapshot } from '../../db/snapshot.ts'
import { engine, testDatabase, type TestDatabase } from '../support/database.ts'

/** Half a second of work against a limit of a fifth. */
const LIMIT_MS = 200
const long = sql`select pg_sleep(0.5)`

describe.skipIf(engine !== 'postgres')('a server that ends what takes long', () => {
  let test: TestDatabase
  let hasty: Connection
  beforeAll(async () => {
    test = await testDatabase()
    hasty = await connect({ databaseUrl: test.url ?? '', statementLimitMs: LIMIT_MS })
  })
  afterAll(async () => {
    await hasty.close()
    await test.close()
  })

  it('lets a step to the next release take its time, and nothing else', async () => {
    const slow: Migration = { up: async (db) => void (await long.execute(db)) }
    await expect(long.execute(hasty.db)).rejects.toThrow('statement timeout')
    expect(await migrate(hasty.db, { ...MIGRATIONS, '9999-12-31-slow': slow })).toEqual(['9999-12-31-slow'])
    await expect(long.execute(hasty.db)).rejects.toThrow('statement timeout')
    await sql`delete from kysely_migration where name = '9999-12-31-slow'`.execute(test.db)
    expect(await isMigrated(test.db)).toBe(true)
  })

  it('lets a copy be taken in its time, and a disk that is slower than a transaction may be idle', async () => {
    let release = (): void => undefined
    const held = new Promise<void>((resolve) => (release = resolve))
    const blocking = test.db.transaction().execute(async (trx) => {
      await sql`lock table sighting in access exclusive mode`.execute(trx)
      await held
    })
    setTimeout(release, 2 * LIMIT_MS)
    const rows = await withSnapshot(hasty, async (snapshot) => {
      const { rows: said } = await sql<{ idle: string }>`select current_setting('idle_in_transaction_session_timeout') as idle`.execute(
        test.db,
      )
      const read: string[] = []
      for (const { name } of snapshot.tables) for await (const chunk of snapshot.rowsOf(name)) read.push(...chunk)
      return { read, usual: said[0]?.idle }
    })
    await blocking
    expect(rows.read.length).toBeGreaterThan(0)
    expect(rows.usual, 'the limit that others keep').toBe('30s')
    await expect(long.execute(hasty.db)).rejects.toThrow('statement timeout')
  })

  it('lets a copy that is put back take its time', async () => {
    const none = { migrations: [], sequences: {}, tables: [], chunks: (async function* () {})() }
    await hasty.db.transaction().execute(async (trx) => {
      await refill(trx, none)
      await long.execute(trx)
    })
    await expect(long.execute(hasty.db)).rejects.toThrow('statement timeout')
  })
})

describe('a connection that is silent for a minute', () => {
  afterEach(() => vi.useRealTimers())

  it.each([
    ['is given up', 'select 1', true],
    ['is waited for where its transaction has no limit', WITHOUT_LIMIT, false],
  ])('%s', async (_name, first, lost) => {
    vi.useFakeTimers()
    const answer = (text: string): Promise<unknown> => (text === 'long' ? new Promise(() => undefined) : Promise.resolve([]))
    const lanes = new Lanes(() => ({ unsafe: answer, end: async () => undefined }) as unknown as Client)
    const lane = await lanes.hold()
    await lanes.runOn(lane, first, [])
    void lanes.runOn(lane, 'long', [])
    await vi.advanceTimersByTimeAsync(60_000)
    expect(lane.lost).toBe(lost)
    lanes.giveBack(lane)
    expect(lane.patient).toBe(false)
    await lanes.end()
  })
})
