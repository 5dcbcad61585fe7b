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

type Rowed = Partial<Pick<AssembledBuild, 'rows'>>

const isFilled = ({ answer }: AssembledBuild['rows'][number]): boolean => answer !== 'missing' && answer !== 'not_needed'
const slotsOf = ({ rows = [] }: Rowed, of: typeof isFilled): Set<Slot> => new Set(rows.filter(of).map(({ slot }) => slot))

/**
 * Slots that a build leaves empty while another has something in them: its total is the lower for it. What nobody needs is not left out.
 *
 * @example lacksBeside(tankAlone, [whole]) // ['cover', 'filter', 'heat']
 */
export function lacksBeside(build: Rowed, others: readonly Rowed[]): Slot[] {
  const answered = slotsOf(build, ({ answer }) => answer !== 'missing')
  const theirs = others.flatMap((other) => [...slotsOf(other, isFilled)])
  return [...new Set(theirs)].filter((slot) => !answered.has(slot))
}

/** The same in words: "lid and light"; empty where it lacks nothing. */
export const sayLacks = (build: Rowed, others: readonly Rowed[]): string =>
  new Intl.ListFormat('en').format(lacksBeside(build, others).map((slot) => lower(SLOT_PLAIN_NAMES[slot])))

const lower = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1)
