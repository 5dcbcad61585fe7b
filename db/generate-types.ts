import { readFile, writeFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { format, resolveConfig } from 'prettier'
import { openEmbedded } from './connect.ts'
import { tableTypes } from './table-types.ts'
import { migrate } from './migrate.ts'

// Writes database.ts anew; with --check says whether it would differ and writes nothing.
const path = fileURLToPath(new URL('./database.ts', import.meta.url))
const connection = await openEmbedded({})
await migrate(connection.db)
const text = await format(await tableTypes(connection.db), { ...(await resolveConfig(path)), parser: 'typescript' })
await connection.close()

if (process.argv.includes('--check')) {
  const same = (await readFile(path, 'utf8').catch(() => '')) === text
  if (!same) console.error('db/database.ts differs from the migrated database. Run: npm run generate')
  process.exitCode = same ? 0 : 1
} else {
  await writeFile(path, text)
}
