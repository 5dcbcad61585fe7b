import { readdir, readFile, stat, writeFile } from 'node:fs/promises'
import { Writable } from 'node:stream'
import { setTimeout as wait } from 'node:timers/promises'
import { gunzipSync, gzipSync } from 'node:zlib'
import { createHash } from 'node:crypto'
import { Decrypter, Encrypter } from 'age-encryption'
import { sql } from 'kysely'
import { Migrator } from 'kysely/migration'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { lastLine, trailerOf, TRAILER_BYTES } from '../../../api/backups/backup-format.ts'
import { makeBackup } from '../../../api/backups/make-backup.ts'
import { verifyBackup } from '../../../api/backups/read-backup.ts'
import { restoreBackup } from '../../../api/backups/restore.ts'
import { sayStrays } from '../../../api/backups/say-strays.ts'
import { openEmbedded, type Connection } from '../../../db/connect.ts'
import { isMigrated, MIGRATIONS } from '../../../db/migrate.ts'
import { listStrayTables, listTables, rowsQuery } from '../../../db/stored-tables.ts'
import { engine, testDatabase, type TestDatabase } from '../../support/database.ts'
import { backUp, fillClub, LINK_KEY, putBack, scratchFolder } from './support.ts'

const PASSPHRASE = 'tide pool ferry lantern'
let club: TestDatabase
let scratch: Awaited<ReturnType<typeof scratchFolder>>
beforeAll(async () => {
  scratch = await scratchFolder()
  club = await testDatabase()
  await fillClub(club.db)
})
afterAll(async () => {
  await club.close()
  await scratch.remove()
})

/** Every row of every table as the database tells it, by nothing of what makes or reads backups but the list of tables. */
async function everything(db: Connection['db']): Promise<Map<string, string[]>> {
  const tables = new Map<string, string[]>()
  await db.transaction().execute(async (trx) => {
    await sql`set local time zone 'UTC'`.execute(trx)
    for (const table of await listTables(trx)) {
      const { rows } = await sql<{ row: string }>`select r.row from (${rowsQuery(table)}) r`.execute(trx)
      tables.set(table.name, rows.map(({ row }) => row).toSorted())
    }
  })
  return tables
}

type Target = { connection: Connection; close: () => Promise<void> }
const anEmbedded = async (): Promise<Target> => {
  const connection = await openEmbedded({})
  return { connection, close: connection.close }
}
/** Each way between the engines that this suite's engine takes part in; the other suite runs the rest. */
const ways: Array<[string, () => Promise<Target>]> =
  engine === 'embedded' ? [['embedded', anEmbedded]] : [['postgres', testDatabase], ['embedded', anEmbedded]] // prettier-ignore

describe.each(ways)(`a backup of the ${engine} database put back on the %s one`, (_name, target) => {
  it.each([
    ['as it is', null],
    ['locked with a passphrase', PASSPHRASE],
  ])('holds the same rows and the same hash, %s', async (name, passphrase) => {
    const path = scratch.in(`${_name}-${name}.backup`)
    const made = await backUp(club.connection, path, { passphrase })
    const empty = await target()
    try {
      expect(await putBack(empty.connection, path, passphrase)).toBe(LINK_KEY)
      expect(await everything(empty.connection.db)).toEqual(await everything(club.db))
      expect(await isMigrated(empty.connection.db)).toBe(true)
      const again = await backUp(empty.connection, `${path}.again`)
      expect(again.content).toBe(made.content)
      if (_name === engine) return
      // And back again, across the engines the other way.
      const third = await testDatabase()
      await putBack(third.connection, again.path)
      expect((await backUp(third.connection, `${path}.third`)).content).toBe(made.content)
      await third.close()
    } finally {
      await empty.close()
    }
  })

  it('keeps its rules: keys, frozen versions and counters hold as before', async () => {
    const path = scratch.in(`${_name}-rules.backup`)
    await backUp(club.connection, path)
    const empty = await target()
    const { db } = empty.connection
    try {
      await putBack(empty.connection, path)
      await expect(db.deleteFrom('store').execute()).rejects.toThrow('sighting_store_fk')
      await expect(db.deleteFrom('quote_revision').execute()).rejects.toThrow('never changes')
      const clubs = (of: Connection['db']) =>
        sql<{ definition: string }>`select conname || ' ' || pg_get_constraintdef(oid) as definition from pg_constraint
          where connamespace = current_schema()::regnamespace and contype <> 'n' and conparentid = 0 order by 1`.execute(of)
      expect((await clubs(db)).rows).toEqual((await clubs(club.db)).rows)
    } finally {
      await empty.close()
    }
  })
})

