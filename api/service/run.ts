import { pino } from 'pino'
import type { Logger } from 'pino'
import { FolderInUse } from '../../db/lock.ts'
import { ConfigError } from '../config.ts'
import { PortInUse } from './listen.ts'
import type { Service } from './service.ts'

/** Lines for programs go to the error stream; what a person should read stands alone on the other. */
export function createLog(env: Record<string, string | undefined> = process.env): Logger {
  const level = env['NODE_ENV'] === 'production' ? 'info' : 'warn'
  return pino({ level, base: null, timestamp: pino.stdTimeFunctions.isoTime }, pino.destination({ fd: 2, sync: true }))
}

/** Failures that a sentence explains; everything else is a bug and shows where. */
export function sayFailure(error: unknown): void {
  const plain = error instanceof ConfigError || error instanceof PortInUse || error instanceof FolderInUse
  if (plain) console.error(error.message)
  else if (error instanceof Error && error.cause instanceof Error) console.error(`${error.message} ${error.cause.message}`)
  else console.error(error)
}

/** Ends the process well when it is asked to: what is running finishes, the database is closed. A second signal ends it at once. */
export function stopOnSignal(service: Service): void {
  let asked = false
  const stop = (): void => {
    if (asked) process.exit(1)
    asked = true
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
