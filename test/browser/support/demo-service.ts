import { spawn, type ChildProcess } from 'node:child_process'
import { existsSync } from 'node:fs'
import { cp, mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join, resolve } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { inject } from 'vitest'
import type { CivilDate } from '../../../core/dates.ts'
import type { Role } from '../../../core/people/roles.ts'
import type { SeededDemo } from '../../../db/demo/seed-demo.ts'
import { makeDemoFolder, todayAtClub, type DemoFolder } from './demo-folder.ts'

const ROOT = resolve(import.meta.dirname, '../../..')
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

/** The real server on a copy of the suite's demo folder. A run that goes on past the club's midnight makes a folder of the new day. */
export async function startDemoService(): Promise<DemoService> {
  const template = inject('demoTemplate')
  const path = await mkdtemp(join(tmpdir(), 'driploop-demo-'))
  if (template.today !== todayAtClub()) return serveDemo(await makeDemoFolder(path))
  await cp(template.path, path, { recursive: true })
  return serveDemo({ ...template, path })
}

/** The real server in a process of its own, on a demo folder that is its alone, at a free port. Its end takes the folder away. */
export async function serveDemo({ path, today, demo }: DemoFolder): Promise<DemoService> {
  if (!existsSync(join(ROOT, 'web/dist/index.html')))
    throw new Error('web/dist is missing: `npm run build` first, or run the tests with `npm test`')
  const server = spawn(process.execPath, ['api/server.ts'], {
    cwd: ROOT,
    env: { PATH: process.env['PATH'], DATA_DIR: path, PORT: '0', HOST: '127.0.0.1' },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const stop = async (): Promise<void> => {
    await ended(server)
    await rm(path, { recursive: true, force: true })
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
