import { readdir, rm, stat } from 'node:fs/promises'
import { join } from 'node:path'

/** Why a backup was made: someone asked for it, its time had come, or new tables were about to be made. */
export const REASONS = ['asked', 'scheduled', 'before-upgrade'] as const
export type Reason = (typeof REASONS)[number]

/** A backup in the folder. Only a verified one has such a name. */
export interface KeptBackup {
  name: string
  reason: Reason
  madeAt: Date
  bytes: number
  /** Nobody reads it without its passphrase. */
  locked: boolean
}

const NAME = /^driploop-(\d{4})(\d\d)(\d\d)-(\d\d)(\d\d)(\d\d)-(\d{3})-(asked|scheduled|before-upgrade)\.backup(\.age)?$/
const PART = /^\.[0-9a-f-]{36}\.part$/
/** A file half written by a process that was killed: nobody writes at one for this long. */
const ABANDONED_MS = 6 * 3_600_000

/** Newest ones kept whatever their day, and for how many further days the newest of the day: of each reason for itself. */
const KEPT: Record<Reason, { newest: number; days: number }> = {
  asked: { newest: 8, days: 7 },
  scheduled: { newest: 8, days: 7 },
  'before-upgrade': { newest: 3, days: 0 },
}

/** @example backupName(new Date('2026-11-26T05:43:15.007Z'), 'asked', false) // 'driploop-20261126-054315-007-asked.backup' */
export function backupName(madeAt: Date, reason: Reason, locked: boolean): string {
  const [day = '', time = ''] = madeAt.toISOString().replaceAll(/[-:Z]/g, '').split('T')
  return `driploop-${day}-${time.replace('.', '-')}-${reason}.backup${locked ? '.age' : ''}`
}

/** What a name says; undefined where it is no backup's. */
export function readName(name: string): Omit<KeptBackup, 'bytes'> | undefined {
  const [, year, month, day, hour, minute, second, ms, reason, age] = NAME.exec(name) ?? []
  if (reason === undefined) return undefined
  const madeAt = new Date(`${year}-${month}-${day}T${hour}:${minute}:${second}.${ms}Z`)
  return Number.isNaN(madeAt.getTime()) ? undefined : { name, reason: reason as Reason, madeAt, locked: age !== undefined }
}

/** The backups of a folder, newest first; none where there is no folder yet. */
export async function listBackups(folder: string): Promise<KeptBackup[]> {
  const names = await readdir(folder).catch((error: NodeJS.ErrnoException) => {
    if (error.code === 'ENOENT') return []
    throw error
  })
  const kept: KeptBackup[] = []
  for (const name of names) {
    const said = readName(name)
    const file = said && (await stat(join(folder, name)).catch(() => undefined))
    if (said && file?.isFile()) kept.push({ ...said, bytes: file.size })
  }
  return kept.toSorted((a, b) => b.madeAt.getTime() - a.madeAt.getTime() || (a.name < b.name ? 1 : -1))
}

/** Those that make room for others: beyond the newest few, and not the newest of one of the last days that have any. */
export function outlived<Backup extends Pick<KeptBackup, 'madeAt' | 'reason'>>(newestFirst: readonly Backup[]): Backup[] {
  return REASONS.flatMap((reason) => {
    const own = newestFirst.filter((backup) => backup.reason === reason)
    const { newest, days } = KEPT[reason]
    const newestOfDay = new Map<string, Backup>()
    for (const backup of own) {
      const day = backup.madeAt.toISOString().slice(0, 10)
      if (!newestOfDay.has(day) && newestOfDay.size < days) newestOfDay.set(day, backup)
    }
    const daily = new Set(newestOfDay.values())
    return own.slice(newest).filter((backup) => !daily.has(backup))
  })
}

/**
 * Removes what has been outlived, and what a killed process left half written. A backup dated in the future, by a clock that was wrong, takes
 * no other's place.
 */
export async function pruneBackups(folder: string, nowMs: number): Promise<void> {
  const past = (await listBackups(folder)).filter(({ madeAt }) => madeAt.getTime() <= nowMs)
  for (const { name } of outlived(past)) await rm(join(folder, name), { force: true })
  for (const name of await readdir(folder)) {
    if (!PART.test(name)) continue
    const file = await stat(join(folder, name)).catch(() => undefined)
    if (file && nowMs - file.mtimeMs > ABANDONED_MS) await rm(join(folder, name), { force: true })
  }
}
