import { randomBytes } from 'node:crypto'
import { mkdir, open, rename, rm } from 'node:fs/promises'
import { join } from 'node:path'
import { BackupRefused } from '../backups/backup-format.ts'
import type { Config } from '../config.ts'

/**
 * Puts the key of a backup in its place, so that the links which were printed open what they opened.
 *
 * Errors: BackupRefused where LINK_KEY names another key.
 */
export async function placeLinkKey({ linkKey, dataDir }: Pick<Config, 'linkKey' | 'dataDir'>, key: string): Promise<void> {
  if (linkKey === key) return
  if (linkKey !== null)
    throw new BackupRefused(
      'link_key_differs',
      'LINK_KEY is set and is not the key of this backup: links that were printed would open nothing. Leave LINK_KEY out and the key of the backup is put in DATA_DIR, or set it to the key of the install that the backup comes from.',
    )
  await mkdir(dataDir, { recursive: true, mode: 0o700 })
  const path = join(dataDir, 'link-key')
  const aside = `${path}.${randomBytes(6).toString('hex')}.new`
  const file = await open(aside, 'wx', 0o600)
  try {
    await file.writeFile(key)
    await file.sync()
    await file.close()
    await rename(aside, path)
  } catch (error) {
    await file.close().catch(() => undefined)
    await rm(aside, { force: true })
    throw error
  }
}
