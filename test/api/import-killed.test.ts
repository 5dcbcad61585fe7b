import { mkdtemp, readdir, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, describe, expect, it } from 'vitest'
import type { ImportView } from '../../core/exchange/import-view.ts'
import { engine, testDatabase } from '../support/database.ts'
import { freePort, printedToken, ready, startServer, until, type ServerProcess } from './support/process.ts'

const PASSWORD = 'kelp lantern orbit 52'
const ROWS = 6_000
const running: ServerProcess[] = []
const endings: Array<() => Promise<unknown>> = []
afterEach(async () => {
  for (const server of running.splice(0)) {
    server.child.kill('SIGKILL')
    await server.exited
  }
  for (const end of endings.splice(0).toReversed()) await end()
})

async function place(): Promise<Record<string, string>> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-killed-'))
  endings.push(() => rm(folder, { recursive: true, force: true }))
  if (engine === 'embedded') return { DATA_DIR: folder }
  const test = await testDatabase()
  endings.push(test.close)
  return { DATA_DIR: folder, DATABASE_URL: test.url ?? '' }
}
async function start(env: Record<string, string>): Promise<ServerProcess> {
  const server = startServer({ PORT: String(await freePort()), ...env })
  running.push(server)
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

describe('an import whose server is killed', () => {
  it.each(['reading', 'checking', 'writing'] as const)(
    'while it is %s shows nothing half done, and is taken up again to its end',
    async (phase) => {
      const env = await place()
      const first = await start(env)
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

      const second = await start(env)
      const total = async (): Promise<number> => (await read<{ total: number }>(second, cookie, '/api/products?limit=1')).total
      expect([0, ROWS]).toContain(await total())
      await until(second, 'the end', async () => (await read<ImportView>(second, cookie, `/api/imports/${id}`)).endedAt !== null, 150_000)
      const view = await read<ImportView>(second, cookie, `/api/imports/${id}`)
      expect([view.state, view.words, view.outcome]).toMatchObject(['done', null, { applied: true, rows: ROWS, creates: ROWS, faults: 0 }])
      expect(await total()).toBe(ROWS)
      expect(await readdir(join(env['DATA_DIR'] ?? '', 'imports'))).toEqual([])
    },
    240_000,
  )
})
