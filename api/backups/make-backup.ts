import { randomUUID } from 'node:crypto'
import { link, mkdir, open, rename, rm, stat } from 'node:fs/promises'
import { dirname, join } from 'node:path'
import { BackupRefused, type BackupHead } from './backup-format.ts'
import { verifyBackup } from './read-backup.ts'
import { openNewFile, writeBackup, type BackupOrder, type OpenFile } from './write-backup.ts'

/** A backup that was written, read again from the disk and found whole. */
export interface MadeBackup {
  path: string
  head: BackupHead
  content: string
  bytes: number
}

const NO_ROOM = new Set(['ENOSPC', 'EDQUOT', 'EFBIG'])
const NOT_WRITABLE = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOTDIR', 'ENOENT', 'EISDIR', 'EIO', 'ENAMETOOLONG'])

/** What the system said of a file that could not be written, in words; anything else as it came. */
function writeFault(error: unknown, folder: string): unknown {
  const { code } = error as NodeJS.ErrnoException
  if (typeof code === 'string' && NO_ROOM.has(code))
    return new BackupRefused(
      'no_room',
      `There is no room for the backup in ${folder}. Nothing of it was kept. Make room there, or choose another folder with BACKUP_DIR.`,
      { cause: error },
    )
  if (typeof code === 'string' && NOT_WRITABLE.has(code))
    return new BackupRefused(
      'not_writable',
      `The backup cannot be written to ${folder} (${code}). Choose a folder that this account owns, with BACKUP_DIR or as the name of the file.`,
      {
        cause: error,
      },
    )
  return error
}

/** On the disk means: the folder's own entry too. Not every system opens a folder. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder).catch(() => undefined)
  await handle?.sync().catch(() => undefined)
  await handle?.close()
}

/** Gives a verified file its name. An older file of that name stays: then it is refused. */
async function placeFile(aside: string, path: string): Promise<void> {
  try {
    await link(aside, path)
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException
    if (code === 'EEXIST')
      throw new BackupRefused('not_writable', `There is already a file ${path}. Give the backup another name.`, { cause: error })
    // A file system without links.
    await rename(aside, path)
    return
  }
  await rm(aside)
}

/**
 * Makes a backup: written beside its place under another name, read again and verified, then put in its place. Whatever goes wrong, no part
 * of a file is left.
 *
 * Errors: BackupRefused where the disk is full, the folder cannot be written to or what was written is not what was read; the database's own.
 */
export async function makeBackup(path: string, order: BackupOrder, openFile?: OpenFile): Promise<MadeBackup>
/** `unless`: where the rows are those of this hash, nothing is kept and null returned. */
export async function makeBackup(
  path: string,
  order: BackupOrder & { unless: string | null },
  openFile?: OpenFile,
): Promise<MadeBackup | null>
export async function makeBackup(
  path: string,
  order: BackupOrder & { unless?: string | null },
  openFile: OpenFile = openNewFile,
): Promise<MadeBackup | null> {
  const folder = dirname(path)
  const aside = join(folder, `.${randomUUID()}.part`)
  try {
    await mkdir(folder, { recursive: true, mode: 0o700 })
    const written = await writeBackup(aside, order, openFile)
    if (order.unless === written.content) return null
    const read = await verifyBackup({ path: aside, passphrase: order.passphrase })
    if (read.content !== written.content)
      throw new BackupRefused('damaged', 'The backup was read again and is not what was written. The disk may be failing.')
    const { size } = await stat(aside)
    await placeFile(aside, path)
    await syncFolder(folder)
    return { path, head: read.head, content: read.content, bytes: size }
  } catch (error) {
    throw writeFault(error, folder)
  } finally {
    await rm(aside, { force: true }).catch(() => undefined)
  }
}
