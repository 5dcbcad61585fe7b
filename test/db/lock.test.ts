import { spawn, type ChildProcess } from 'node:child_process'
import { once } from 'node:events'
import { mkdtemp, readdir, readFile, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { connect } from '../../db/connect.ts'
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

it('a living process that only has the number of the dead holder does not count', async () => {
  await writeFile(join(folder, 'in-use-by.pid'), `${process.pid} another-boot:1 x\n`)
  await (
    await takeFolderLock(folder)
  )()
})

it('an unreadable lock is taken over', async () => {
  await writeFile(join(folder, 'in-use-by.pid'), '')
  await (
    await takeFolderLock(folder)
  )()
})

it('of five processes that start over a stale lock at one moment, one gets the folder', async () => {
  await writeFile(join(folder, 'in-use-by.pid'), '999999999 another-boot:1 x\n')
  const outcomes = await Promise.all(
    [1, 2, 3, 4, 5].map(async () => {
      const holder = hold()
      return Promise.race([once(holder.stdout ?? holder, 'data').then(() => 'held'), once(holder, 'exit').then(() => 'refused')])
    }),
  )
  expect(outcomes.filter((outcome) => outcome === 'held')).toHaveLength(1)
})
