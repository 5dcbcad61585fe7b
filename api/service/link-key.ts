import { randomBytes } from 'node:crypto'
import { mkdir, readFile, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type { Config } from '../config.ts'

const KEY_BYTES = 32

/** The secret of quote and setup links: LINK_KEY, else a file in the data folder, made at the first start for its owner's eyes only. */
export async function readLinkKey({ linkKey, dataDir }: Pick<Config, 'linkKey' | 'dataDir'>): Promise<Uint8Array> {
  if (linkKey !== null) return new TextEncoder().encode(linkKey)
  await mkdir(dataDir, { recursive: true, mode: 0o700 })
  const path = join(dataDir, 'link-key')
  try {
    await writeFile(path, randomBytes(KEY_BYTES).toString('base64url'), { mode: 0o600, flag: 'wx' })
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
  }
  const text = (await readFile(path, 'utf8')).trim()
  if (text.length < KEY_BYTES)
    throw new Error(`The file ${path} is damaged. Put the key back from a copy; without it every printed link stops working.`)
  return new TextEncoder().encode(text)
}
