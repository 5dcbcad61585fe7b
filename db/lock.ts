import { randomUUID } from 'node:crypto'
import { link, mkdir, readFile, rename, unlink, writeFile } from 'node:fs/promises'
import { join } from 'node:path'

/** Two processes on one embedded folder lose each other's rows without a word, so that the second one is refused. */
export class FolderInUse extends Error {
  readonly folder: string
  readonly pid: number
  constructor(folder: string, pid: number) {
    super(`The data folder ${folder} is in use by process ${pid}. Stop that one first, or give this one another folder.`)
    this.name = 'FolderInUse'
    this.folder = folder
    this.pid = pid
  }
}

const LOCK_NAME = 'in-use-by.pid'
/** Each failed try has removed one stale lock; three in a row mean that others start here at the same moment. */
const TRIES = 3

/** A pid is reused after a restart of the machine, so that the start time stands beside it where the system tells it. */
async function startOf(pid: number): Promise<string> {
  try {
    const stat = await readFile(`/proc/${pid}/stat`, 'utf8')
    const bootId = await readFile('/proc/sys/kernel/random/boot_id', 'utf8')
    // Field 22, counted after the name in brackets, which may itself hold spaces.
    return `${bootId.trim()}:${stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? ''}`
  } catch {
    return 'unknown'
  }
}

async function isHolding(pid: number, start: string): Promise<boolean> {
  try {
    process.kill(pid, 0)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false
  }
  const now = await startOf(pid)
  return start === 'unknown' || now === 'unknown' || now === start
}

/**
 * Marks a folder as this process's own and returns what gives it back. A lock whose process is gone is taken over.
 *
 * Errors: `FolderInUse` names the folder and the process that holds it.
 */
export async function takeFolderLock(folder: string): Promise<() => Promise<void>> {
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const path = join(folder, LOCK_NAME)
  const draft = join(folder, `.${LOCK_NAME}-${randomUUID()}`)
  const mine = `${process.pid} ${await startOf(process.pid)} ${randomUUID()}\n`
  await writeFile(draft, mine, { mode: 0o600 })
  try {
    for (let attempt = 1; attempt <= TRIES; attempt++) {
      if (await linkUnlessTaken(draft, path)) return () => release(path, mine)
      const found = await readFile(path, 'utf8').catch(() => '')
      const holder = holderIn(found)
      if (holder !== undefined && (await isHolding(holder.pid, holder.start))) throw new FolderInUse(folder, holder.pid)
      await removeStale(path, found)
    }
    throw new FolderInUse(folder, holderIn(await readFile(path, 'utf8').catch(() => ''))?.pid ?? 0)
  } finally {
    await unlink(draft)
  }
}

/** A hard link appears whole or not at all: nobody ever reads a half-written lock. */
async function linkUnlessTaken(draft: string, path: string): Promise<boolean> {
  try {
    await link(draft, path)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
}

/** Moves the lock aside before it is deleted: if another process replaced the stale one meanwhile, its own is put back. */
async function removeStale(path: string, stale: string): Promise<void> {
  const aside = `${path}-${randomUUID()}`
  try {
    await rename(path, aside)
  } catch {
    return
  }
  if ((await readFile(aside, 'utf8')) !== stale) await linkUnlessTaken(aside, path)
  await unlink(aside)
}

function holderIn(text: string): { pid: number; start: string } | undefined {
  const [pid, start] = text.trim().split(' ')
  return pid !== undefined && /^\d+$/.test(pid) ? { pid: Number(pid), start: start ?? 'unknown' } : undefined
}

async function release(path: string, mine: string): Promise<void> {
  if ((await readFile(path, 'utf8').catch(() => '')) === mine) await unlink(path)
}
