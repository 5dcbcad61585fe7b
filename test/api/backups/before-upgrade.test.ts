import { readdir, writeFile } from 'node:fs/promises'
import { pino } from 'pino'
import { Migrator } from 'kysely/migration'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { verifyBackup } from '../../../api/backups/read-backup.ts'
import { readConfig } from '../../../api/config.ts'
import { openDatabase } from '../../../api/service/open-database.ts'
import { connect, type Connection } from '../../../db/connect.ts'
import { isMigrated, MIGRATIONS } from '../../../db/migrate.ts'
import { engine, testDatabase, type TestDatabase } from '../../support/database.ts'
import { sql } from 'kysely'
import { LINK_KEY, putBack, scratchFolder } from './support.ts'

const [first = '', ...later] = Object.keys(MIGRATIONS)
const silent = pino({ level: 'silent' })
let scratch: Awaited<ReturnType<typeof scratchFolder>>
let server: TestDatabase | undefined
beforeAll(async () => {
  scratch = await scratchFolder()
  if (engine === 'postgres') server = await testDatabase()
})
afterAll(async () => {
  await server?.close()
  await scratch.remove()
})

const where = () => (server?.url === undefined ? { dataDir: scratch.in('data') } : { databaseUrl: server.url })
const configOf = (backupDir: string) => ({ ...readConfig({ DATA_DIR: scratch.in('data') }), databaseUrl: server?.url ?? null, backupDir })
const open = (backupDir: string): Promise<Connection> =>
  openDatabase(configOf(backupDir), new TextEncoder().encode(LINK_KEY), silent, new AbortController().signal)

/** A database as the oldest release left it, with someone in it. */
async function anOlderOne(): Promise<void> {
  const connection = await connect(where())
  const { db } = connection
  if (server) {
    await sql`drop schema public cascade`.execute(db)
    await sql`create schema public`.execute(db)
  }
  const provider = { getMigrations: async () => ({ [first]: MIGRATIONS[first]! }) }
  expect((await new Migrator({ db, provider }).migrateToLatest()).error).toBeUndefined()
  await sql`insert into person (name, sign_in_name, role, password_hash) values ('Ines Halberg', 'ines', 'manager', 'a hash')`.execute(db)
  await sql`insert into customer (name) values ('Ada Lindqvare')`.execute(db)
  await connection.close()
}

describe('a start on the tables of an older release', () => {
  it('is refused in words where no backup can be made, and changes nothing', async () => {
    expect(later.length).toBeGreaterThan(0)
    await anOlderOne()
    await writeFile(scratch.in('a file'), '')
    await expect(open(scratch.in('a file/backups'))).rejects.toMatchObject({
      code: 'not_writable',
      message: expect.stringContaining('The upgrade was not begun'),
    })
    const connection = await connect(where())
    expect(await isMigrated(connection.db)).toBe(false)
    await connection.close()
  })

  it('makes a backup of them first, which is put back by this release with all it needs', async () => {
    const folder = scratch.in('backups')
    const connection = await open(folder)
    expect(await isMigrated(connection.db)).toBe(true)
    await connection.close()
    const names = await readdir(folder)
    expect(names).toEqual([expect.stringMatching(/-before-upgrade\.backup$/)])
    const path = `${folder}/${names[0]}`
    expect((await verifyBackup({ path, passphrase: null })).head.migrations).toEqual([first])
    const empty = await testDatabase()
    expect(await putBack(empty.connection, path)).toBe(LINK_KEY)
    expect(await isMigrated(empty.db)).toBe(true)
    expect(await empty.db.selectFrom('customer').select('name').execute()).toEqual([{ name: 'Ada Lindqvare' }])
    await empty.close()
  })

  it('makes none of what is up to date', async () => {
    const folder = scratch.in('none')
    await (await open(folder)).close()
    await expect(readdir(folder)).rejects.toMatchObject({ code: 'ENOENT' })
  })
})
