import { connect, type Connection } from '../db/connect.ts'
import { FolderInUse } from '../db/lock.ts'
import { isMigrated } from '../db/migrate.ts'
import { areSummariesCurrent, rebuildSummaries } from '../db/summary-rebuild.ts'
import { readConfig, type Config } from './config.ts'
import { ConfigError } from './config-error.ts'
import { readCommand } from './service/read-command.ts'
import { sayFailure } from './service/run.ts'
import { namesOf, sayRebuilt } from './service/say-rebuilt.ts'

const USAGE = 'npm run summaries'

async function open({ databaseUrl, dataDir }: Config): Promise<Connection> {
  try {
    return await connect(databaseUrl === null ? { dataDir } : { databaseUrl })
  } catch (error) {
    if (!(error instanceof FolderInUse)) throw error
    throw new ConfigError(`The service is running (process ${error.pid}) and holds ${error.folder}. Stop it first.`)
  }
}

/** `npm run summaries`: makes the summaries of the price record anew from its sightings, and says which were not what they should have been, and why. */
async function main(): Promise<void> {
  readCommand({ options: {}, allowPositionals: false }, USAGE)
  const connection = await open(readConfig(process.env))
  try {
    if (!(await isMigrated(connection.db)))
      throw new ConfigError('The database is of an earlier release. Start the service once: it brings both to this one.')
    const wereCurrent = await areSummariesCurrent(connection.db)
    const rebuilt = await rebuildSummaries(connection.db)
    console.log(sayRebuilt(rebuilt, wereCurrent, await namesOf(connection.db, rebuilt.some)))
  } finally {
    await connection.close()
  }
}

main().catch((error: unknown) => {
  sayFailure(error)
  process.exit(1)
})
