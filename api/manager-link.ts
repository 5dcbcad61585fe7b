import { connect } from '../db/connect.ts'
import { FolderInUse } from '../db/lock.ts'
import { isMigrated } from '../db/migrate.ts'
import { isUnreachable } from '../db/reach.ts'
import { readConfig, type Config } from './config.ts'
import { ConfigError } from './config-error.ts'
import { managerLink } from './service/manager-link.ts'
import { readCommand } from './service/read-command.ts'
import { sayFailure } from './service/run.ts'

const USAGE = 'npm run manager-link -- [sign-in name]'

/** For a manager who lost the password: prints a link that sets a new one. Whoever can run this here owns the data anyway. */
async function main(): Promise<number> {
  const { positionals } = readCommand({ allowPositionals: true }, USAGE)
  if (positionals.length > 1) throw new ConfigError(`One sign-in name at most: ${USAGE}`)
  const [signInName] = positionals
  const config = readConfig(process.env)
  const connection = await open(config)
  try {
    const made = (await isMigrated(connection.db))
      ? await managerLink(connection.db, signInName, Date.now())
      : ({
          ok: false,
          words: 'There is nothing here yet, or it is of an earlier version. Start the service once, then run this again.',
        } as const)
    if (!made.ok) {
      console.error(made.words)
      return 1
    }
    const origin = config.publicUrl?.origin ?? `http://localhost:${config.port}`
    const start = connection.engine === 'embedded' ? 'Start the service, then open this link' : 'Open this link'
    console.log(
      `${start}. It sets a new password for ${made.name} (${made.signInName}), once, within 24 hours:\n\n  ${origin}${made.path}\n\nFor another manager: ${USAGE}`,
    )
    return 0
  } finally {
    await connection.close()
  }
}

async function open({ databaseUrl, dataDir }: Config) {
  try {
    return await connect(databaseUrl === null ? { dataDir } : { databaseUrl })
  } catch (error) {
    if (!(error instanceof FolderInUse)) throw error
    console.error(`The service is running (process ${error.pid}) and holds ${error.folder}. Stop it, run this again, then start it.`)
    process.exit(1)
  }
}

main()
  .then((code) => process.exit(code))
  .catch((error: unknown) => {
    if (isUnreachable(error)) console.error('PostgreSQL does not answer at DATABASE_URL. Start it, then run this again.')
    else sayFailure(error)
    process.exit(1)
  })
