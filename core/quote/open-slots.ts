import { SLOT_PLAIN_NAMES, type Slot } from '../catalog/kinds.ts'
import type { AssembledBuild } from './revision.ts'

/**
 * Slots that a build must cover and that nobody has answered: its total is that much short of a working tank. A build with nothing in it has none, for it
 * has no total either.
 *
 * @example openSlots(build) // ['filter', 'heat', 'carry_tank']
 */
export function openSlots(build: Pick<AssembledBuild, 'rows'>): Slot[] {
  if (build.rows.every((row) => row.lineId === null)) return []
  return build.rows.filter((row) => row.answer === 'missing' && row.required && row.lineId === null).map((row) => row.slot)
}

/**
 * The same in the words of someone who buys it; empty where nothing is open.
 *
 * @example sayOpenSlots(build) // 'without filter, heater, stand: not chosen'
 */
export function sayOpenSlots(build: Pick<AssembledBuild, 'rows'>): string {
  const open = openSlots(build)
  return open.length === 0 ? '' : `without ${open.map((slot) => lower(SLOT_PLAIN_NAMES[slot])).join(', ')}: not chosen`
}

/**
 * The same where what a build may do without is told too, in the words of the paper's "Not included".
 *
 * @example sayLeftOut(build) // 'without lid, light: not chosen'
 */
export function sayLeftOut(build: Pick<AssembledBuild, 'rows'>): string {
  const may = build.rows.filter((row) => row.answer === 'missing' && row.lineId === null)
  if (may.length === 0) return 'nothing is left out'
  return `without ${may.map(({ slot }) => lower(SLOT_PLAIN_NAMES[slot])).join(', ')}: not chosen`
}

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
