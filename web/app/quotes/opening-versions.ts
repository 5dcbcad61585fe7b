/** The draft on the screen, among the versions. */
export const DRAFT = 'draft'

/**
 * The pair that is asked about most: what the customer has not been told of yet, where the draft was edited since the last version; else the last two
 * versions, and of a single one what it would come to today. A draft that is locked is none to compare with.
 *
 * Range: `newest` from 1 on. @example openingVersions(2, false, true) // { from: '1', to: '2' }
 */
export function openingVersions(newest: number, locked: boolean, sameAsIssued: boolean | null): { from: string; to: string } {
  if (locked || (newest > 1 && sameAsIssued !== false)) return { from: String(Math.max(1, newest - 1)), to: String(newest) }
  return { from: String(newest), to: DRAFT }
}
