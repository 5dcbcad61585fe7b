import type { Logger } from 'pino'
import type { Connection } from '../../db/connect.ts'
import { isUnreachable } from '../../db/reach.ts'
import { keepSightingParts } from '../../db/sighting-parts.ts'
import { loggable } from '../http/log.ts'

/**
 * Keeps the record's parts of years, and says of each how far it has come. The service goes on without: what has no part of its own lies in the rest, and another day tries again.
 *
 * Errors: where the database cannot be reached.
 */
export async function keepParts({ db }: Pick<Connection, 'db'>, nowMs: number, log: Logger): Promise<void> {
  try {
    await keepSightingParts(db, nowMs, ({ name, moved }) => {
      if (moved > 0) log.info({ part: name, moved }, 'a year of sightings moved into its own part')
    })
  } catch (error) {
    if (isUnreachable(error)) throw error
    log.warn({ err: loggable(error) }, 'making parts failed; everything is where it was')
  }
}