it('is of one moment while others write, and lets them write', async () => {
  const { db } = club
  const load = { going: true, pairs: 0 }
  // Two rows that belong together, in one transaction: a copy that has one without the other is of no moment at all.
  const writing = (async () => {
    while (load.going) {
      const name = `Load ${load.pairs}`
      await db.transaction().execute(async (trx) => {
        await trx.insertInto('customer').values({ name }).execute()
        await trx
          .insertInto('product')
          .values({ kind: 'heater', name, spec: { powerW: 100 } as never })
          .execute()
      })
      load.pairs += 1
      await wait(1)
    }
  })()
  const before = load.pairs
  const made = await backUp(club.connection, scratch.in('load.backup'))
  const during = load.pairs - before
  load.going = false
  await writing
  const empty = await anEmbedded()
  await putBack(empty.connection, made.path)
  const count = async (table: 'customer' | 'product'): Promise<number> =>
    (await empty.connection.db.selectFrom(table).select('name').where('name', 'like', 'Load %').execute()).length
  expect(await count('customer')).toBe(await count('product'))
  expect(during).toBeGreaterThan(0)
  const again = await backUp(empty.connection, scratch.in('load-again.backup'))
  expect(again.content).toBe(made.content)
  await empty.close()
  await db.deleteFrom('customer').where('name', 'like', 'Load %').execute()
  await db.deleteFrom('product').where('name', 'like', 'Load %').execute()
})

describe('the file', () => {
  it('is for its owner alone, and holds neither sessions nor mistyped passwords', async () => {
    const { path } = await backUp(club.connection, scratch.in('owner.backup'))
    expect((await stat(path)).mode & 0o777).toBe(0o600)
    const tables = (await verifyBackup({ path, passphrase: null })).head.tables.map(({ name }) => name)
    expect(tables).toContain('quote_revision')
    expect(tables).not.toContain('session')
    expect(tables).not.toContain('sign_in_attempt')
  })

  it('is opened by any program of the age format, and one made by another is opened here', async () => {
    const plain = await backUp(club.connection, scratch.in('plain.backup'))
    const { path } = await backUp(club.connection, scratch.in('age.backup'), { passphrase: PASSPHRASE })
    const decrypter = new Decrypter()
    decrypter.addPassphrase(PASSPHRASE)
    const opened = Buffer.from(await decrypter.decrypt(await readFile(path)))
    expect(opened.subarray(-TRAILER_BYTES).toString()).toContain(`content ${plain.content}`)
    const encrypter = new Encrypter()
    encrypter.setPassphrase(PASSPHRASE)
    encrypter.setScryptWorkFactor(10)
    await writeFile(scratch.in('theirs.backup'), await encrypter.encrypt(await readFile(plain.path)))
    expect((await verifyBackup({ path: scratch.in('theirs.backup'), passphrase: PASSPHRASE })).content).toBe(plain.content)
  })

  it('never takes the place of another one', async () => {
    const { path } = await backUp(club.connection, scratch.in('taken.backup'))
    const before = await readFile(path)
    await expect(backUp(club.connection, path)).rejects.toMatchObject({ code: 'not_writable' })
    expect(await readFile(path)).toEqual(before)
  })
})

