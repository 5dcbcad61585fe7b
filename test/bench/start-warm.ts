import { spawn } from 'node:child_process'
import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { freePort, ready, startServer } from '../api/support/process.ts'
import { median, type Measurement } from './measurement.ts'

const ROUNDS = 5
const BARE = "require('node:http').createServer((_, answer) => answer.end('ok')).listen(Number(process.argv[1]), '127.0.0.1')"

async function timeOfService(folder: string): Promise<number> {
  const port = await freePort()
  const started = performance.now()
  const server = startServer({ PORT: String(port), DATA_DIR: folder })
  await ready(server)
  const took = performance.now() - started
  server.child.kill('SIGTERM')
  await server.exited
  return took
}

async function timeOfBareNode(): Promise<number> {
  const port = await freePort()
  const started = performance.now()
  const child = spawn(process.execPath, ['-e', BARE, String(port)])
  while (!(await fetch(`http://127.0.0.1:${port}`).then(() => true, () => false))) await wait(10) // prettier-ignore
  const took = performance.now() - started
  child.kill('SIGKILL')
  return took
}

/** From the command to the first good answer on an embedded database that is already there, against Node answering with one word. */
export default async function startWarm(): Promise<Measurement[]> {
  const folder = await mkdtemp(join(tmpdir(), 'driploop-start-'))
  try {
    await timeOfService(folder)
    const values: number[] = []
    const baselines: number[] = []
    for (let round = 0; round < ROUNDS; round += 1) {
      baselines.push(await timeOfBareNode())
      values.push(await timeOfService(folder))
    }
    const [value, baseline] = [median(values), median(baselines)]
    return [{ name: 'start.warm', value, unit: 'ms', baseline, ratio: value / baseline }]
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}
