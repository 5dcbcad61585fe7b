import { SLOT_PLAIN_NAMES, SLOTS } from '../../core/catalog/kinds.ts'
import type { LineCost } from '../../core/pricing/tiers.ts'
import type { AssembledBuild, SlotRow } from '../../core/quote/revision.ts'
import type { FirstPage, IncludedItem } from './paper.ts'
import type { Teller } from './teller.ts'

export const isSale = (line: LineCost): boolean => line.condition === 'sale' || line.condition === 'clearance'

/** Slots down, builds across. Every slot says something in every build. */
export function includedRows(builds: AssembledBuild[], teller: Teller): FirstPage['included'] {
  return SLOTS.map((slot) => ({
    slot: SLOT_PLAIN_NAMES[slot],
    cells: builds.map((build) => build.rows.filter((row) => row.slot === slot).map((row) => includedItem(row, build, teller))),
  })).filter((row) => row.cells.some((cell) => cell.length > 0))
}

function includedItem(row: SlotRow, build: AssembledBuild, teller: Teller): IncludedItem {
  const quiet = (text: string): IncludedItem => ({ text, price: '', sale: false, quiet: true, open: false })
  if (row.answer === 'in_kit') return quiet(`in the kit: ${row.text}`)
  if (row.answer === 'owned') return quiet(`already owned: ${row.text}`)
  if (row.answer === 'not_needed') return quiet(row.text === 'not needed' ? row.text : `not needed: ${row.text}`)
  if (row.answer === 'missing') return { text: row.needs ?? row.text, price: '', sale: false, quiet: !row.required, open: row.required }
  const line = build.cost.lines.find((each) => each.lineId === row.lineId)
  if (line === undefined || line.todayMinor === null) return { text: row.text, price: 'no price', sale: false, quiet: false, open: true }
  return { text: row.text, price: teller.bare(line.todayMinor), sale: isSale(line), quiet: false, open: false }
}
