import { readdir, readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { verifyBackup } from '../../../api/backups/read-backup.ts'
import { isMigrated, migrate } from '../../../db/migrate.ts'
import { testDatabase, type TestDatabase } from '../../support/database.ts'
import { schemaLines } from '../../support/make-release-fixture.ts'
import { backUp, putBack, scratchFolder } from './support.ts'

/** Every release that was ever made, each as a backup made by its own code. */
const RELEASES = fileURLToPath(new URL('../../fixtures/releases', import.meta.url))
const releases = await readdir(RELEASES).catch(() => [])
/** The sections of the change log that are no longer "Unreleased". */
const CHANGES = await readFile(new URL('../../../CHANGELOG.md', import.meta.url), 'utf8')
const told = [...CHANGES.matchAll(/^## (\d+\.\d+\.\d+)/gm)].map(([, version]) => version)

let fresh: TestDatabase
beforeAll(async () => {
  fresh = await testDatabase()
})
afterAll(() => fresh.close())

it('has every release that the change log tells of, and no other', () => {
  expect(releases.toSorted()).toEqual(told.toSorted())
})

it.each(releases)(
  'puts a backup of release %s back, with the tables that a fresh install has and every row it counted',
  async (release) => {
    const path = `${RELEASES}/${release}/demo.backup`
    const { head } = await verifyBackup({ path, passphrase: null })
    expect(head.release).toBe(release)
    const test = await testDatabase()
    const scratch = await scratchFolder()
    try {
      await putBack(test.connection, path)
      expect(await isMigrated(test.db)).toBe(true)
      expect(await migrate(test.db)).toEqual([])
      expect(await schemaLines(test.db)).toEqual(await schemaLines(fresh.db))
      const now = new Map((await backUp(test.connection, scratch.in('now.backup'))).head.tables.map(({ name, rows }) => [name, rows]))
      for (const { name, rows } of head.tables) expect(now.get(name), name).toBe(rows)
      expect(now.get('quote_revision')).toBeGreaterThan(0)
    } finally {
      await test.close()
      await scratch.remove()
    }
  },
)

it.each(releases)('keeps the tables of release %s as they were', async (release) => {
  const kept = (await readFile(`${RELEASES}/${release}/schema.txt`, 'utf8')).trimEnd().split('\n')
  expect(kept.length).toBeGreaterThan(100)
  const { head } = await verifyBackup({ path: `${RELEASES}/${release}/demo.backup`, passphrase: null })
  for (const { name, columns } of head.tables)
    for (const column of columns)
      expect(
        kept.some((line) => line.startsWith(`column ${name}.${column} `)),
        `${name}.${column}`,
      ).toBe(true)
})
