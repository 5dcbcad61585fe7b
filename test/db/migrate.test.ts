import { readFile } from 'node:fs/promises'
import { sql } from 'kysely'
import { format, resolveConfig } from 'prettier'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { tableTypes } from '../../db/table-types.ts'
import { isMigrated, migrate, MIGRATIONS } from '../../db/migrate.ts'
import { testDatabase, type TestDatabase } from '../support/database.ts'

let test: TestDatabase
beforeAll(async () => {
  test = await testDatabase()
})
afterAll(() => test.close())

it('does nothing the second time', async () => {
  expect(await isMigrated(test.db)).toBe(true)
  expect(await migrate(test.db)).toEqual([])
})

it('says of tables of a newer release that they are, and where the way back is told', async () => {
  await sql`insert into kysely_migration (name, timestamp) values ('2999-01-01-later', '2999-01-01T00:00:00Z')`.execute(test.db)
  const refused = migrate(test.db)
  await expect(refused).rejects.toThrow(/tables are of a newer release.*“Back again” in the README/)
  await sql`delete from kysely_migration where name = '2999-01-01-later'`.execute(test.db)
  expect(await migrate(test.db)).toEqual([])
})

it('lists its steps in the order in which they are applied: that of their names', () => {
  const names = Object.keys(MIGRATIONS)
  expect(names).toEqual(names.toSorted())
})

it('reads money, counts and civil days alike on both engines', async () => {
  const { rows } =
    await sql`select 123456789012::bigint as money, date '2026-03-29' as day, count(*) as many, 0.25::double precision as share`.execute(
      test.db,
    )
  expect(rows).toEqual([{ money: 123_456_789_012, day: '2026-03-29', many: 1, share: 0.25 }])
})

it.each(['Pacific/Apia', 'America/Santiago', 'Asia/Kathmandu'])('writes a civil day as the day it names in %s', async (zone) => {
  const day = await test.db.transaction().execute(async (trx) => {
    await sql`set local time zone ${sql.lit(zone)}`.execute(trx)
    return (await sql<{ day: string }>`select ${'2026-10-25'}::date as day`.execute(trx)).rows[0]?.day
  })
  expect(day).toBe('2026-10-25')
})

it('agrees with the table types that are checked in, whichever engine is asked', async () => {
  const path = new URL('../../db/database.ts', import.meta.url).pathname
  const text = await format(await tableTypes(test.db), { ...(await resolveConfig(path)), parser: 'typescript' })
  expect(text).toBe(await readFile(path, 'utf8'))
})