describe('a file that is not what was written', () => {
  const refusedWith = async (bytes: Uint8Array, passphrase: string | null = null): Promise<unknown> => {
    const path = scratch.in('wrong.backup')
    await writeFile(path, bytes)
    return verifyBackup({ path, passphrase }).then(
      () => 'taken',
      (error: unknown) => (error as { code?: unknown }).code ?? error,
    )
  }

  it('is refused wherever it was cut', async () => {
    const whole = await readFile((await backUp(club.connection, scratch.in('cut.backup'))).path)
    for (const length of [whole.length - 1, whole.length - TRAILER_BYTES, whole.length >> 1, 200, 3])
      expect(await refusedWith(whole.subarray(0, length)), `${length}`).toBe('cut')
    for (const length of [1, 0]) expect(await refusedWith(whole.subarray(0, length))).toBe('no_backup')
  })

  it.each([
    ['as it is', null],
    ['locked', PASSPHRASE],
  ])('is refused with one bit flipped anywhere, %s', async (name, passphrase) => {
    const whole = await readFile((await backUp(club.connection, scratch.in(`flip ${name}`), { passphrase })).path)
    // The ends bit by bit, where heads, keys and hashes are; the middle at steps.
    const edge = passphrase === null ? 24 : 0
    const places = [
      ...Array.from({ length: edge }, (_, at) => at),
      ...Array.from({ length: passphrase === null ? TRAILER_BYTES + 12 : 3 }, (_, at) => whole.length - 1 - at),
      ...Array.from({ length: 8 }, (_, at) => Math.floor((whole.length * (at + 0.5)) / 8)),
      ...(passphrase === null ? [] : [3, 40, 60, 100, 150, 200]),
    ]
    const taken: number[] = []
    for (const at of places) {
      const flipped = Buffer.from(whole)
      flipped[at] = (flipped[at] ?? 0) ^ (1 << (at % 8))
      const answer = await refusedWith(flipped, passphrase)
      if (typeof answer !== 'string' || answer === 'taken') taken.push(at)
    }
    expect(taken).toEqual([])
  })

  it('is refused without its passphrase and with another one', async () => {
    const { path } = await backUp(club.connection, scratch.in('pass.backup'), { passphrase: PASSPHRASE })
    await expect(verifyBackup({ path, passphrase: null })).rejects.toMatchObject({ code: 'passphrase_needed' })
    await expect(verifyBackup({ path, passphrase: `${PASSPHRASE}s` })).rejects.toMatchObject({ code: 'passphrase_wrong' })
  })

  it('is refused where it is something else, or is not there', async () => {
    expect(await refusedWith(Buffer.from('%PDF-1.7'))).toBe('no_backup')
    expect(await refusedWith(gzipSync('{"kind":"something"}\n'))).toBe('cut')
    await expect(verifyBackup({ path: scratch.in('none'), passphrase: null })).rejects.toMatchObject({ code: 'no_file' })
  })

  it('is refused where it is of a newer release, and says which', async () => {
    const whole = await readFile((await backUp(club.connection, scratch.in('newer.backup'))).path)
    const [first = '', ...rows] = gunzipSync(whole.subarray(0, -TRAILER_BYTES)).toString().split('\n')
    const head = JSON.parse(first) as Record<string, unknown>
    const later = { ...head, release: '9.4.0', migrations: [...(head['migrations'] as string[]), '2031-01-01-fins'] }
    const zipped = gzipSync([JSON.stringify(later), ...rows].join('\n'))
    const trailer = trailerOf('0'.repeat(64))
    const file = createHash('sha256').update(zipped).update(trailer).digest('hex')
    const path = scratch.in('later.backup')
    await writeFile(path, Buffer.concat([zipped, Buffer.from(trailer + lastLine(file))]))
    const empty = await testDatabase()
    await expect(putBack(empty.connection, path)).rejects.toMatchObject({
      code: 'newer_release',
      message: expect.stringContaining('9.4.0'),
    })
    expect((await empty.db.selectFrom('person').select('id').execute()).length).toBe(0)
    await empty.close()
  })
})

