import { mkdir, rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { sql } from 'kysely'
import { makeBackup } from '../../api/backups/make-backup.ts'
import { RELEASE } from '../../api/release.ts'
import { openEmbedded, type Connection } from '../../db/connect.ts'
import { DEMO_SEED, seedDemo } from '../../db/demo/seed-demo.ts'
import { migrate } from '../../db/migrate.ts'

/*
 * Keeps this release for the upgrade ladder: a backup of the demo scenario made by this release's own code, and its schema in words. Run it once,
 * with the tree of the release: `node test/support/make-release-fixture.ts`. What is kept is never made anew.
 */
const TODAY = '2026-11-20'
/** Nobody signs in here: the passwords are no secret and no hash is a real one. */
const PASSWORD = 'kelp lantern orbit 52'
const LINK_KEY = 'the key of links in a kept release, for tests alone'
/** The demo's two years of sightings of this many days stay: enough to see that every kind of row comes through. */
const DAYS_KEPT = 30

/** Every column, constraint, index and trigger, a line each, in an order that is the same on every machine. */
export async function schemaLines(db: Connection['db']): Promise<string[]> {
  const { rows } = await sql<{ line: string }>`
    select format('column %s.%s %s %s', c.relname, a.attname, format_type(a.atttypid, a.atttypmod), case when a.attnotnull then 'not null' else 'null' end) as line
      from pg_attribute a join pg_class c on c.oid = a.attrelid
      where c.relnamespace = current_schema()::regnamespace and c.relkind in ('r', 'p') and a.attnum > 0 and not a.attisdropped and c.relname not like 'kysely%'
    union all select format('constraint %s %s', conname, pg_get_constraintdef(oid)) from pg_constraint
      where connamespace = current_schema()::regnamespace and contype <> 'n' and conparentid = 0 and conrelid::regclass::text not like 'kysely%'
    union all select indexdef from pg_indexes where schemaname = current_schema() and tablename not like 'kysely%'
    union all select pg_get_triggerdef(t.oid) from pg_trigger t join pg_class c on c.oid = t.tgrelid
      where c.relnamespace = current_schema()::regnamespace and not t.tgisinternal`.execute(db)
  return rows.map(({ line }) => line).toSorted()
}

async function main(): Promise<void> {
  const folder = fileURLToPath(new URL(`../fixtures/releases/${RELEASE}`, import.meta.url))
  await mkdir(folder, { recursive: true })
  const connection = await openEmbedded({})
  const { db } = connection
  await migrate(db)
  const passwords = { member: PASSWORD, advisor: PASSWORD, manager: PASSWORD }
  await seedDemo(db, { seed: DEMO_SEED, today: TODAY, passwords, hash: async () => 'no hash at all', now: new Date(`${TODAY}T10:00:00Z`) })
  await sql`delete from sighting where seen_on < ${TODAY}::date - ${DAYS_KEPT}::int`.execute(db)
  const path = join(folder, 'demo.backup')
  await rm(path, { force: true })
  const madeAt = new Date(`${TODAY}T12:00:00Z`)
  const { bytes, content } = await makeBackup(path, { connection, linkKey: new TextEncoder().encode(LINK_KEY), madeAt, passphrase: null })
  await writeFile(join(folder, 'schema.txt'), `${(await schemaLines(db)).join('\n')}\n`)
  await connection.close()
  console.log(`${path}: ${bytes} bytes, content ${content}`)
}

if (process.argv[1] === fileURLToPath(import.meta.url)) await main()
