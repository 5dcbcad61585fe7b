import { createHash } from 'node:crypto'
import { link, open, readdir, rename, unlink } from 'node:fs/promises'
import { basename, dirname, join } from 'node:path'

/**
 * How a lock that was left behind changes hands, so that of many processes that find it at one moment exactly one gets it. Nobody removes
 * it first: whoever is to follow it makes a file whose name is reckoned from the very lock that it follows, which succeeds once, and only
 * then puts its own in the lock's place in one step. A follower that died on the way is itself followed, by the same rule.
 */
export interface HeldLock {
  path: string
  text: string
  /** Of this very file, so that two locks of the same text are told apart. */
  key: string
}

/** The lock and those that follow it, the one that counts last; empty where the folder is free. */
export async function lockChain(path: string): Promise<HeldLock[]> {
  const chain: HeldLock[] = []
  for (let next = await readLock(path); next; next = await readLock(followerPath(path, next))) chain.push(next)
  return chain
}

/**
 * Puts the draft in the place of a lock whose holder is gone. False where another process was faster; then nothing was changed.
 *
 * The look after the follower's file was made is what makes it safe: its name is free again once the follower of before has tidied up, and
 * by then the lock at `path` is another.
 */
export async function takeOver(path: string, chain: HeldLock[], draft: string, mine: string): Promise<boolean> {
  const last = chain.at(-1)
  if (last === undefined) return false
  const claim = followerPath(path, last)
  if (!(await linkUnlessTaken(draft, claim))) return false
  const now = await lockChain(path)
  if (now.length !== chain.length + 1 || now.at(-1)?.text !== mine || now[0]?.key !== chain[0]?.key) {
    await unlink(claim).catch(() => undefined)
    return false
  }
  await rename(draft, path)
  await removeFollowers(path)
  return true
}

/** A hard link appears whole or not at all: nobody ever reads a half-written lock. */
export async function linkUnlessTaken(draft: string, path: string): Promise<boolean> {
  try {
    await link(draft, path)
    return true
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false
    throw error
  }
}

const followerPath = (path: string, lock: HeldLock): string => `${path}-after-${lock.key}`

/** Text and identity of one and the same file, whatever is put in its place meanwhile. */
async function readLock(path: string): Promise<HeldLock | undefined> {
  const file = await open(path).catch(() => undefined)
  if (file === undefined) return undefined
  try {
    const text = await file.readFile('utf8')
    const { ino } = await file.stat()
    return { path, text, key: createHash('sha256').update(`${ino} ${text}`).digest('hex').slice(0, 32) }
  } finally {
    await file.close()
  }
}

/** Those of locks that no longer stand at `path`, one that a killed process left included; none of them counts any more. */
async function removeFollowers(path: string): Promise<void> {
  const own = await readLock(path)
  const kept = own && basename(followerPath(path, own))
  for (const name of await readdir(dirname(path)))
    if (name.startsWith(`${basename(path)}-after-`) && name !== kept) await unlink(join(dirname(path), name)).catch(() => undefined)
}
