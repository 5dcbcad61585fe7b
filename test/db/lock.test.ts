import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, readdir, readFile, rm, stat, utimes, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { connect } from '../../db/connect.ts'
import { lockChain } from '../../db/lock-chain.ts'
import { FolderInUse, takeFolderLock } from '../../db/lock.ts'

let folder: string
let holders: ChildProcess[] = []
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'driploop-lock-'))
})
afterEach(async () => {
  for (const holder of holders) if (holder.exitCode === null) holder.kill('SIGKILL')
  holders = []
  await rm(folder, { recursive: true, force: true })
})

const script = new URL('../support/holder.ts', import.meta.url).pathname
function hold(): ChildProcess {
  const holder = spawn(process.execPath, [script, folder], { stdio: ['pipe', 'pipe', 'pipe'] })
  holders.push(holder)
  return holder
}
async function held(): Promise<ChildProcess> {
  const holder = hold()
  await once(holder.stdout ?? holder, 'data')
  return holder
}

it('a second process is refused in a sentence that names the folder and the first', async () => {
  const first = await held()
  const refusal = await connect({ dataDir: folder }).catch((error: unknown) => error)
  expect(refusal).toBeInstanceOf(FolderInUse)
  expect((refusal as FolderInUse).message).toBe(
    `The data folder ${folder} is in use by process ${first.pid}. Stop that one first, or give this one another folder.`,
  )
  const second = hold()
  let words = ''
  second.stderr?.on('data', (chunk) => (words += String(chunk)))
  expect((await once(second, 'exit'))[0]).not.toBe(0)
  expect(words).toContain(`in use by process ${first.pid}`)
})

it('the same process is refused as well', async () => {
  const release = await takeFolderLock(folder)
  await expect(takeFolderLock(folder)).rejects.toThrow(`in use by process ${process.pid}`)
  await release()
  await (
    await takeFolderLock(folder)
  )()
})

it('a folder given back is free, and nothing of the lock is left in it', async () => {
  const first = await held()
  first.stdin?.write('release\n')
  await once(first, 'exit')
  expect(await readdir(folder)).toEqual([])
  await (
    await takeFolderLock(folder)
  )()
})

it('the lock of a killed process is taken over', async () => {
  const first = await held()
  first.kill('SIGKILL')
  await once(first, 'exit')
  expect(await readdir(folder)).toEqual(['in-use-by.pid'])
  const release = await takeFolderLock(folder)
  expect(await readFile(join(folder, 'in-use-by.pid'), 'utf8')).toMatch(new RegExp(`^${process.pid} `))
  await release()
})

/** A lock as a process of another container or machine leaves it, last touched so long ago. */
async function elsewhere(pid: number, agoMs: number): Promise<void> {
  const path = join(folder, 'in-use-by.pid')
  await writeFile(path, `${pid} 1 another-host/another-boot/pid:[1] x\n`)
  const at = new Date(Date.now() - agoMs)
  await utimes(path, at, at)
}
const timeOf = async (work: () => Promise<unknown>): Promise<number> => {
  const started = performance.now()
  await work()
  return performance.now() - started
}

it('a living process that only has the number of the dead holder does not count', async () => {
  const release = await takeFolderLock(folder)
  const path = join(folder, 'in-use-by.pid')
  const own = await readFile(path, 'utf8')
  await release()
  const [pid, start, place] = own.split(' ')
  await writeFile(path, `${pid} ${Number(start) - 1} ${place} x\n`)
  expect(await timeOf(async () => (await takeFolderLock(folder))().then(() => undefined))).toBeLessThan(10_000)
})

it('the lock of a killed process of this machine is taken over at once, however fresh its heartbeat', async () => {
  const first = await held()
  first.kill('SIGKILL')
  await once(first, 'exit')
  let release = async (): Promise<void> => undefined
  expect(await timeOf(async () => (release = await takeFolderLock(folder)))).toBeLessThan(10_000)
  await release()
})

it('a holder in another container counts while its heartbeat goes on, though its number means nothing here', async () => {
  await elsewhere(999_999_999, 0)
  const beats = setInterval(() => void utimes(join(folder, 'in-use-by.pid'), new Date(), new Date()), 1_000)
  const refusal = await takeFolderLock(folder).catch((error: unknown) => error)
  clearInterval(beats)
  expect(refusal).toBeInstanceOf(FolderInUse)
  expect(await readFile(join(folder, 'in-use-by.pid'), 'utf8')).toContain('another-host')
})

it('a holder in another container that went silent is waited for, and then taken over, even where its number is alive here', async () => {
  await elsewhere(process.pid, 12_000)
  let release = async (): Promise<void> => undefined
  const tookMs = await timeOf(async () => (release = await takeFolderLock(folder)))
  expect(tookMs).toBeGreaterThan(2_000)
  expect(tookMs).toBeLessThan(10_000)
  await release()
})

it('keeps its heartbeat going while it holds', async () => {
  const release = await takeFolderLock(folder)
  const path = join(folder, 'in-use-by.pid')
  const old = new Date(Date.now() - 60_000)
  await utimes(path, old, old)
  await wait(5_500)
  expect(Date.now() - (await stat(path)).mtimeMs).toBeLessThan(6_000)
  await release()
})

it('a holder that stood still and lost its folder ends itself in words', async () => {
  const first = await held()
  let words = ''
  first.stderr?.on('data', (chunk) => (words += String(chunk)))
  await elsewhere(4711, 0)
  const [code] = await once(first, 'exit')
  expect(code).not.toBe(0)
  expect(words).toContain('in use by process 4711')
})

it('an unreadable lock is taken over', async () => {
  await writeFile(join(folder, 'in-use-by.pid'), '')
  await (
    await takeFolderLock(folder)
  )()
})

it('of five processes that start over a stale lock at one moment, one gets the folder', async () => {
  await elsewhere(999_999_999, 60_000)
  const outcomes = await Promise.all(
    [1, 2, 3, 4, 5].map(async () => {
      const holder = hold()
      return Promise.race([once(holder.stdout ?? holder, 'data').then(() => 'held'), once(holder, 'exit').then(() => 'refused')])
    }),
  )
  expect(outcomes.filter((outcome) => outcome === 'held')).toHaveLength(1)
})

it('of many that find one stale lock, exactly one gets the folder, round after round', async () => {
  for (let round = 0; round < 40; round++) {
    await elsewhere(999_999_999, 60_000)
    const outcomes = await Promise.allSettled(Array.from({ length: 8 }, () => takeFolderLock(folder)))
    const got = outcomes.filter((outcome) => outcome.status === 'fulfilled')
    expect(got).toHaveLength(1)
    expect(await readdir(folder)).toEqual(['in-use-by.pid'])
    await got[0]?.value()
  }
})

it('a process that died while it took a lock over is itself followed', async () => {
  const first = await held()
  const path = join(folder, 'in-use-by.pid')
  const follower = await readFile(path, 'utf8')
  first.kill('SIGKILL')
  await once(first, 'exit')
  await rm(path)
  await elsewhere(999_999_999, 60_000)
  const [stale] = await lockChain(path)
  await writeFile(`${path}-after-${stale?.key}`, follower)
  const release = await takeFolderLock(folder)
  expect(await readFile(path, 'utf8')).toMatch(new RegExp(`^${process.pid} `))
  expect(await readdir(folder)).toEqual(['in-use-by.pid'])
  await release()
})
