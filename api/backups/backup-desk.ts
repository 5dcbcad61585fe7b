import { join, resolve } from 'node:path'
import type { Connection } from '../../db/connect.ts'
import { changeMark } from '../../db/snapshot.ts'
import type { Config } from '../config.ts'
import { BackupRefused } from './backup-format.ts'
import { backupName, listBackups, pruneBackups, type KeptBackup, type Reason } from './kept-backups.ts'
import { makeBackup, type MadeBackup } from './make-backup.ts'
import { contentOf } from './read-backup.ts'

const MINUTE_MS = 60_000
/** The embedded database is not shown to survive a power cut: a quarter of an hour is what may be lost then. PostgreSQL keeps its own promise. */
const EVERY_MINUTES = { embedded: 15, postgres: 24 * 60 }
/** Two turns may be missed, by a machine that slept, before it is a fault worth a warning. */
const TURNS_MISSED = 3

export interface BackupStanding {
  kept: KeptBackup[]
  /** When all that is stored was last known to be in a backup; null before the first. */
  lastSuccessAt: Date | null
  /** The newest try that failed, unless one has succeeded since. */
  lastFailure: { at: Date; message: string } | null
  everyMinutes: number
  /** No backup is as young as it should be. */
  overdue: boolean
}

/** Makes the backups of a running service, one at a time, and knows how they stand. */
export interface BackupDesk {
  /** Errors: BackupRefused, `busy` while another one is being made. */
  make(reason: Reason, passphrase: string | null): Promise<KeptBackup>
  /** Makes one where its time has come and something changed since the last. */
  keepUp(): Promise<void>
  standing(): Promise<BackupStanding>
  /** Path of a kept backup; undefined for a name that none has. */
  find(name: string): Promise<{ path: string; backup: KeptBackup } | undefined>
  /** Resolves once none is being made. */
  idle(): Promise<void>
}

export interface BackupDeskParts {
  connection: Connection
  config: Pick<Config, 'backupDir' | 'backupPassphrase'>
  linkKey: Uint8Array
  clock: () => number
}

/** What the desk remembers of its own process. */
interface Memory {
  running: Promise<unknown> | null
  /** When it was last seen that nothing had changed since the newest backup. */
  unchangedAt: number | null
  /** What the database said of its changes before the newest backup, and the hash of its rows. */
  mark: string | null
  content: string | null
  failure: BackupStanding['lastFailure']
}

/** What the functions below share. */
interface Desk extends BackupDeskParts {
  folder: string
  everyMs: number
  memory: Memory
}

export function createBackupDesk(parts: BackupDeskParts): BackupDesk {
  const memory: Memory = { running: null, unchangedAt: null, mark: null, content: null, failure: null }
  const desk: Desk = {
    ...parts,
    folder: resolve(parts.config.backupDir),
    everyMs: EVERY_MINUTES[parts.connection.engine] * MINUTE_MS,
    memory,
  }
  return {
    make: (reason, passphrase) => makeNow(desk, reason, passphrase),
    keepUp: () => keepUp(desk),
    standing: () => standingOf(desk),
    async find(name) {
      const backup = (await listBackups(desk.folder)).find((one) => one.name === name)
      return backup && { path: join(desk.folder, backup.name), backup }
    },
    async idle() {
      await memory.running?.catch(() => undefined)
    },
  }
}

async function makeNow(desk: Desk, reason: Reason, passphrase: string | null): Promise<KeptBackup> {
  const made = await alone(desk, reason, passphrase ?? desk.config.backupPassphrase)
  const kept = (await listBackups(desk.folder)).find(({ name }) => made !== null && join(desk.folder, name) === made.path)
  if (kept === undefined) throw new Error('The backup that was made is not in its folder.')
  return kept
}

async function keepUp(desk: Desk): Promise<void> {
  const { memory, connection, clock } = desk
  if (memory.running !== null) return
  const { kept } = await listReadable(desk)
  const last = lastSuccess(desk, kept)
  if (last !== null && clock() - last < desk.everyMs) return
  if (memory.mark !== null && memory.mark === (await changeMark(connection.db))) {
    memory.unchangedAt = clock()
    return
  }
  memory.content ??= await newestContent(desk.folder, kept)
  await alone(desk, 'scheduled', desk.config.backupPassphrase)
}

async function standingOf(desk: Desk): Promise<BackupStanding> {
  const { kept, failure } = await listReadable(desk)
  const last = lastSuccess(desk, kept)
  return {
    kept,
    lastSuccessAt: last === null ? null : new Date(last),
    lastFailure: failure ?? desk.memory.failure,
    everyMinutes: desk.everyMs / MINUTE_MS,
    overdue: last === null || desk.clock() - last > TURNS_MISSED * desk.everyMs,
  }
}

/** One at a time: the embedded engine has one connection, and the disk is the same. */
async function alone(desk: Desk, reason: Reason, passphrase: string | null): Promise<MadeBackup | null> {
  const { memory, clock } = desk
  if (memory.running !== null) throw new BackupRefused('busy', 'A backup is being made at this moment. Try again in a minute.')
  const running = run(desk, reason, passphrase)
  memory.running = running
  try {
    return await running
  } catch (error) {
    memory.failure = { at: new Date(clock()), message: wordsOf(error) }
    throw error
  } finally {
    memory.running = null
  }
}

async function run({ connection, linkKey, folder, clock, memory }: Desk, reason: Reason, passphrase: string | null) {
  const madeAt = new Date(clock())
  const mark = await changeMark(connection.db)
  const path = join(folder, backupName(madeAt, reason, passphrase !== null))
  const unless = reason === 'scheduled' ? memory.content : null
  const made = await makeBackup(path, { connection, linkKey, madeAt, passphrase, unless })
  memory.mark = mark
  memory.content = made?.content ?? memory.content
  if (made === null) memory.unchangedAt = madeAt.getTime()
  memory.failure = null
  await pruneBackups(folder, madeAt.getTime())
  return made
}

/** Nothing of the future counts: a clock that was wrong for a while would keep the next backup away until then. */
function lastSuccess({ memory, clock }: Desk, kept: readonly KeptBackup[]): number | null {
  const now = clock()
  const known = [...kept.map(({ madeAt }) => madeAt.getTime()), memory.unchangedAt ?? Infinity].filter((at) => at <= now)
  return known.length === 0 ? null : Math.max(...known)
}

async function listReadable({ folder, clock }: Desk): Promise<{ kept: KeptBackup[]; failure: BackupStanding['lastFailure'] }> {
  return listBackups(folder).then(
    (kept) => ({ kept, failure: null }),
    () => ({ kept: [], failure: { at: new Date(clock()), message: `The folder of the backups cannot be read: ${folder}` } }),
  )
}

/** What a person is told of a failure: our own words where there are any, and never the database's. */
const wordsOf = (error: unknown): string =>
  error instanceof BackupRefused ? error.message : 'The backup failed for a reason that only the log of the server tells.'

/** Hash of the rows in the newest backup, so that a start makes no second one of the same; null where it cannot be told. */
async function newestContent(folder: string, [newest]: readonly KeptBackup[]): Promise<string | null> {
  return newest === undefined || newest.locked ? null : contentOf(join(folder, newest.name)).catch(() => null)
}
