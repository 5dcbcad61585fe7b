import { ConfigError } from './config-error.ts'

/** Every variable of the environment that is ours. README and docs/expose.md describe them. */
export const SETTINGS = [
  'HOST',
  'PORT',
  'DATA_DIR',
  'DATABASE_URL',
  'PUBLIC_URL',
  'LINK_KEY',
  'TRUSTED_PROXIES',
  'TLS_CERT',
  'TLS_KEY',
  'BACKUP_DIR',
  'BACKUP_PASSPHRASE',
  'SMTP_URL',
  'SMTP_FROM',
] as const
export type Setting = (typeof SETTINGS)[number]

/** The environment is everybody's: only names that could hardly be meant for another program are taken for ours. */
const LETTERS_A_SLIP = 4.5
/** HOST, PORT and TLS_KEY are one letter away from too many honest names: those are only met with other signs or case. */
const LEAST_LETTERS = 7

const lettersOf = (name: string): string => name.toUpperCase().replaceAll(/[^A-Z]/g, '')

/** Slips that turn one word into the other: a letter left out, put in, changed, or two neighbours swapped. @example slips('ULR', 'URL') // 1 */
export function slips(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, column) => column)]
  for (let i = 1; i <= a.length; i += 1) {
    const row = [i]
    for (let j = 1; j <= b.length; j += 1) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      row[j] = Math.min((rows[i - 1]?.[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (rows[i - 1]?.[j - 1] ?? 0) + same)
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]
      if (swapped) row[j] = Math.min(row[j] ?? 0, (rows[i - 2]?.[j - 2] ?? 0) + 1)
    }
    rows.push(row)
  }
  return rows[a.length]?.[b.length] ?? 0
}

/** The setting that a name was probably meant to be; undefined for a name of somebody else's. */
export function meantSetting(name: string): Setting | undefined {
  const letters = lettersOf(name)
  return SETTINGS.find((setting) => {
    const ours = lettersOf(setting)
    if (letters === ours) return true
    return ours.length >= LEAST_LETTERS && slips(letters, ours) <= ours.length / LETTERS_A_SLIP
  })
}

/** Errors: ConfigError for a variable under our name that we do not have, and for one that is nearly one of ours: it would be ignored. */
export function demandKnownNames(names: readonly string[]): void {
  for (const name of names) {
    if ((SETTINGS as readonly string[]).includes(name)) continue
    if (name.startsWith('DRIPLOOP_')) throw new ConfigError(`${name} is not known. The variables are ${SETTINGS.join(', ')}.`)
    const meant = meantSetting(name)
    // Where the system takes capitals and small letters for the same, so do we.
    if (meant !== undefined && !(process.platform === 'win32' && name.toUpperCase() === meant))
      throw new ConfigError(`${name} is not known. Was ${meant} meant? Correct the name, or take the variable away.`)
  }
}
