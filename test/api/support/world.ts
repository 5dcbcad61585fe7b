import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pino } from 'pino'
import type { Hono } from 'hono'
import type { Role } from '../../../core/people/roles.ts'
import { createApp } from '../../../api/app.ts'
import { hashPassword } from '../../../api/auth/password-hash.ts'
import { createBackupDesk } from '../../../api/backups/backup-desk.ts'
import { readConfig } from '../../../api/config.ts'
import type { Deps, Env } from '../../../api/context.ts'
import { createInstall } from '../../../db/install.ts'
import { createPerson } from '../../../db/people.ts'
import { testDatabase, type TestDatabase } from '../../support/database.ts'
import { granted, install, unique } from '../../support/rows.ts'

export const PASSWORD = 'kelp lantern orbit 52'
export const ORIGIN = 'http://localhost:8080'

export interface Answer<Body = Record<string, unknown>> {
  status: number
  headers: Headers
  body: Body
  text: string
}
export interface Sent {
  body?: unknown
  headers?: Record<string, string>
}
/** One browser: keeps its cookie and says that its requests come from this site. */
export interface Browser {
  personId: string
  signInName: string
  cookie: () => string
  // A test names the shape that it then looks at.
  send: <Body = Record<string, unknown>>(method: string, path: string, sent?: Sent) => Promise<Answer<Body>>
}

export interface World {
  test: TestDatabase
  db: TestDatabase['db']
  deps: Deps
  app: Hono<Env>
  /** Puts other parts in place; every browser uses the new application from then on. */
  rebuild: (parts: Partial<Deps>) => void
  logged: string[]
  visitor: (address?: string) => Browser
  signIn: (role: Role) => Promise<Browser>
  close: () => Promise<void>
}

let passwordHash: Promise<string> | undefined
export const testPasswordHash = (): Promise<string> => (passwordHash ??= hashPassword(PASSWORD))

function mergeCookie(jar: Map<string, string>, headers: Headers): void {
  for (const line of headers.getSetCookie()) {
    const [pair = ''] = line.split(';')
    const [name = '', value = ''] = pair.split('=')
    if (value === '' || /max-age=0/i.test(line)) jar.delete(name)
    else jar.set(name, value)
  }
}

export function browser(world: Pick<World, 'app'>, address = '192.0.2.1'): Browser {
  const jar = new Map<string, string>()
  const cookie = (): string => [...jar].map(([name, value]) => `${name}=${value}`).join('; ')
  return {
    personId: '',
    signInName: '',
    cookie,
    async send(method, path, { body, headers = {} } = {}) {
      const json: Record<string, string> = body === undefined || typeof body === 'string' ? {} : { 'content-type': 'application/json' }
      const response = await world.app.request(
        path.startsWith('http') ? path : ORIGIN + path,
        {
          method,
          headers: { 'sec-fetch-site': 'same-origin', ...(jar.size > 0 ? { cookie: cookie() } : {}), ...json, ...headers },
          ...(body === undefined ? {} : { body: typeof body === 'string' ? body : JSON.stringify(body) }),
        },
        { incoming: { socket: { remoteAddress: address } } },
      )
      mergeCookie(jar, response.headers)
      const text = await response.text()
      const isJson = response.headers.get('content-type')?.includes('json') === true
      return { status: response.status, headers: response.headers, text, body: isJson && text !== '' ? JSON.parse(text) : {} }
    },
  }
}

/** A whole service on a database of its own, with an install in it and nobody yet. */
export async function createWorld(parts: Partial<Deps> = {}): Promise<World> {
  const test = await testDatabase()
  granted(await createInstall(test.db, install))
  const dataDir = await mkdtemp(join(tmpdir(), 'driploop-world-'))
  const logged: string[] = []
  const config = { ...readConfig({ DATA_DIR: dataDir }), backupDir: join(dataDir, 'backups') }
  const linkKey = new TextEncoder().encode('a key that only this test knows, long enough')
  const deps: Deps = {
    db: test.db,
    engine: test.connection.engine,
    clock: () => Date.now(),
    config,
    backups: createBackupDesk({ connection: test.connection, config, linkKey, clock: () => Date.now() }),
    pdf: async () => new TextEncoder().encode('%PDF-1.7'),
    linkKey,
    log: pino({ level: 'trace', base: null }, { write: (line: string) => void logged.push(line) }),
    ...parts,
  }
  const world: World = {
    test,
    db: test.db,
    deps,
    app: createApp(deps),
    logged,
    rebuild(changed) {
      Object.assign(deps, changed)
      world.app = createApp(deps)
    },
    visitor: (address) => browser(world, address),
    async signIn(role) {
      const name = unique('Person')
      const signInName = name.toLowerCase().replace(' ', '.')
      const person = granted(
        await createPerson(test.db, { name, signInName, role, passwordHash: await testPasswordHash(), invitedBy: null }),
      )
      const one = browser(world)
      const answer = await one.send('POST', '/api/session', { body: { signInName, password: PASSWORD } })
      if (answer.status !== 200) throw new Error(`sign-in answered ${answer.status}: ${answer.text}`)
      return { ...one, personId: person.id, signInName }
    },
    close: async () => {
      await test.close()
      await rm(dataDir, { recursive: true, force: true })
    },
  }
  return world
}
