import type { Kysely, Transaction } from 'kysely'
import type { CivilDate } from '../core/dates.ts'
import type { ImportFault } from '../core/exchange/data-set.ts'
import type { Database } from './database.ts'
import type { StagedDecision } from './import-staging.ts'
import type { Viewer } from './viewer.ts'

/** What a check and a writing know beside the rows. */
export interface ImportContext {
  jobId: string
  /** Who started the import; a manager at this moment. */
  viewer: Viewer
  currency: string
  /** Milliseconds since 1970, UTC. */
  nowMs: number
  /** The day at the install. */
  today: CivilDate
  /** Some rows of the file could not be read, not even what they are called. */
  hasUnread: boolean
}

/** What some rows would do, in the light of what is here. */
export interface CheckedRows {
  /** How many there were. */
  rows: number
  /** At most one a row. */
  faults: ImportFault[]
  decisions: StagedDecision[]
}

/** Where the rows of a data set go. Both look at the rows behind line `after`, up to `upTo`. */
export interface ImportTarget {
  check(db: Kysely<Database>, context: ImportContext, after: number, upTo: number): Promise<CheckedRows>
  /** Errors: StaleImport where what is here has changed since the check. */
  write(trx: Transaction<Database>, context: ImportContext, after: number, upTo: number): Promise<void>
  /** Last, once every row has its turn. */
  finish?(trx: Transaction<Database>, context: ImportContext): Promise<void>
}

/** Something changed between the check and the writing: the transaction is undone, and the rows are checked anew. */
export class StaleImport extends Error {}
