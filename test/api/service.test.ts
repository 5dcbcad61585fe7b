import { mkdtemp, readFile, rm, stat } from 'node:fs/promises'
import { connect as dial, createServer, type Server, type Socket } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest'
import { engine, testDatabase, type TestDatabase } from '../support/database.ts'
import { freePort, printedToken, ready, startServer, until, type ServerProcess } from './support/process.ts'

const PASSWORD = 'kelp lantern orbit 52'
const JSON_TYPE = { 'content-type': 'application/json' }
const running: ServerProcess[] = []
let folder: string
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'driploop-service-'))
})
afterEach(async () => {
  for (const server of running.splice(0)) {
    server.child.kill('SIGKILL')
    await server.exited
  }
})
afterAll(() => rm(folder, { recursive: true, force: true }))

async function start(env: Record<string, string>): Promise<ServerProcess> {
  const server = startServer({ PORT: String(await freePort()), DATA_DIR: join(folder, 'data'), ...env })
  running.push(server)
  return server
}
const kill = async (server: ServerProcess, signal: NodeJS.Signals): Promise<number | string> => {
  server.child.kill(signal)
  return server.exited
}
async function joined(server: ServerProcess, signInName: string): Promise<string> {
  await until(server, 'the first link', async () => printedToken(server) !== '')
  const body = JSON.stringify({ name: 'Ines Halberg', signInName, password: PASSWORD })
  const answer = await server.fetch(`/api/links/${printedToken(server)}`, { method: 'POST', headers: JSON_TYPE, body })
  expect(answer.status, await answer.clone().text()).toBe(201)
  return answer.headers.getSetCookie()[0]?.split(';')[0] ?? ''
}
const send = (server: ServerProcess, cookie: string, path: string, body: unknown): Promise<Response> =>
  server.fetch(path, { method: 'POST', headers: { ...JSON_TYPE, cookie }, body: JSON.stringify(body) })

describe('a start that cannot be right', () => {
  it.each([
    [{ DRIPLOOP_PORT: '80' }, 'DRIPLOOP_PORT is not known'],
    [{ PORT: 'eighty' }, 'PORT is "eighty"'],
    [{ PUBLIC_URL: 'http://tanks.example.org' }, 'needs https'],
    [{ PUBLIC_URL: 'https://tanks.example.org/shop' }, 'PUBLIC_URL has a path'],
    [{ DATABASE_URL: 'mysql://x' }, 'DATABASE_URL starts with'],
    [{ LINK_KEY: 'short' }, 'LINK_KEY has 5 characters'],
    [{ TRUSTED_PROXIES: 'proxy.local' }, 'TRUSTED_PROXIES'],
    [{ HOST: '203.0.113.7' }, 'HOST is "203.0.113.7", which is no address of this computer.'],
    [{ HOST: 'no such host' }, 'HOST is "no such host", which is no address of this computer.'],
    [{ DATA_DIR: '/dev/null/data' }, 'DATA_DIR is "/dev/null/data": a part of it is a file and no folder.'],
  ])('ends with the variable and the fix: %o', async (env, words) => {
    const server = await start(env)
    expect(await server.exited).toBe(1)
    expect(server.output()).toContain(words)
    expect(server.output()).not.toMatch(/\bat .+:\d+:\d+/)
  })
})

