import type { Config } from '../config.ts'
import { IMPORT_JOB, importHandler } from '../exchange/import-job.ts'
import { READ_CLUB_JOB, readClubHandler } from '../other-clubs/read-club.ts'
import type { JobHandler } from './task.ts'

/** Every kind of background work on what is here, by its name. A kind that is not here is left to a later release. */
export const jobHandlers = ({ config }: { config: Pick<Config, 'dataDir'> }): Readonly<Record<string, JobHandler>> => ({
  [IMPORT_JOB]: importHandler(config.dataDir),
})

/** Work that waits for somebody else's server. */
export const outsideHandlers: Readonly<Record<string, JobHandler>> = { [READ_CLUB_JOB]: readClubHandler() }
