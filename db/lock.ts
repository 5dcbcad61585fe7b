import { randomUUID } from 'node:crypto'
import { mkdir, readFile, readlink, stat, unlink, utimes, writeFile } from 'node:fs/promises'
import { hostname } from 'node:os'
import { dirname, join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { linkUnlessTaken, lockChain, takeOver } from './lock-chain.ts'

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
/** Each failed try means that another process took or gave back the folder at this moment: so many in a row, and it is theirs. */
const TRIES = 5
/** Cheap enough to do all day, often enough that three may be missed before the lock counts as left behind. */
const HEARTBEAT_MS = 4_000
/** Who waits for a container that was killed waits this long; a holder whose loop stands still for longer would lose its folder. */
const SILENCE_MS = 15_000
const LOOK_MS = 500

/** A pid is reused after a restart of the machine, so that the start time stands beside it where the system tells it. */
async function startOf(pid: number): Promise<string> {
  try {
    const stat = await readFile(`/proc/${pid}/stat`, 'utf8')
    // Field 22, counted after the name in brackets, which may itself hold spaces.
    return stat.slice(stat.lastIndexOf(')') + 2).split(' ')[19] ?? 'unknown'
  } catch {
    return 'unknown'
  }
}

/** Where a pid means anything: this boot of this machine, and within it this container, which has processes of its own. */
async function placeOfPids(): Promise<string> {
  const bootId = await readFile('/proc/sys/kernel/random/boot_id', 'utf8').catch(() => 'unknown')
  const namespace = await readlink('/proc/self/ns/pid').catch(() => 'unknown')
  return [hostname(), bootId.trim(), namespace].join('/').replaceAll(/\s/g, '_')
}

interface Holder {
  pid: number
  start: string
  place: string
}

/** By the process itself where its number can be looked up, else by whether its heartbeat goes on: that takes seconds to tell. */
async function isHolding(path: string, holder: Holder): Promise<boolean> {
  if (holder.place !== (await placeOfPids())) return isBeating(path)
  try {
    process.kill(holder.pid, 0)
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return false
  }
  const now = await startOf(holder.pid)
  return holder.start === 'unknown' || now === 'unknown' || now === holder.start
}

/** Looks until the heartbeat moves or has been silent for long enough, by the file's own time and this clock. */
async function isBeating(path: string): Promise<boolean> {
  const beatAt = (): Promise<number | undefined> => stat(path).then((file) => file.mtimeMs, () => undefined) // prettier-ignore
  const first = await beatAt()
  if (first === undefined) return false
  const leftMs = Math.min(SILENCE_MS, SILENCE_MS - (Date.now() - first))
  for (const deadline = performance.now() + leftMs; performance.now() < deadline;) {
    await wait(LOOK_MS)
    if ((await beatAt()) !== first) return true
  }
  return false
}

/**
 * Marks a folder as this process's own and returns what gives it back. A lock whose process is gone is taken over: at once where its number
 * can be looked up, and after the silence of its heartbeat where it ran in another container or on another machine.
 *
 * Errors: `FolderInUse` names the folder and the process that holds it.
 */
export async function takeFolderLock(folder: string): Promise<() => Promise<void>> {
  await mkdir(folder, { recursive: true, mode: 0o700 })
  const path = join(folder, LOCK_NAME)
  const draft = join(folder, `.${LOCK_NAME}-${randomUUID()}`)
  const mine = `${process.pid} ${await startOf(process.pid)} ${await placeOfPids()} ${randomUUID()}\n`
  await writeFile(draft, mine, { mode: 0o600 })
  try {
    for (let attempt = 1; attempt <= TRIES; attempt++) {
      await touch(draft)
      const chain = await lockChain(path)
      const last = chain.at(-1)
      const holder = last && holderIn(last.text)
      if (last && holder && (await isHolding(last.path, holder))) throw new FolderInUse(folder, holder.pid)
      const taken = last ? await takeOver(path, chain, draft, mine) : await linkUnlessTaken(draft, path)
      if (taken) return hold(path, mine)
    }
    throw new FolderInUse(folder, holderIn((await lockChain(path)).at(-1)?.text ?? '')?.pid ?? 0)
  } finally {
    await unlink(draft).catch(() => undefined)
  }
}

const touch = (path: string): Promise<void> => utimes(path, new Date(), new Date())

/** Keeps the heartbeat going until the folder is given back. */
function hold(path: string, mine: string): () => Promise<void> {
  const heart = setInterval(() => void beat(path, mine), HEARTBEAT_MS).unref()
  return () => {
    clearInterval(heart)
    return release(path, mine)
  }
}

/**
 * Errors: throws, and so ends the process, where another one took the folder over while this one stood still: going on would lose the rows
 * of both.
 */
async function beat(path: string, mine: string): Promise<void> {
  const found = await readFile(path, 'utf8').catch(() => undefined)
  const holder = found === undefined || found === mine ? undefined : holderIn(found)
  if (holder !== undefined) throw new FolderInUse(dirname(path), holder.pid)
  // A folder that is not there at this moment says nothing; the next beat looks again.
  await touch(path).catch(() => undefined)
}

function holderIn(text: string): Holder | undefined {
  const [pid, start = 'unknown', place = ''] = text.trim().split(' ')
  return pid !== undefined && /^\d+$/.test(pid) ? { pid: Number(pid), start, place } : undefined
}

async function release(path: string, mine: string): Promise<void> {
  if ((await readFile(path, 'utf8').catch(() => '')) === mine) await unlink(path)
}
