import type { Logger } from 'pino'
import { civilDateAt } from '../../core/dates.ts'
import type { Connection } from '../../db/connect.ts'
import { dropLeftRows } from '../../db/import-staging.ts'
import { getInstall } from '../../db/install.ts'
import { deleteJobsEndedBefore } from '../../db/jobs.ts'
import { deleteExpiredSessions } from '../../db/sessions.ts'
import { sweepFailures } from '../auth/throttle.ts'
import type { BackupDesk } from '../backups/backup-desk.ts'
import { loggable } from '../http/log.ts'
import { lapseOn } from '../jobs/lapse.ts'
import { readClubsDue } from '../other-clubs/read-club.ts'
import { learnPrices } from '../outlook/learn-prices.ts'
import { watchRound } from '../watches/watch-round.ts'
import { keepParts } from './sighting-parts.ts'

const MINUTE_MS = 60_000
/** The embedded engine writes its log into the tables only when told: five minutes of a busy evening are a few megabytes. */
const CHECKPOINT_MS = 5 * MINUTE_MS
/** A quote lapses at midnight of its place; ten minutes late harms nobody, since reading lapses too. */
const SWEEP_MS = 10 * MINUTE_MS
/** Rows that are gone take room until they are swept up; a busy club leaves some thousand a day. */
const VACUUM_MS = 6 * 60 * MINUTE_MS
/** How often it is looked whether the time for a backup has come; the desk knows how often that is. */
const BACKUP_LOOK_MS = MINUTE_MS
/** The record is learnt from once a day: soon after a start, else within ten minutes of midnight. */
const LEARN_LOOK_MS = 10 * MINUTE_MS
const FIRST_LEARN_MS = 5_000
/** Each other club is read once a day; how often it is looked which are due. */
const CLUBS_LOOK_MS = 15 * MINUTE_MS
/** Who watches a price hears of it within seconds; where nothing changed, a look costs one row that is not there. */
const WATCH_LOOK_MS = 2_000
/** A part is made a year before it is needed: one that could not be had on a busy day is had on another. */
const PARTS_MS = 24 * 60 * MINUTE_MS
/** Long enough to ask "who imported that?", short enough that the list stays a list. */
const JOBS_KEPT_MS = 30 * 24 * 60 * MINUTE_MS
/** A file that was tried waits this long for somebody to say "write". */
const TRIED_KEPT_MS = 24 * 60 * MINUTE_MS

async function sweep({ db }: Connection, nowMs: number): Promise<void> {
  const { timeZone } = await getInstall(db)
  await lapseOn(db, civilDateAt(nowMs, timeZone))
  await deleteExpiredSessions(db, new Date(nowMs))
  await sweepFailures(db, nowMs)
  await dropLeftRows(db, new Date(nowMs - TRIED_KEPT_MS))
  await deleteJobsEndedBefore(db, new Date(nowMs - JOBS_KEPT_MS))
}

/** Work that goes on by itself. Returns how to end it. A failure is logged and tried again at the next turn. */
export function keepHouse(connection: Connection, backups: Pick<BackupDesk, 'keepUp'>, clock: () => number, log: Logger): () => void {
  const every = (ms: number, what: string, work: () => Promise<unknown>) =>
    setInterval(() => void work().catch((error: unknown) => log.warn({ err: loggable(error) }, `${what} failed`)), ms)
  const learning = (): Promise<unknown> => learnPrices(connection.db, clock())
  const first = setTimeout(
    () => void learning().catch((error: unknown) => log.warn({ err: loggable(error) }, 'learning failed')),
    FIRST_LEARN_MS,
  )
  const timers = [
    every(LEARN_LOOK_MS, 'learning', learning),
    every(CHECKPOINT_MS, 'checkpoint', () => connection.checkpoint()),
    every(VACUUM_MS, 'vacuum', () => connection.vacuum()),
    every(BACKUP_LOOK_MS, 'backup', () => backups.keepUp()),
    every(WATCH_LOOK_MS, 'watching', () => watchRound(connection.db, clock(), log)),
    every(PARTS_MS, 'making parts', () => keepParts(connection, clock(), log)),
    every(SWEEP_MS, 'sweep', () => sweep(connection, clock())),
    every(CLUBS_LOOK_MS, 'reading other clubs', () => readClubsDue(connection.db, new Date(clock()))),
  ]
  return () => {
    clearTimeout(first)
    timers.forEach((timer) => clearInterval(timer))
  }
}
