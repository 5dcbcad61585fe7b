import type { CivilDate } from '../dates.ts'
import type { ImportOrder } from './import-outcome.ts'

/** With what stands behind it, 22 bytes, below the 255 that file systems take, whatever the script: four bytes a letter at most (RFC 3629). */
const MOST_LETTERS = 55

/**
 * What the fault file of an import is called, before its ending: after the file it is about and the day that was sent. Of the name only letters, digits, dots, dashes
 * and underscores are kept, so that it leads into no other folder, hides nowhere and is no flag of a program; where none is left it says what the
 * file held.
 *
 * @example faultFileName({ fileName: '../Heaters (new).csv', set: 'catalog' }, '2026-11-30') // 'Heaters-new-faults-2026-11-30'
 */
export function faultFileName({ fileName, set }: Pick<ImportOrder, 'fileName' | 'set'>, sentOn: CivilDate): string {
  const kept = fileName
    .normalize('NFC')
    .replace(/\.(csv|tsv|txt|json)$/i, '')
    .replace(/[^\p{L}\p{M}\p{N}._-]+/gu, '-')
  const cut = Array.from(kept.replace(/^[-._\p{M}]+/u, ''))
    .slice(0, MOST_LETTERS)
    .join('')
    .replace(/[-._]+$/, '')
  return `${cut === '' ? set.replaceAll('_', '-') : cut}-faults-${sentOn}`
}