if (engine === 'embedded') {
  describe('on the embedded database', () => {
    it('prints one link on the first start, keeps its key to itself, and refuses a second process in words', async () => {
      const first = await start({})
      const cookie = await joined(first, 'ines')
      expect((await stat(join(folder, 'data', 'link-key'))).mode & 0o777).toBe(0o600)
      const second = await start({})
      expect(await second.exited).toBe(1)
      expect(second.output()).toMatch(/in use by process \d+/)
      expect((await first.fetch('/api/people', { headers: { cookie } })).status).toBe(200)
      expect(await kill(first, 'SIGTERM')).toBe(0)
      const again = await start({})
      await ready(again)
      expect(printedToken(again)).toBe('')
      expect((await again.fetch('/api/people', { headers: { cookie } })).status).toBe(200)
    })

    it('loses nothing that it acknowledged, killed under writes three times over', async () => {
      const acknowledged: string[] = []
      const key = await readFile(join(folder, 'data', 'link-key'), 'utf8')
      let cookie = ''
      let asked = 0
      for (let round = 0; round < 3; round += 1) {
        const server = await start({})
        await ready(server)
        if (cookie === '') {
          const answer = await send(server, '', '/api/session', { signInName: 'ines', password: PASSWORD })
          cookie = answer.headers.getSetCookie()[0]?.split(';')[0] ?? ''
        }
        const posting = Array.from({ length: 4 }, async () => {
          for (;;) {
            asked += 1
            const heater = { kind: 'heater', name: `Halden ${asked}`, spec: { powerW: 100 } }
            const id = await send(server, cookie, '/api/products', heater)
              .then(async (answer) => (answer.status === 201 ? ((await answer.json()) as { id: string }).id : ''))
              .catch(() => undefined)
            if (id === undefined) return
            if (id !== '') acknowledged.push(id)
          }
        })
        const enough = acknowledged.length + 15
        await until(server, 'fifteen more products', async () => acknowledged.length >= enough)
        await kill(server, 'SIGKILL')
        await Promise.all(posting)
      }
      const server = await start({})
      await ready(server)
      expect(acknowledged.length).toBeGreaterThanOrEqual(45)
      const lost: string[] = []
      for (const id of acknowledged) if ((await server.fetch(`/api/products/${id}`, { headers: { cookie } })).status !== 200) lost.push(id)
      expect(lost).toEqual([])
      const { total } = (await (await server.fetch('/api/products?limit=1', { headers: { cookie } })).json()) as { total: number }
      expect(total).toBeLessThanOrEqual(asked)
      expect(await readFile(join(folder, 'data', 'link-key'), 'utf8')).toBe(key)
    }, 180_000)
  })
} else {
  describe('on PostgreSQL', () => {
    let test: TestDatabase
    let line: Server
    const sockets = new Set<Socket>()
    let linePort: number
    const target = (): URL => new URL(test.url ?? '')
    /** A line to the real server that can be cut and mended, as a network or a restart does. */
    const mend = async (): Promise<void> => {
      line = createServer((near) => {
        const far = dial(Number(target().port || 5432), target().hostname)
        for (const socket of [near, far]) {
          sockets.add(socket)
          socket.on('error', () => undefined)
        }
        near.pipe(far).pipe(near)
      })
      await new Promise<void>((resolve) => line.listen(linePort, '127.0.0.1', resolve))
    }
    const cut = async (): Promise<void> => {
      for (const socket of sockets) socket.destroy()
      sockets.clear()
      await new Promise((resolve) => line.close(resolve))
    }
    const lineUrl = (): string => {
      const url = target()
      url.hostname = '127.0.0.1'
      url.port = String(linePort)
      return url.href
    }
    beforeAll(async () => {
      test = await testDatabase()
      linePort = await freePort()
    })
    afterAll(async () => {
      await test.close()
    })

    it('comes up without it, answers 503, and begins by itself when it is there', async () => {
      const server = await start({ DATABASE_URL: lineUrl() })
      await until(server, 'an answer', async () => (await server.fetch('/health/live')).status === 200)
      const answer = await server.fetch('/api/session')
      expect([answer.status, answer.headers.get('retry-after'), answer.headers.get('content-type')]).toEqual([
        503,
        '5',
        'application/problem+json',
      ])
      expect((await server.fetch('/health/ready')).status).toBe(503)
      expect((await server.fetch('/')).status).toBe(200)
      await mend()
      await ready(server)
      expect((await server.fetch('/api/session')).status).toBe(200)
      await kill(server, 'SIGTERM')
      await cut()
    })

    it('is let go and taken up again under load, with no answer but good ones and 503', async () => {
      await mend()
      const server = await start({ DATABASE_URL: lineUrl() })
      await ready(server)
      const cookie = await joined(server, 'ines')
      const statuses = new Map<number, number>()
      const acknowledged: string[] = []
      const load = { going: true }
      const lines = Array.from({ length: 4 }, async () => {
        while (load.going) {
          const answer = await send(server, cookie, '/api/customers', { name: 'Ada Lindqvare', reach: '', note: '' })
          const { status } = answer
          statuses.set(status, (statuses.get(status) ?? 0) + 1)
          if (status === 201) acknowledged.push(((await answer.json()) as { id: string }).id)
          if (status !== 201) await wait(50)
        }
      })
      for (let times = 0; times < 2; times += 1) {
        await wait(500)
        await cut()
        await until(server, '503', async () => (await server.fetch('/api/board', { headers: { cookie } })).status === 503)
        await mend()
        await until(server, 'recovery', async () => (await server.fetch('/api/board', { headers: { cookie } })).status === 200)
      }
      load.going = false
      await Promise.all(lines)
      expect([...statuses.keys()].filter((status) => status !== 201 && status !== 503)).toEqual([])
      expect(statuses.get(201)).toBeGreaterThan(10)
      const kept = await test.db.selectFrom('customer').select('id').execute()
      expect(acknowledged.filter((id) => !kept.some((row) => row.id === id))).toEqual([])
      await kill(server, 'SIGTERM')
      await cut()
    }, 120_000)
  })
}

describe('being asked to stop', () => {
  it('says first that it is not ready, finishes what it began, and ends well in time', async () => {
    const test = engine === 'postgres' ? await testDatabase() : undefined
    const server = await start({ DATA_DIR: join(folder, 'stopped'), ...(test?.url === undefined ? {} : { DATABASE_URL: test.url }) })
    await ready(server)
    const cookie = await joined(server, 'stopper')
    const signingIn = send(server, cookie, '/api/session', { signInName: 'stopper', password: PASSWORD })
    await wait(20)
    const asked = performance.now()
    // One press of Ctrl+C: the terminal tells the group, npm and the launcher tell their child again.
    for (const signal of ['SIGINT', 'SIGINT', 'SIGTERM'] as const) server.child.kill(signal)
    const probe = async (): Promise<number> => (await server.fetch('/health/ready').catch(() => ({ status: 0 }))).status
    const seen = [await probe()]
    while (seen.at(-1) === 200) seen.push(await probe())
    // 503 while it still listens, 0 once it does not: in both cases nobody sends it more work.
    expect([503, 0]).toContain(seen.at(-1))
    expect((await signingIn).status).toBe(200)
    expect(await server.exited).toBe(0)
    expect(performance.now() - asked).toBeLessThan(10_000)
    await test?.close()
  })
})
