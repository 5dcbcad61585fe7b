import { randomBytes } from 'node:crypto'
import { link, mkdir, open, readFile, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import type { Config } from '../config.ts'
import { ConfigError } from '../config-error.ts'

const KEY_BYTES = 32

/** The file's text; empty where there is none, or where a start was killed before it had written one. */
async function textAt(path: string): Promise<string> {
  try {
    return (await readFile(path, 'utf8')).trim()
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return ''
    throw error
  }
}

/** A new key under a name of its own, on the disk before it is given its place: a start that is killed leaves a whole key or none. */
async function writeAside(path: string): Promise<void> {
  const file = await open(path, 'w', 0o600)
  try {
    await file.writeFile(randomBytes(KEY_BYTES).toString('base64url'))
    await file.sync()
  } finally {
    await file.close()
  }
}

/** Puts a key where none is. Of two starts at once the first wins and both read the same. */
async function placeKey(path: string): Promise<void> {
  const aside = `${path}.${randomBytes(6).toString('hex')}.new`
  await writeAside(aside)
  try {
    await link(aside, path)
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    // There is one now; it stays, unless it is empty. A file system without links knows no better than putting it in its place.
    if (code !== 'EEXIST' || (await textAt(path)) === '') await rename(aside, path)
  } finally {
    await rm(aside, { force: true })
  }
}

type KeyPlace = Pick<Config, 'linkKey' | 'dataDir'>

/** The secret of quote and setup links where there is one already; undefined where there is none. Nothing is made. */
export async function findLinkKey({ linkKey, dataDir }: KeyPlace): Promise<Uint8Array | undefined> {
  if (linkKey !== null) return new TextEncoder().encode(linkKey)
  const path = join(dataDir, 'link-key')
  const text = await textAt(path)
  if (text === '') return undefined
  if (text.length < KEY_BYTES)
    throw new Error(`The file ${path} is damaged. Put the key back from a copy; without it every printed link stops working.`)
  return new TextEncoder().encode(text)
}

/** The secret that the service signs with. Errors: ConfigError where there is none: with another one every printed link would be dead. */
export async function getLinkKey(place: KeyPlace): Promise<Uint8Array> {
  const key = await findLinkKey(place)
  if (key !== undefined) return key
  throw new ConfigError(
    `The key of printed links is not in ${place.dataDir}, and a backup without it would leave every printed link dead. Set LINK_KEY or the service's DATA_DIR to what the service itself is started with.`,
  )
}

/** The secret of quote and setup links: LINK_KEY, else a file in the data folder, made at the first start for its owner's eyes only. */
export async function readLinkKey(place: KeyPlace): Promise<Uint8Array> {
  const found = await findLinkKey(place)
  if (found !== undefined) return found
  await mkdir(place.dataDir, { recursive: true, mode: 0o700 })
  await placeKey(join(place.dataDir, 'link-key'))
  return getLinkKey(place)
}