describe('tables that somebody else keeps in the same database', () => {
  it('are named, are in no backup, and keep none from being put back', async () => {
    const shared = await testDatabase()
    await sql`create table member_2019 (id bigint generated always as identity primary key, name text)`.execute(shared.db)
    await sql`insert into member_2019 (name) values ('Ada Lindqvare')`.execute(shared.db)
    expect(await listStrayTables(shared.db)).toEqual(['member_2019'])
    expect(sayStrays(await listStrayTables(shared.db))).toContain('the table member_2019')
    await shared.db.insertInto('customer').values({ name: 'Odo Fennick' }).execute()
    const made = await backUp(shared.connection, scratch.in('shared.backup'))
    expect(made.head.tables.map(({ name }) => name)).not.toContain('member_2019')
    expect(Object.keys(made.head.sequences).filter((name) => name.includes('2019'))).toEqual([])
    const empty = await testDatabase()
    await putBack(empty.connection, made.path)
    expect((await empty.db.selectFrom('customer').select('name').execute()).map(({ name }) => name)).toEqual(['Odo Fennick'])
    // And where they lie beside the empty install that is filled, they stay.
    await putBack(shared.connection, made.path)
    expect((await sql<{ name: string }>`select name from member_2019`.execute(shared.db)).rows).toEqual([{ name: 'Ada Lindqvare' }])
    await Promise.all([shared.close(), empty.close()])
  })

  it('are never any that a migration of ours made, at whichever step', async () => {
    const { db, close } = await openEmbedded({})
    for (const name of Object.keys(MIGRATIONS)) {
      await new Migrator({ db, provider: { getMigrations: async () => MIGRATIONS } }).migrateTo(name)
      expect(await listStrayTables(db), name).toEqual([])
    }
    expect((await listTables(db)).length).toBeGreaterThan(20)
    await close()
  })
})

describe('putting back', () => {
  it('leaves an install alone in which anybody has an account', async () => {
    const { path } = await backUp(club.connection, scratch.in('full.backup'))
    const before = await everything(club.db)
    await expect(putBack(club.connection, path)).rejects.toMatchObject({ code: 'not_empty' })
    expect(await everything(club.db)).toEqual(before)
  })

  it('changes nothing where it fails on the way', async () => {
    const { path } = await backUp(club.connection, scratch.in('fails.backup'))
    const empty = await testDatabase()
    await sql`insert into quote_counter (year, last) values (1999, 1)`.execute(empty.db)
    const before = await everything(empty.db)
    const source = { path, passphrase: null }
    const failing = restoreBackup(empty.connection, source, await verifyBackup(source), () =>
      Promise.reject(new Error('no place for the key')),
    )
    await expect(failing).rejects.toThrow('no place for the key')
    expect(await everything(empty.db)).toEqual(before)
    await empty.close()
  })
})

describe('a disk without room', () => {
  /** Takes so many bytes and then answers as the system does where the disk is full. */
  const fullAfter = (bytes: number) => (): Writable => {
    let room = bytes
    return new Writable({
      write(chunk: Buffer, _encoding, done) {
        room -= chunk.length
        done(room < 0 ? Object.assign(new Error('no space left on device'), { code: 'ENOSPC' }) : null)
      },
    })
  }

  it.each([0, 1_000, 50_000])('is told in words and leaves no part of a file, after %s bytes', async (bytes) => {
    const folder = scratch.in(`room-${bytes}`)
    const order = { connection: club.connection, linkKey: new TextEncoder().encode(LINK_KEY), madeAt: new Date(), passphrase: null }
    await expect(makeBackup(`${folder}/full.backup`, order, fullAfter(bytes))).rejects.toMatchObject({
      code: 'no_room',
      message: expect.stringContaining('BACKUP_DIR'),
    })
    expect(await readdir(folder)).toEqual([])
    // The database goes on, and the next backup is made.
    expect((await backUp(club.connection, `${folder}/next.backup`)).bytes).toBeGreaterThan(1_000)
  })
})
