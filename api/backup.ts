import { join, resolve } from 'node:path'
import { connect, type Connection } from '../db/connect.ts'
import { FolderInUse } from '../db/lock.ts'
import { executedMigrations } from '../db/snapshot.ts'
import { listStrayTables } from '../db/stored-tables.ts'
import { askPassphrase } from './backups/ask-passphrase.ts'
import { BackupRefused } from './backups/backup-format.ts'
import { backupName, pruneBackups } from './backups/kept-backups.ts'
import { makeBackup } from './backups/make-backup.ts'
import { sayStrays } from './backups/say-strays.ts'
import { PASSPHRASE_MIN, readConfig, type Config } from './config.ts'
import { ConfigError } from './config-error.ts'
import { getLinkKey } from './service/link-key.ts'
import { readCommand } from './service/read-command.ts'
import { sayFailure } from './service/run.ts'

const USAGE = 'npm run backup -- [--locked] [file]'

/** From the environment, or asked twice where `--locked` says that the file is to have one. */
async function passphraseFor(config: Config, locked: boolean): Promise<string | null> {
  if (config.backupPassphrase !== null || !locked) return config.backupPassphrase
  const typed = await askPassphrase(`Passphrase for the backup (at least ${PASSPHRASE_MIN} characters)`)
  if (typed === null) throw new ConfigError('There is no terminal to ask for a passphrase on. Put it into BACKUP_PASSPHRASE.')
  if (typed.length < PASSPHRASE_MIN)
    throw new ConfigError(`The passphrase has ${typed.length} characters. It needs at least ${PASSPHRASE_MIN}.`)
  if ((await askPassphrase('The same again')) !== typed) throw new ConfigError('The two passphrases differ. Nothing was made.')
  return typed
}

async function open({ databaseUrl, dataDir, backupDir }: Config): Promise<Connection> {
  try {
    return await connect(databaseUrl === null ? { dataDir } : { databaseUrl })
  } catch (error) {
    if (!(error instanceof FolderInUse)) throw error
    throw new BackupRefused(
      'busy',
      `The service is running (process ${error.pid}) and holds ${error.folder}. It makes its own backups every 15 minutes into ${backupDir}, and one at once on its page Settings, Backups. For one from here, stop it first.`,
      { cause: error },
    )
  }
}

/** `npm run backup`: one verified file, in BACKUP_DIR unless a name is given. */
async function main(): Promise<void> {
  const { values, positionals } = readCommand({ options: { locked: { type: 'boolean', default: false } }, allowPositionals: true }, USAGE)
  if (positionals.length > 1) throw new ConfigError(`One file at most: ${USAGE}`)
  const config = readConfig(process.env)
  const passphrase = await passphraseFor(config, values.locked)
  const connection = await open(config)
  try {
    if ((await executedMigrations(connection.db)).length === 0)
      throw new BackupRefused('no_file', 'There is nothing to back up yet: this install has never been started.')
    const madeAt = new Date()
    const path = resolve(positionals[0] ?? join(config.backupDir, backupName(madeAt, 'asked', passphrase !== null)))
    const made = await makeBackup(path, { connection, linkKey: await getLinkKey(config), madeAt, passphrase })
    if (positionals.length === 0) await pruneBackups(config.backupDir, madeAt.getTime())
    const rows = made.head.tables.reduce((sum, table) => sum + table.rows, 0)
    console.log(`Backup made and verified: ${path}\n${rows} rows in ${made.head.tables.length} tables, ${made.bytes} bytes.`)
    const strays = await listStrayTables(connection.db)
    if (strays.length > 0) console.warn(sayStrays(strays))
    if (passphrase === null)
      console.log('It holds everything, the key of printed links included: keep it where only you can read it, or lock it with --locked.')
  } finally {
    await connection.close()
  }
}

main().catch((error: unknown) => {
  sayFailure(error)
  process.exit(1)
})
