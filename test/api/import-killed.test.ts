import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import type { ImportView } from '../../core/exchange/import-view.ts'
import { engine, testDatabase } from '../support/database.ts'
import { freePort, printedToken, ready, startServer, until, type ServerProcess } from './support/process.ts'

const PASSWORD = 'kelp lantern orbit 52'
const ROWS = 6_000
type Environment = Record<string, string>
type Ending = () => Promise<unknown>
/** On PostgreSQL most of each case is waiting until the dead server's claim on the job runs out: there they wait side by side, each on a database of its own. */
const sideBySide = { concurrent: engine === 'postgres' }

/** A folder, and on PostgreSQL a database, for one case alone; what ends it is put in front of `endings`. */
async function place(endings: Ending[]): Promise<Environment> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-killed-'))
  endings.unshift(() => rm(folder, { recursive: true, force: true }))
  if (engine === 'embedded') return { DATA_DIR: folder }
  const test = await testDatabase()
  endings.unshift(test.close)
  return { DATA_DIR: folder, DATABASE_URL: test.url ?? '' }
}
async function start(env: Environment, endings: Ending[]): Promise<ServerProcess> {
  const server = startServer({ PORT: String(await freePort()), ...env })
  endings.unshift(async () => {
    server.child.kill('SIGKILL')
    await server.exited
  })
  await ready(server)
  return server
}
const JSON_TYPE = { 'content-type': 'application/json' }
async function joined(server: ServerProcess): Promise<string> {
  await until(server, 'the first link', async () => printedToken(server) !== '')
  const body = JSON.stringify({ name: 'Ines Halberg', signInName: 'ines', password: PASSWORD })
  const answer = await server.fetch(`/api/links/${printedToken(server)}`, { method: 'POST', headers: JSON_TYPE, body })
  return answer.headers.getSetCookie()[0]?.split(';')[0] ?? ''
}
const read = async <Body>(server: ServerProcess, cookie: string, path: string): Promise<Body> =>
  (await (await server.fetch(path, { headers: { cookie } })).json()) as Body

describe('an import whose server is killed', sideBySide, () => {
  it.for(['reading', 'checking', 'writing'] as const)(
    'while it is %s shows nothing half done, and is taken up again to its end',
    { timeout: 240_000 },
    async (phase, { onTestFinished }) => {
      const endings: Ending[] = []
      onTestFinished(async () => {
        for (const end of endings) await end()
      })
      const env = await place(endings)
      const first = await start(env, endings)
      const cookie = await joined(first)
      const csv = ['name,powerW', ...Array.from({ length: ROWS }, (_, index) => `Halden ${index},${5 + (index % 900)}`)].join('\n')
      const sent = await first.fetch('/api/imports?set=catalog&kind=heater&dryRun=false', {
        method: 'POST',
        headers: { 'content-type': 'text/csv', cookie },
        body: csv,
      })
      expect(sent.status, await sent.clone().text()).toBe(201)
      const { id } = (await sent.json()) as ImportView
      // On the embedded engine nothing is answered while it writes: the last word before is that all was checked.
      const isThere = (view: ImportView): boolean =>
        view.phase === phase || (phase === 'writing' && view.phase === 'checking' && view.done === ROWS) || view.endedAt !== null
      await until(first, phase, async () => isThere(await read<ImportView>(first, cookie, `/api/imports/${id}`)))
      first.child.kill('SIGKILL')
      await first.exited

      const second = await start(env, endings)
      const total = async (): Promise<number> => (await read<{ total: number }>(second, cookie, '/api/products?limit=1')).total
      expect([0, ROWS]).toContain(await total())
      await until(second, 'the end', async () => (await read<ImportView>(second, cookie, `/api/imports/${id}`)).endedAt !== null, 150_000)
      const view = await read<ImportView>(second, cookie, `/api/imports/${id}`)
      expect([view.state, view.words, view.outcome]).toMatchObject(['done', null, { applied: true, rows: ROWS, creates: ROWS, faults: 0 }])
      expect(await total()).toBe(ROWS)
      expect(await readdir(join(env['DATA_DIR'] ?? '', 'imports'))).toEqual([])
    },
  )
})
