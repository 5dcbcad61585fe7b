import { pino } from 'pino'
import type { Logger } from 'pino'
import { FolderInUse } from '../../db/lock.ts'
import { BackupRefused } from '../backups/backup-format.ts'
import { ConfigError } from '../config-error.ts'
import { AddressRefused, PortInUse } from './listen.ts'
import type { Service } from './service.ts'

/** Lines for programs go to the error stream; what a person should read stands alone on the other. */
export function createLog(env: Record<string, string | undefined> = process.env): Logger {
  const level = env['NODE_ENV'] === 'production' ? 'info' : 'warn'
  return pino({ level, base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination({ fd: 2, sync: true }))
}

/** Failures that a sentence explains; everything else is a bug and shows where. */
export function sayFailure(error: unknown): void {
  const plain = [ConfigError, PortInUse, AddressRefused, FolderInUse, BackupRefused].some((kind) => error instanceof kind)
  if (plain && error instanceof Error) console.error(error.message)
  else if (error instanceof Error && error.cause instanceof Error) console.error(`${error.message} ${error.cause.message}`)
  else console.error(error)
}

/**
 * One press of Ctrl+C comes up to three times: from the terminal to the whole group, and again from npm and from the launcher. A person who
 * presses it a second time takes longer than this.
 */
const SAME_PRESS_MS = 1_000

/** Ends the process well when it is asked to: what is running finishes, the database is closed. Asked a second time, it ends at once. */
export function stopOnSignal(service: Service): void {
  let askedAt: number | undefined
  const stop = (): void => {
    const now = performance.now()
    if (askedAt !== undefined) {
      if (now - askedAt > SAME_PRESS_MS) process.exit(1)
      return
    }
    askedAt = now
    service.stop().then(
      () => process.exit(0),
      (error: unknown) => {
        sayFailure(error)
        process.exit(1)
      },
    )
  }
  process.on('SIGTERM', stop)
  process.on('SIGINT', stop)
}
