import { mkdtemp, rm } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { makeBackup, type MadeBackup } from '../../../api/backups/make-backup.ts'
import type { BackupOrder } from '../../../api/backups/write-backup.ts'
import { verifyBackup } from '../../../api/backups/read-backup.ts'
import { restoreBackup } from '../../../api/backups/restore.ts'
import type { Connection } from '../../../db/connect.ts'
import { DEMO_SEED, seedDemo } from '../../../db/demo/seed-demo.ts'

export const LINK_KEY = 'a key that only this test knows, long enough'
const PASSWORD = 'kelp lantern orbit 52'

/** A whole club with sightings, quotes and setups. Passwords are not hashed for real: nobody signs in. */
export const fillClub = (db: Connection['db']) =>
  seedDemo(db, {
    seed: DEMO_SEED,
    today: '2026-11-20',
    passwords: { member: PASSWORD, advisor: PASSWORD, manager: PASSWORD },
    hash: async (password) => `hash of ${password}`,
    now: new Date('2026-11-20T10:00:00Z'),
  })

export async function scratchFolder(): Promise<{ path: string; in: (name: string) => string; remove: () => Promise<void> }> {
  const path = await mkdtemp(join(tmpdir(), 'driploop-backup-'))
  return { path, in: (name) => join(path, name), remove: () => rm(path, { recursive: true, force: true }) }
}

export const backUp = (connection: Connection, path: string, order: Partial<BackupOrder> = {}): Promise<MadeBackup> =>
  makeBackup(path, { connection, linkKey: new TextEncoder().encode(LINK_KEY), madeAt: new Date(), passphrase: null, ...order })

/** Puts a file back and returns the key of links that came with it. */
export async function putBack(connection: Connection, path: string, passphrase: string | null = null): Promise<string> {
  let key = ''
  const source = { path, passphrase }
  await restoreBackup(connection, source, await verifyBackup(source), async (found) => void (key = found))
  return key
}
