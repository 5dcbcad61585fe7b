import type { Connection } from '../../db/connect.ts'
import { refill, RefillRefused, whyNotEmpty } from '../../db/refill.ts'
import { BackupRefused } from './backup-format.ts'
import { readRows, type BackupContents, type BackupSource } from './read-backup.ts'

/** Puts the key of links in its place, once the rows are in theirs. Errors: whatever keeps it from being written. */
export type PlaceLinkKey = (linkKey: string) => Promise<void>

/**
 * Puts a verified backup back into an empty install, all of it or nothing.
 *
 * Errors: BackupRefused with the reason, nothing having changed.
 */
export async function restoreBackup(
  { db }: Connection,
  source: BackupSource,
  { head }: Pick<BackupContents, 'head'>,
  placeKey: PlaceLinkKey,
): Promise<void> {
  const occupied = await whyNotEmpty(db)
  if (occupied !== null)
    throw new BackupRefused(
      'not_empty',
      `This install is not empty: ${occupied}. A backup is put back into an empty one only: name another folder with DATA_DIR, or another database with DATABASE_URL.`,
    )
  const { migrations, sequences, tables, linkKey } = head
  try {
    await db.transaction().execute(async (trx) => {
      await refill(trx, { migrations, sequences, tables, chunks: readRows(source) })
      await placeKey(linkKey)
    })
  } catch (error) {
    if (error instanceof RefillRefused) throw new BackupRefused('not_its_tables', error.message, { cause: error.cause })
    throw error
  }
}
