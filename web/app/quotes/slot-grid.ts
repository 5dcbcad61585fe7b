import { SLOTS, type Slot } from '../../../core/catalog/kinds.ts'
import type { WorkedBuild, SlotRow } from '../../../core/quote/revision.ts'

/** Where a cell lies in the bracket a kit draws along the slots it fills. */
export type Bracket = 'only' | 'first' | 'middle' | 'last' | null

export interface SlotCell {
  rows: SlotRow[]
  bracket: Bracket
}

const inKit = (rows: SlotRow[]): boolean => rows.some((row) => row.answer === 'kit' || row.answer === 'in_kit')

/** Slots that any build fills or must fill, in the order a build is put together. */
export function shownSlots(builds: WorkedBuild[]): Slot[] {
  const used = new Set(builds.flatMap((build) => build.rows.map((row) => row.slot)))
  return SLOTS.filter((slot) => used.has(slot))
}

/**
 * One build's cells, one a slot. A bracket runs over neighbouring slots of the kit and breaks where the kit leaves one out.
 *
 * @example slotCells(build, ['hold_water', 'cover', 'filter']).map((cell) => cell.bracket) // ['first', 'middle', 'last'] of a kit with lid and filter
 */
export function slotCells(build: WorkedBuild, slots: Slot[]): SlotCell[] {
  const rowsOf = slots.map((slot) => build.rows.filter((row) => row.slot === slot))
  const kits = rowsOf.map(inKit)
  return rowsOf.map((rows, index) => {
    if (!kits[index]) return { rows, bracket: null }
    const above = kits[index - 1] ?? false
    const below = kits[index + 1] ?? false
    return { rows, bracket: above ? (below ? 'middle' : 'last') : below ? 'first' : 'only' }
  })
}
