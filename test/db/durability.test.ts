import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { connect, type Connection } from '../../db/connect.ts'
import { engine, testDatabase, type TestDatabase } from '../support/database.ts'

/** Killing is not cutting the power: this says nothing about that. */
const KILLS = 10

let where: string
let test: TestDatabase | undefined
beforeAll(async () => {
  test = engine === 'postgres' ? await testDatabase() : undefined
  where = test?.url ?? (await mkdtemp(join(tmpdir(), 'driploop-kill-')))
})
afterAll(async () => {
  await test?.close()
  if (!test) await rm(where, { recursive: true, force: true })
})

const open = (): Promise<Connection> => connect(where.startsWith('postgres') ? { databaseUrl: where } : { dataDir: where })
const script = new URL('../support/writer.ts', import.meta.url).pathname

/** Keys that a writer was told are stored, before it was killed in the middle of writing. */
async function writeUntilKilled(prefix: string, afterMs: number): Promise<string[]> {
  const writer = spawn(process.execPath, [script, where, prefix], { stdio: ['ignore', 'pipe', 'inherit'] })
  let said = ''
  writer.stdout.on('data', (chunk) => (said += String(chunk)))
  await once(writer.stdout, 'data')
  await wait(afterMs)
  const ended = once(writer, 'close')
  writer.kill('SIGKILL')
  await ended
  // The last line may have been cut short by the kill.
  return said.split('\n').slice(0, -1)
}

it(`a process killed ${KILLS} times while it writes has lost nothing that was acknowledged, and doubled nothing`, async () => {
  const acknowledged: string[] = []
  for (let kill = 0; kill < KILLS; kill++) acknowledged.push(...(await writeUntilKilled(`run${kill}`, 20 + ((kill * 67) % 300))))
  const connection = await open()
  const stored = (await connection.db.selectFrom('sign_in_attempt').select('key').execute()).map((row) => row.key)
  await connection.close()
  expect(acknowledged.length).toBeGreaterThan(KILLS * 10)
  expect(acknowledged.filter((key) => !stored.includes(key))).toEqual([])
  expect(new Set(stored).size).toBe(stored.length)
  // At most the one write in flight at each kill was stored without having been acknowledged.
  expect(stored.length - acknowledged.length).toBeLessThanOrEqual(KILLS)
}, 180_000)
