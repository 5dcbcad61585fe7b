import type { BoardRow } from '../../../core/pricing/record.ts'

/** A row that the reader has just disputed, and where it stood. */
export interface KeptRow {
  row: BoardRow
  at: number
}

/**
 * The board with the rows one has just disputed in their places: the server shows them no more, and a slip of the thumb must be mendable.
 *
 * @example withKept([], [{ row, at: 3 }]) // [row]
 */
export function withKept(rows: readonly BoardRow[], kept: readonly KeptRow[]): BoardRow[] {
  const known = new Set(rows.map(({ sighting }) => sighting.id))
  const shown = [...rows]
  for (const { row, at } of kept.toSorted((a, b) => a.at - b.at)) {
    if (!known.has(row.sighting.id)) shown.splice(at, 0, row)
  }
  return shown
}
