import { CompiledQuery, Kysely, type DatabaseConnection, type Dialect, type Driver } from 'kysely'
import { PostgresAdapter, PostgresIntrospector, PostgresQueryCompiler } from 'kysely'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Database } from '../../db/database.ts'
import { sighting, product, store } from '../support/rows.ts'
import { today } from './support/quotes.ts'
import { ended, sendFile, workIn } from './support/imports.ts'
import { createWorld, type Browser, type World } from './support/world.ts'

/** How the drivers say that there is nobody to talk to; the last is how a server says that it is going down. */
const FAILURES = ['ECONNREFUSED', 'ECONNRESET', 'CONNECTION_CLOSED', 'CONNECTION_ENDED', 'CONNECT_TIMEOUT', '57P01', '08006']

/** The real database behind a switch: while it is off every statement fails as if the server had gone. */
function switched(db: Kysely<Database>) {
  const state: { failing: string | null; after: number } = { failing: null, after: 0 }
  const broken = (): void => {
    if (state.failing === null) return
    if (state.after > 0) {
      state.after -= 1
      return
    }
    throw Object.assign(new Error('connection lost'), { code: state.failing })
  }
  const executor = db.getExecutor()
  const dialect: Dialect = {
    createAdapter: () => new PostgresAdapter(),
    createIntrospector: (inner) => new PostgresIntrospector(inner),
    createQueryCompiler: () => new PostgresQueryCompiler(),
    createDriver: (): Driver => {
      const run = async (connection: DatabaseConnection, sql: string): Promise<void> =>
        void (await connection.executeQuery(CompiledQuery.raw(sql)))
      const releases = new Map<DatabaseConnection, () => void>()
      return {
        init: async () => undefined,
        acquireConnection: () =>
          new Promise((resolve, reject) => {
            executor
              .provideConnection((real) => {
                const wrapped: DatabaseConnection = {
                  executeQuery: async (query) => {
                    broken()
                    return real.executeQuery(query)
                  },
                  streamQuery: () => {
                    throw new Error('nothing streams here')
                  },
                }
                return new Promise<void>((done) => {
                  releases.set(wrapped, done)
                  resolve(wrapped)
                })
              })
              .catch(reject)
          }),
        beginTransaction: (connection) => run(connection, 'begin'),
        commitTransaction: (connection) => run(connection, 'commit'),
        // A server that went away has rolled back by itself.
        rollbackTransaction: async (connection) => {
          const { failing } = state
          state.failing = null
          await run(connection, 'rollback').finally(() => (state.failing = failing))
        },
        releaseConnection: async (connection) => releases.get(connection)?.(),
        destroy: async () => undefined,
      }
    },
  }
  return { db: new Kysely<Database>({ dialect }), state }
}

let world: World
let member: Browser
let line: ReturnType<typeof switched>
beforeAll(async () => {
  world = await createWorld()
  line = switched(world.db)
  world.rebuild({ db: line.db })
  member = await world.signIn('member')
})
afterAll(() => world.close())

describe('while the database is away', () => {
  it('every request that needs it is answered 503 with when to come back, and the next one after works again', async () => {
    for (const failing of FAILURES) {
      line.state.failing = failing
      for (const path of ['/api/board', '/api/session', '/q/anything', '/s/anything']) {
        const answer = await member.send('GET', path)
        expect(answer.status, `${failing} ${path}`).toBe(503)
        expect(answer.headers.get('content-type')).toBe('application/problem+json')
        expect(answer.headers.get('retry-after')).toBe('5')
        expect(answer.headers.get('x-content-type-options')).toBe('nosniff')
        expect(answer.text).not.toContain('connection lost')
      }
      line.state.failing = null
      expect((await member.send('GET', '/api/board')).status).toBe(200)
    }
  })

  it('a customer’s page says so in a page of its own', async () => {
    line.state.failing = 'ECONNREFUSED'
    const page = await member.send('GET', '/q/anything', { headers: { accept: 'text/html,application/xhtml+xml' } })
    line.state.failing = null
    expect([page.status, page.headers.get('content-type'), page.headers.get('retry-after')]).toEqual([503, 'text/html; charset=UTF-8', '5'])
    expect(page.text).toContain('try again shortly')
    expect(page.headers.get('refresh')).toBe('5')
    expect(page.text).toContain('<a href="/q/anything">Ask again now</a>')
    expect(page.headers.get('content-security-policy')).toContain("style-src 'self'")
  })

  it('the process stays alive, says that it is not ready, and serves its files', async () => {
    line.state.failing = 'ECONNREFUSED'
    expect((await member.send('GET', '/health/live')).body).toEqual({ status: 'live' })
    const ready = await member.send('GET', '/health/ready')
    expect([ready.status, ready.body]).toEqual([503, { status: 'no_database' }])
    expect((await member.send('GET', '/pages.css')).status).toBe(200)
    expect((await member.send('GET', '/')).status).toBe(200)
    line.state.failing = null
    expect((await member.send('GET', '/health/ready')).status).toBe(200)
  })

  it('a write that it broke off at any statement is stored whole or not at all, and can be sent again', async () => {
    const [heater, shop] = [await product(world.db), await store(world.db)]
    const manager = await world.signIn('manager')
    for (let statement = 0; statement < 12; statement += 1) {
      const body = sighting(heater.id, shop.id, { seenOn: today() })
      Object.assign(line.state, { failing: 'ECONNRESET', after: statement })
      const broken = await member.send('POST', '/api/sightings', { body })
      line.state.failing = null
      expect([201, 503]).toContain(broken.status)
      const again = await member.send('POST', '/api/sightings', { body })
      expect([200, 201]).toContain(again.status)
      expect(await world.db.selectFrom('sighting').select('id').where('id', '=', body.id).execute()).toHaveLength(1)

      const before = await world.db.selectFrom('product').select('id').execute()
      const csv = `name,powerW\nBroken ${statement} a,50\nBroken ${statement} b,60`
      Object.assign(line.state, { failing: 'ECONNRESET', after: statement })
      const sent = await sendFile(manager, csv, { kind: 'heater' })
      line.state.failing = null
      expect([201, 503]).toContain(sent.status)
      const worker = workIn(world)
      const queued = await world.db.selectFrom('job').select('id').where('ended_at', 'is', null).execute()
      for (const { id } of queued) expect((await ended(manager, id)).outcome).toMatchObject({ applied: true })
      await worker.stop()
      const after = await world.db.selectFrom('product').select('id').execute()
      expect(after.length - before.length, `statement ${statement}`).toBe(2 * queued.length)
      if (sent.status === 201) expect(queued).toHaveLength(1)
    }
  })
})

describe('before the database was ever reached', () => {
  it('everything that needs it says so, and the rest works', async () => {
    const { db } = world.deps
    world.rebuild({ db: null })
    const visitor = world.visitor()
    for (const path of ['/api/session', '/api/board', '/q/x', '/s/x', '/api/nothing'])
      expect((await visitor.send('GET', path)).status, path).toBe(503)
    expect((await visitor.send('GET', '/health/ready')).body).toEqual({ status: 'starting' })
    for (const path of ['/health/live', '/api/openapi.json', '/api/reference', '/', '/pages.css'])
      expect((await visitor.send('GET', path)).status, path).toBe(200)
    world.rebuild({ db })
  })
})
