import { spawn, type ChildProcess } from 'node:child_process'
import { createServer } from 'node:net'
import { fileURLToPath } from 'node:url'
import { setTimeout as wait } from 'node:timers/promises'

const SERVER = fileURLToPath(new URL('../../../api/server.ts', import.meta.url))

export interface ServerProcess {
  child: ChildProcess
  origin: string
  output: () => string
  /** Resolves with the exit code, or the signal's name. */
  exited: Promise<number | string>
  fetch: (path: string, init?: RequestInit) => Promise<Response>
}

/** A port that nobody listened on a moment ago. */
export function freePort(): Promise<number> {
  return new Promise((resolve) => {
    const probe = createServer().listen(0, '127.0.0.1', () => {
      const address = probe.address()
      probe.close(() => resolve(typeof address === 'object' && address !== null ? address.port : 0))
    })
  })
}

/** The real server as its operator starts it, with nothing of this process's environment but the path. */
export function startServer(env: Record<string, string>): ServerProcess {
  let said = ''
  const child = spawn(process.execPath, [SERVER], { env: { PATH: process.env['PATH'] ?? '', ...env }, stdio: ['ignore', 'pipe', 'pipe'] })
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (chunk: Buffer) => (said += chunk.toString()))
  const origin = `http://localhost:${env['PORT'] ?? '8080'}`
  return {
    child,
    origin,
    output: () => said,
    exited: new Promise((resolve) => child.once('exit', (code, signal) => resolve(code ?? signal ?? 'unknown'))),
    fetch: (path, init = {}) => fetch(origin + path, { ...init, headers: { 'sec-fetch-site': 'same-origin', ...init.headers } }),
  }
}

/** Asks until the answer is as wished. Errors: throws with the process's output after `withinMs`. */
export async function until(server: ServerProcess, what: string, ask: () => Promise<boolean>, withinMs = 60_000): Promise<void> {
  const end = Date.now() + withinMs
  while (Date.now() < end) {
    if (await ask().catch(() => false)) return
    if (server.child.exitCode !== null) break
    await wait(100)
  }
  throw new Error(`${what} did not come about. The server said: ${server.output()}`)
}

export const ready = (server: ServerProcess): Promise<void> =>
  until(server, 'ready', async () => (await server.fetch('/health/ready')).status === 200)

/** Token of the link that the first start prints. */
export const printedToken = (server: ServerProcess): string => /\/join\/([\w-]{43})/.exec(server.output())?.[1] ?? ''
