import { spawn, type ChildProcess } from 'node:child_process'
import { setTimeout as wait } from 'node:timers/promises'
import postgres from 'postgres'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sql } from 'kysely'
import { connect } from '../../db/connect.ts'
import { migrate } from '../../db/migrate.ts'
import { isReachable, isUnreachable } from '../../db/reach.ts'
import { engine } from '../support/database.ts'
import { postgresBinaries, startLocalPostgres, unprivileged, type LocalServer } from '../support/local-postgres.ts'

const [bin, account] = [postgresBinaries(), await unprivileged()]
const RESTARTS = 4
const script = new URL('../support/transactor.ts', import.meta.url).pathname

describe.skipIf(engine !== 'postgres' || bin === undefined || account === undefined)('a server of our own that goes away', () => {
  let server: LocalServer
  let child: ChildProcess
  let said: string[] = []
  beforeAll(async () => {
    server = await startLocalPostgres(bin ?? '', account ?? {})
    const connection = await connect({ databaseUrl: server.url })
    await migrate(connection.db)
    await connection.close()
    child = spawn(process.execPath, [script, server.url], { stdio: ['ignore', 'pipe', 'pipe'] })
    child.stdout?.on('data', (chunk) => said.push(...String(chunk).split('\n').filter(Boolean)))
    child.stderr?.on('data', (chunk) => said.push(`stderr ${String(chunk)}`))
  })
  afterAll(async () => {
    child.kill('SIGKILL')
    await server.stop()
  })

  async function until(what: string, times: number, withinMs: number): Promise<void> {
    said = []
    const deadline = Date.now() + withinMs
    while (said.filter((line) => line.startsWith(what)).length < times) {
      if (Date.now() > deadline) throw new Error(`not ${times} × "${what}" within ${withinMs} ms but:\n${said.slice(-20).join('\n')}`)
      await wait(50)
    }
  }

  it(`leaves the process alive through ${RESTARTS} restarts amid transactions, and it writes again each time`, async () => {
    for (let restart = 0; restart < RESTARTS; restart += 1) {
      await until('kept', 50, 20_000)
      await server.halt(restart % 2 === 0 ? 'SIGINT' : 'SIGQUIT')
      await until('lost', 12, 20_000)
      await server.start()
      await until('kept', 50, 20_000)
      expect(child.exitCode).toBeNull()
      expect(said.filter((line) => line.startsWith('broken') || line.startsWith('stderr'))).toEqual([])
    }
    // Both rows of a transaction or none, whatever it was doing.
    const reader = postgres(server.url, { max: 1 })
    const torn = await reader`select key from sign_in_attempt group by key having count(*) % 2 = 1`
    await reader.end()
    expect(torn).toEqual([])
  })

  it('and comes back after it was frozen: within 20 s each query is told, and the next one after works', async () => {
    await until('kept', 12, 20_000)
    const connection = await connect({ databaseUrl: server.url })
    await sql`select 1`.execute(connection.db)
    const reader = postgres(server.url, { max: 1 })
    const backends = (await reader<Array<{ pid: number }>>`select pid from pg_stat_activity`).map((row) => row.pid)
    await reader.end()
    const signal = (name: NodeJS.Signals): void => {
      for (const pid of [server.pid(), ...backends]) {
        try {
          process.kill(pid, name)
        } catch (error) {
          if ((error as NodeJS.ErrnoException).code !== 'ESRCH') throw error
        }
      }
    }
    signal('SIGSTOP')
    try {
      const started = performance.now()
      expect(await isReachable(connection.db)).toBe(false)
      const error = await sql`select 1`.execute(connection.db).catch((reason: unknown) => reason)
      expect(isUnreachable(error), String(error)).toBe(true)
      expect(performance.now() - started).toBeLessThan(20_000)
      // All twelve lines of the other process, the four that wait for their turn included.
      await until('lost', 12, 25_000)
      expect(Math.max(...said.map((line) => Number(line.split(' ')[1])))).toBeLessThan(20_000)
    } finally {
      signal('SIGCONT')
    }
    await until('kept', 50, 20_000)
    await sql`select 1`.execute(connection.db)
    await connection.close()
    expect(child.exitCode).toBeNull()
  }, 90_000)

  it('a statement that takes too long is ended by the server, and so is a transaction that stands still', async () => {
    const { db, close } = await connect({ databaseUrl: server.url })
    const { rows } = await sql<{ name: string; setting: string }>`select name, setting from pg_settings
      where name in ('statement_timeout', 'idle_in_transaction_session_timeout') order by name`.execute(db)
    expect(rows.map((row) => row.setting)).toEqual(['30000', '15000'])
    const late = db.transaction().execute(async (trx) => {
      await sql`set local statement_timeout = 50`.execute(trx)
      await sql`select pg_sleep(5)`.execute(trx)
    })
    expect(isUnreachable(await late.catch((reason: unknown) => reason))).toBe(true)
    const idle = db.transaction().execute(async (trx) => {
      await sql`set local idle_in_transaction_session_timeout = 50`.execute(trx)
      await wait(500)
      await sql`select 1`.execute(trx)
    })
    expect(isUnreachable(await idle.catch((reason: unknown) => reason))).toBe(true)
    await sql`select 1`.execute(db)
    await close()
  })
})
