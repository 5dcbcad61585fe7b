import { join } from 'node:path'
import type { Connection } from '../../db/connect.ts'
import { isMigrated } from '../../db/migrate.ts'
import { executedMigrations } from '../../db/snapshot.ts'
import type { Config } from '../config.ts'
import { BackupRefused } from './backup-format.ts'
import { backupName, pruneBackups } from './kept-backups.ts'
import { makeBackup } from './make-backup.ts'

/**
 * A backup of a database that a newer release is about to change; none of an empty one, or of one that is up to date.
 *
 * Errors: BackupRefused where it cannot be made: without it nothing is changed.
 */
export async function backUpBeforeUpgrade(
  connection: Connection,
  { backupDir, backupPassphrase: passphrase }: Pick<Config, 'backupDir' | 'backupPassphrase'>,
  linkKey: Uint8Array,
): Promise<void> {
  if ((await executedMigrations(connection.db)).length === 0 || (await isMigrated(connection.db))) return
  const madeAt = new Date()
  const path = join(backupDir, backupName(madeAt, 'before-upgrade', passphrase !== null))
  try {
    await makeBackup(path, { connection, linkKey, madeAt, passphrase })
  } catch (error) {
    if (!(error instanceof BackupRefused)) throw error
    throw new BackupRefused(error.code, `The upgrade was not begun, since no backup could be made before it. ${error.message}`, {
      cause: error,
    })
  }
  await pruneBackups(backupDir, madeAt.getTime())
}
