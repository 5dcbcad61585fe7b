import { resolve } from 'node:path'
import { connect } from '../db/connect.ts'
import { askPassphrase } from './backups/ask-passphrase.ts'
import { isLocked, verifyBackup } from './backups/read-backup.ts'
import { restoreBackup } from './backups/restore.ts'
import { readConfig, type Config } from './config.ts'
import { ConfigError } from './config-error.ts'
import { placeLinkKey } from './service/place-link-key.ts'
import { readCommand } from './service/read-command.ts'
import { sayFailure } from './service/run.ts'

const USAGE = 'npm run restore <file>'

async function passphraseOf(path: string, config: Config): Promise<string | null> {
  if (!(await isLocked(path))) return null
  const passphrase = config.backupPassphrase ?? (await askPassphrase('Passphrase of the backup'))
  if (passphrase === null)
    throw new ConfigError('The file is locked, and there is no terminal to ask for its passphrase on. Put it into BACKUP_PASSPHRASE.')
  return passphrase
}

/** `npm run restore <file>`: into an empty install only. */
async function main(): Promise<void> {
  const { positionals } = readCommand({ allowPositionals: true }, USAGE)
  const [file] = positionals
  if (file === undefined || positionals.length > 1) throw new ConfigError(`Name the file to put back: ${USAGE}`)
  const config = readConfig(process.env)
  const path = resolve(file)
  const passphrase = await passphraseOf(path, config)
  const contents = await verifyBackup({ path, passphrase })
  const connection = await connect(config.databaseUrl === null ? { dataDir: config.dataDir } : { databaseUrl: config.databaseUrl })
  try {
    await restoreBackup(connection, { path, passphrase }, contents, (key) => placeLinkKey(config, key))
    const { head } = contents
    const rows = head.tables.reduce((sum, table) => sum + table.rows, 0)
    console.log(
      `Put back: ${rows} rows in ${head.tables.length} tables, made on ${head.madeAt} by release ${head.release}.\nStart with npm start. Everybody signs in again; links and QR codes that were printed work where the address is the same.`,
    )
  } finally {
    await connection.close()
  }
}

main().catch((error: unknown) => {
  sayFailure(error)
  process.exit(1)
})
