import { sql, type Kysely } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Database } from '../../db/database.ts'
import { engine, testDatabase, type TestDatabase } from '../support/database.ts'

/** Asked this often, some answer comes within the millisecond that makes a query a short one, on a busy machine too. */
const OFTEN = 400

describe.skipIf(engine !== 'postgres')('queries under way at once', () => {
  let database: TestDatabase
  let db: Kysely<Database>
  beforeAll(async () => {
    database = await testDatabase()
    db = database.db
  })
  afterAll(() => database.close())

  const lanesOf = async (asked: Array<Promise<{ rows: Array<{ pid: number }> }>>): Promise<number> =>
    new Set((await Promise.all(asked)).map(({ rows }) => rows[0]?.pid)).size
  const twelve = (ask: () => Promise<{ rows: Array<{ pid: number }> }>) => lanesOf(Array.from({ length: 12 }, ask))

  it('share lanes once they are known to be short, four to a lane, and spread over all of them before', async () => {
    const ask = (): Promise<{ rows: Array<{ pid: number }> }> => sql<{ pid: number }>`select pg_backend_pid() as pid`.execute(db)
    expect(await twelve(ask)).toBe(10)
    for (let count = 0; count < OFTEN; count += 1) await ask()
    expect(await twelve(ask)).toBe(3)
  })

  it('never stand behind a long one, nor behind a write that may wait for a lock', async () => {
    const short = (): Promise<{ rows: Array<{ pid: number }> }> => sql<{ pid: number }>`select pg_backend_pid() as pid, 1`.execute(db)
    for (let count = 0; count < OFTEN; count += 1) await short()
    const done: string[] = []
    const long = sql`select pg_sleep(1)`.execute(db).then(() => done.push('long'))
    const write = sql`insert into sign_in_attempt (key, at) select 'asleep', now() from (select pg_sleep(1)) as slept`
      .execute(db)
      .then(() => done.push('write'))
    const shorts = Array.from({ length: 24 }, () => short().then(() => done.push('short')))
    await Promise.all([long, write, ...shorts])
    expect(done.slice(0, 24)).toEqual(Array.from({ length: 24 }, () => 'short'))
  })
})
