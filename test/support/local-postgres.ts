import { execFile, spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { existsSync, readdirSync } from 'node:fs'
import { chown, mkdtemp, rm } from 'node:fs/promises'
import { createServer } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'

const run = promisify(execFile)

export interface RunningServer {
  /** Of its maintenance database, with the right to create others. */
  url: string
  stop(): Promise<void>
}

export interface LocalServer extends RunningServer {
  pid(): number
  /** Ends the server as an operator or a crash does; `start` brings it back on the same port. */
  halt(signal: NodeJS.Signals): Promise<void>
  start(): Promise<void>
}

/** Folders in which packages put a PostgreSQL's programs, newest first. */
export function postgresBinaries(): string | undefined {
  const roots = ['/usr/lib/postgresql', '/usr/local/lib/postgresql', '/opt/homebrew/opt', '/usr/local/opt']
  const folders = roots.filter(existsSync).flatMap((root) =>
    readdirSync(root)
      .toSorted((a, b) => b.localeCompare(a, 'en', { numeric: true }))
      .map((version) => join(root, version, 'bin')),
  )
  const onPath = (process.env['PATH'] ?? '').split(':')
  return [...folders, ...onPath].find((folder) => existsSync(join(folder, 'initdb')) && existsSync(join(folder, 'postgres')))
}

/** PostgreSQL refuses to run as root: then the account that its package made. */
export async function unprivileged(): Promise<{ uid?: number; gid?: number } | undefined> {
  if (process.getuid?.() !== 0) return {}
  for (const name of ['postgres', 'nobody']) {
    try {
      const [uid, gid] = await Promise.all(['-u', '-g'].map(async (flag) => Number((await run('id', [flag, name])).stdout)))
      return { uid, gid }
    } catch {
      continue
    }
  }
  return undefined
}

/** A server of one's own in a temporary folder, on a free port of the loopback, gone with `stop`. */
export async function startLocalPostgres(bin: string, account: { uid?: number; gid?: number }): Promise<LocalServer> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-postgres-'))
  if (account.uid !== undefined && account.gid !== undefined) await chown(folder, account.uid, account.gid)
  const data = join(folder, 'data')
  const options = { ...account, cwd: folder, env: { PATH: process.env['PATH'], LC_ALL: 'C' } }
  await run(join(bin, 'initdb'), ['-D', data, '-U', 'driploop', '-A', 'trust', '-E', 'UTF8', '--locale=C', '--no-sync'], options)
  const port = await freePort()
  // Nothing here outlives the run, so that nothing needs to reach the disk.
  const settings = [
    'fsync=off',
    'synchronous_commit=off',
    'full_page_writes=off',
    `unix_socket_directories=${folder}`,
    'max_connections=100',
  ]
  const launch = (): ChildProcess =>
    spawn(join(bin, 'postgres'), ['-D', data, '-h', '127.0.0.1', '-p', String(port), ...settings.flatMap((setting) => ['-c', setting])], {
      ...options,
      stdio: ['ignore', 'ignore', 'pipe'],
    })
  let server = launch()
  const endWithUs = (): void => void server.kill('SIGQUIT')
  process.once('exit', endWithUs)
  await ready(server)
  const halt = async (signal: NodeJS.Signals): Promise<void> => {
    if (server.exitCode !== null || server.signalCode !== null) return
    const ended = once(server, 'exit')
    server.kill(signal)
    await ended
  }
  return {
    url: `postgres://driploop@127.0.0.1:${port}/postgres`,
    pid: () => server.pid ?? 0,
    halt,
    start: async () => {
      server = launch()
      await ready(server)
    },
    stop: async () => {
      process.removeListener('exit', endWithUs)
      await halt('SIGINT')
      await rm(folder, { recursive: true, force: true })
    },
  }
}

async function ready(server: ChildProcess): Promise<void> {
  let log = ''
  for await (const chunk of server.stderr ?? []) {
    log += String(chunk)
    if (!log.includes('ready to accept connections')) continue
    return
  }
  throw new Error(`PostgreSQL did not start:\n${log}`)
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1')
  await once(probe, 'listening')
  const address = probe.address()
  probe.close()
  await once(probe, 'close')
  if (address === null || typeof address === 'string') throw new Error('No free port.')
  return address.port
}
