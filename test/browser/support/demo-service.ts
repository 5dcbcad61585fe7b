import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { hashPassword } from '../../../api/auth/password-hash.ts'
import { drawDemoPictures } from '../../../api/demo/demo-pictures.ts'
import { civilDateAt, type CivilDate } from '../../../core/dates.ts'
import type { Role } from '../../../core/people/roles.ts'
import { connect } from '../../../db/connect.ts'
import { CLUB } from '../../../db/demo/club.ts'
import { DEMO_SEED, seedDemo, type SeededDemo } from '../../../db/demo/seed-demo.ts'
import { migrate } from '../../../db/migrate.ts'

const ROOT = resolve(import.meta.dirname, '../../..')
const PASSWORDS: Record<Role, string> = {
  member: 'drift lantern orbit 52',
  advisor: 'gravel harbor signal 71',
  manager: 'willow ferry copper 38',
}
/** First opening of the embedded database on a slow machine takes up to nine seconds; the service itself a second. */
const START_MS = 60_000
const STOP_MS = 10_000

export interface DemoService {
  /** As a reader on this computer opens it: "http://localhost:49152". */
  origin: string
  /** The day at the club. */
  today: CivilDate
  demo: SeededDemo
  signIn(role: Role): { signInName: string; password: string }
  stop(): Promise<void>
}

/** The real server in a process of its own, on a fresh embedded data folder with the demo scenario, at a free port. */
export async function startDemoService(): Promise<DemoService> {
  if (!existsSync(join(ROOT, 'web/dist/index.html')))
    throw new Error('web/dist is missing: `npm run build` first, or run the tests with `npm test`')
  const folder = await mkdtemp(join(tmpdir(), 'driploop-demo-'))
  const today = civilDateAt(Date.now(), CLUB.timeZone)
  const demo = await seed(folder, today)
  const server = spawn(process.execPath, ['api/server.ts'], {
    cwd: ROOT,
    env: { PATH: process.env['PATH'], DATA_DIR: folder, PORT: '0', HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const stop = async (): Promise<void> => {
    await ended(server)
    await rm(folder, { recursive: true, force: true })
  }
  try {
    const origin = await addressOf(server)
    await answering(origin)
    const signIn = (role: Role) => {
      const found = demo.signIns.find((one) => one.role === role)
      if (!found) throw new Error(`The scenario has no ${role}`)
      return found
    }
    return { origin, today, demo, signIn, stop }
  } catch (error) {
    await stop()
    throw error
  }
}

async function seed(folder: string, today: CivilDate): Promise<SeededDemo> {
  const connection = await connect({ dataDir: folder })
  try {
    await migrate(connection.db)
    const seeded = await seedDemo(connection.db, { seed: DEMO_SEED, today, passwords: PASSWORDS, hash: hashPassword, now: new Date() })
    await drawDemoPictures(connection.db)
    return seeded
  } finally {
    await connection.checkpoint()
    await connection.close()
  }
}

/** The address the server prints; what it wrote, where it ends without one. */
function addressOf(server: ChildProcess): Promise<string> {
  return new Promise((found, failed) => {
    let written = ''
    const give = (): void => failed(new Error(`The server did not say its address:\n${written}`))
    const late = setTimeout(give, START_MS)
    const read = (chunk: Buffer): void => {
      written += chunk.toString()
      const address = /answers at (http:\/\/[^\s/]+:\d+)/.exec(written)?.[1]
      if (address === undefined) return
      clearTimeout(late)
      found(address)
    }
    server.stdout?.on('data', read)
    server.stderr?.on('data', read)
    server.once('exit', give)
  })
}

/** Until the database is there it answers 503. */
async function answering(origin: string): Promise<void> {
  const until = Date.now() + START_MS
  while (Date.now() < until) {
    const ready = await fetch(`${origin}/health/ready`).then((answer) => answer.ok, () => false) // prettier-ignore
    if (ready) return
    await wait(100)
  }
  throw new Error(`${origin} is not ready after ${START_MS} ms`)
}

async function ended(server: ChildProcess): Promise<void> {
  if (server.exitCode !== null || server.signalCode !== null) return
  const exit = new Promise<void>((done) => server.once('exit', () => done()))
  server.kill('SIGTERM')
  const late = setTimeout(() => server.kill('SIGKILL'), STOP_MS)
  await exit
  clearTimeout(late)
}
