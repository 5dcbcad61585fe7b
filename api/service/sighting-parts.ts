import type { Logger } from 'pino'
import type { Connection } from '../../db/connect.ts'
import { isUnreachable } from '../../db/reach.ts'
import { keepSightingParts, type MadePart } from '../../db/sighting-parts.ts'
import { loggable } from '../http/log.ts'

/**
 * Keeps the record's parts of years, and says of each how far it has come. The service goes on without: what has no part of its own lies in the rest, and another day tries again.
 *
 * Errors: where the database cannot be reached.
 */
export async function keepParts({ db }: Pick<Connection, 'db'>, nowMs: number, log: Logger): Promise<void> {
  try {
    await keepSightingParts(db, nowMs, madeSay(log), failedSay(log))
  } catch (error) {
    if (isUnreachable(error)) throw error
    log.warn(
      { err: loggable(error) },
      'looking after the parts of the record failed; parts that were made stay, and the next day tries again',
    )
  }
}

const madeSay =
  (log: Logger) =>
  ({ name, moved }: MadePart): void => {
    if (moved > 0) log.info({ part: name, moved }, 'a year of sightings moved into its own part')
  }

const failedSay =
  (log: Logger) =>
  (part: string, error: unknown): void => {
    if (isUnreachable(error)) throw error
    log.warn(
      { part, err: loggable(error) },
      'a part was not made; the sightings of its year are where they were, and the next day tries again',
    )
  }
