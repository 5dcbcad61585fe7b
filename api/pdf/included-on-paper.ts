import { SLOT_PLAIN_NAMES, SLOTS, type Slot } from '../../core/catalog/kinds.ts'
import type { LineCost } from '../../core/pricing/tiers.ts'
import type { AssembledBuild, SlotRow } from '../../core/quote/revision.ts'
import type { FirstPage, IncludedItem } from './paper.ts'
import type { Teller } from './teller.ts'

export const isSale = (line: LineCost): boolean => line.condition === 'sale' || line.condition === 'clearance'

/** The column of slots is narrow, and the product beside it says the rest. */
const NARROW_NAMES: Partial<Record<Slot, string>> = { treat_water: 'Conditioner', feed_cycle: 'Ammonia', protect_circuit: 'Power strip' }

/** Slots down, builds across. Every slot says something in every build. */
export function includedRows(builds: AssembledBuild[], teller: Teller): FirstPage['included'] {
  return SLOTS.map((slot) => ({
    slot: NARROW_NAMES[slot] ?? SLOT_PLAIN_NAMES[slot],
    cells: builds.map((build) => shownRows(build.rows, slot).map((row) => includedItem(row, build, teller))),
  })).filter((row) => row.cells.some((cell) => cell.length > 0))
}

/** A kit's tank goes with the kit, and a part that another stands in for is not used: both are told with the build's lines. */
function shownRows(rows: readonly SlotRow[], slot: Slot): SlotRow[] {
  const here = rows.filter((row) => row.slot === slot)
  const isKit = here.some((row) => row.answer === 'kit')
  return here.filter((row) => row.answer !== 'in_kit' || !(isKit || saysInKit(row)))
}

/** A kit's part that is not used says so itself, in the words of its row. */
export const saysInKit = (row: SlotRow): boolean => row.text.includes(', in the kit,')

function includedItem(row: SlotRow, build: AssembledBuild, teller: Teller): IncludedItem {
  const quiet = (short: string, more: string): IncludedItem => ({
    text: more === '' ? short : `${short}: ${more}`,
    short,
    price: '',
    sale: false,
    quiet: true,
    open: false,
  })
  if (row.answer === 'in_kit') return quiet('in the kit', row.text)
  if (row.answer === 'owned') return quiet('already owned', row.text)
  if (row.answer === 'not_needed') return quiet('not needed', row.text === 'not needed' ? '' : row.text)
  const plain = { short: '', sale: false, quiet: false, open: true }
  if (row.answer === 'missing') return { ...plain, text: row.needs ?? row.text, price: '', quiet: !row.required, open: row.required }
  if (row.ourPriceMinor !== undefined)
    return { ...plain, text: `${row.text}, our price`, price: teller.bare(row.ourPriceMinor), open: false }
  const line = build.cost.lines.find((each) => each.lineId === row.lineId)
  if (line === undefined || line.todayMinor === null) return { ...plain, text: row.text, price: 'no price' }
  return { ...plain, text: row.text, price: teller.bare(line.todayMinor), sale: isSale(line), open: false }
}
