import { setTimeout as wait } from 'node:timers/promises'
import type { Logger } from 'pino'
import type { Connection } from '../../db/connect.ts'
import { connect } from '../../db/connect.ts'
import { createInstall, findInstall } from '../../db/install.ts'
import { migrate } from '../../db/migrate.ts'
import { isUnreachable } from '../../db/reach.ts'
import { listStrayTables } from '../../db/stored-tables.ts'
import { areSummariesCurrent, rebuildSummaries } from '../../db/summary-rebuild.ts'
import { backUpBeforeUpgrade } from '../backups/before-upgrade.ts'
import { sayStrays } from '../backups/say-strays.ts'
import type { Config } from '../config.ts'
import { firstInstall } from './first-install.ts'
import { keepParts } from './sighting-parts.ts'

const RETRY_MS = 2_000

/** What a fresh database is filled with. */
export type Fill = (db: Connection['db']) => Promise<void>

const fillFirst: Fill = async (db) => {
  await createInstall(db, firstInstall(Intl.DateTimeFormat().resolvedOptions().timeZone))
}

/** Brings the database to this release, behind a backup of what it was, and fills it if there is no install in it yet. What an upgrade or a restore left without its summaries gets them. */
async function prepare(connection: Connection, config: Config, linkKey: Uint8Array, log: Logger, fill: Fill): Promise<void> {
  await backUpBeforeUpgrade(connection, config, linkKey)
  await migrate(connection.db)
  await keepParts(connection, Date.now(), log)
  if ((await findInstall(connection.db)) === undefined) await fill(connection.db)
  if (!(await areSummariesCurrent(connection.db))) await rebuildSummaries(connection.db)
}

/**
 * The database, ready to use. While it cannot be reached it is tried again every two seconds, until `signal` says stop.
 *
 * Errors: FolderInUse of db/lock.ts; BackupRefused where new tables are due and no backup can be made before; whatever else the database says that waiting does not mend (a wrong password, a later release's schema).
 */
export async function openDatabase(
  config: Config,
  linkKey: Uint8Array,
  log: Logger,
  signal: AbortSignal,
  fill: Fill = fillFirst,
): Promise<Connection> {
  const connection = await connect(config.databaseUrl === null ? { dataDir: config.dataDir } : { databaseUrl: config.databaseUrl })
  for (let tries = 0; ; tries += 1) {
    try {
      await prepare(connection, config, linkKey, log, fill)
      const strays = await listStrayTables(connection.db)
      if (strays.length > 0) log.warn(sayStrays(strays))
      return connection
    } catch (error) {
      if (!isUnreachable(error) || signal.aborted) {
        await connection.close().catch(() => undefined)
        throw error
      }
      if (tries === 0) log.warn('the database cannot be reached; it is tried again every two seconds')
      await wait(RETRY_MS, undefined, { signal }).catch(() => undefined)
    }
  }
}
