import { setTimeout as wait } from 'node:timers/promises'
import type { Logger } from 'pino'
import type { Connection } from '../../db/connect.ts'
import { createApp } from '../app.ts'
import { createBackupDesk, type BackupDesk } from '../backups/backup-desk.ts'
import type { Config } from '../config.ts'
import type { Deps } from '../context.ts'
import { loggable } from '../http/log.ts'
import { startPostman } from '../delivery/deliver.ts'
import { sweepUploads } from '../exchange/sweep-uploads.ts'
import { jobHandlers, outsideHandlers } from '../jobs/handlers.ts'
import { startWorker, type Worker } from '../jobs/worker.ts'
import { letterSender } from '../mail/transport.ts'
import type { RenderQuote } from '../quotes/paper.ts'
import { demandDataFolder } from './data-folder.ts'
import { keepHouse } from './housekeeping.ts'
import { readLinkKey } from './link-key.ts'
import { listen } from './listen.ts'
import { openDatabase, type Fill } from './open-database.ts'

/** A probe every second sees the flip before connections are refused. */
const FLIP_MS = 200
/** Stopping takes under ten seconds in all: this much for what is running, the rest for the database. */
const FINISH_MS = 6_000

/** A backup under way is let finish for this long; cut off, it leaves nothing. */
const LAST_BACKUP_MS = 1_500

export interface Service {
  /** As a reader on this computer opens it. */
  address: string
  linkKey: Uint8Array
  /** Resolves with the database once it is there; rejects where waiting does not help. */
  database: Promise<Connection>
  stop(): Promise<void>
}

/**
 * Starts to answer at once: 503 until the database is there, then everything.
 *
 * Errors: PortInUse; AddressRefused; ConfigError of the data folder and of the certificate; those of `openDatabase` through `database`.
 */
export async function startService(config: Config, log: Logger, pdf: RenderQuote, fill?: Fill): Promise<Service> {
  if (config.databaseUrl === null || config.linkKey === null) await demandDataFolder(config.dataDir)
  const linkKey = await readLinkKey(config)
  const stopping = new AbortController()
  const base = partsOf({ config, log, pdf, linkKey }, stopping.signal)
  let app = createApp(base)
  let endHouse = (): void => undefined
  let endPost = async (): Promise<void> => undefined
  let workers: Worker[] = []
  let backups: BackupDesk | undefined
  const listening = await listen({
    fetch: (request, env) => app.fetch(request, env as object),
    port: config.port,
    host: config.host,
    isHttps: config.publicUrl?.protocol === 'https:',
    tls: config.tls,
    onFault: (error) => log.error({ err: loggable(error) }, 'failed before the application'),
  })
  const database = openDatabase(config, linkKey, log, stopping.signal, fill).then(async (connection) => {
    const { db, engine } = connection
    // Before anybody can send one: a file that comes in has no job yet.
    await sweepUploads(db, config.dataDir).catch((error: unknown) => log.warn({ err: loggable(error) }, 'sweeping files failed'))
    // One line each: another club's server that is slow holds no import up.
    workers = [jobHandlers(base), outsideHandlers].map((handlers) => startWorker({ db, engine, handlers, clock: base.clock, log }))
    backups = createBackupDesk({ connection, config, linkKey, clock: base.clock })
    app = createApp({ ...base, db, engine, backups, wake: () => workers.forEach(({ wake }) => wake()) })
    endHouse = keepHouse(connection, backups, base.clock, log)
    endPost = startPostman({ ...base, db, origin: config.publicUrl?.origin ?? null, sendLetter: base.sendLetter ?? null })
    return connection
  })
  // Whoever started the service awaits it; until then a failure is not unhandled.
  database.catch(() => undefined)
  return {
    address: config.publicUrl?.origin ?? `http://localhost:${listening.port}`,
    linkKey,
    database,
    async stop() {
      stopping.abort()
      await wait(FLIP_MS)
      await Promise.all([listening.close(FINISH_MS), ...workers.map(({ stop }) => stop())])
      endHouse()
      // A letter under way is let finish as long; cut off, it is sent once more.
      await Promise.race([Promise.all([backups?.idle(), endPost()]), wait(LAST_BACKUP_MS)])
      await closeWell(await database.catch(() => null), log)
    },
  }
}

function partsOf(given: Pick<Deps, 'config' | 'log' | 'pdf' | 'linkKey'>, stopping: AbortSignal): Deps {
  const { mail, publicUrl, databaseUrl } = given.config
  return {
    ...given,
    db: null,
    engine: databaseUrl === null ? 'embedded' : 'postgres',
    clock: Date.now,
    sendLetter: mail === null ? null : letterSender(mail, publicUrl?.hostname ?? 'localhost'),
    ready: () => !stopping.aborted,
  }
}

async function closeWell(connection: Connection | null, log: Logger): Promise<void> {
  if (connection === null) return
  await connection.checkpoint().catch((error: unknown) => log.warn({ err: loggable(error) }, 'last checkpoint failed'))
  await connection.close()
}
