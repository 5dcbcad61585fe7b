import { isExtraSlot, SLOT_OF, SLOTS, type Kind, type Slot } from '../catalog/kinds.ts'
import type { Conditions } from '../sizing/conditions.ts'
import type { Gear } from '../sizing/gear.ts'
import type { SizingReport } from '../sizing/report.ts'
import type { ReaderUnits } from '../units/quantity.ts'
import type { Build, BuildLine } from './draft.ts'
import { piecesOf, slotOfLine, type Piece, type ProductsById } from './kit-parts.ts'
import type { OurService } from './our-service.ts'
import { requirementOf } from './requirements.ts'
import type { SlotRow } from './revision.ts'
import { sayNotes } from './row-notes.ts'

const KIND_OF = Object.fromEntries(Object.entries(SLOT_OF).map(([kind, slot]) => [slot, kind])) as Record<Slot, Kind>

const counted = (quantity: number, name: string): string => (quantity === 1 ? name : `${quantity} × ${name}`)

function kitRow(line: BuildLine, products: ProductsById): SlotRow | null {
  if (line.answer === 'not_needed' || line.productId === null) return null
  const kit = products.get(line.productId)
  if (kit?.kind !== 'kit') return null
  const answer = line.answer === 'owned' ? 'owned' : 'kit'
  return {
    slot: 'hold_water',
    answer,
    lineId: line.id,
    kind: 'kit',
    text: counted(line.quantity, kit.name),
    productId: kit.id,
    quantity: line.quantity,
    required: true,
    needs: null,
    ...lineNoteOf(line),
  }
}

const lineNoteOf = (line: BuildLine): Pick<SlotRow, 'lineNote'> =>
  line.answer === 'buy' && line.note.trim() !== '' ? { lineNote: line.note.trim() } : {}

/** A part that is set aside asks nothing. */
function notesOf({ product, line, setAside }: Piece, units: ReaderUnits): Pick<SlotRow, 'notes'> {
  const spec = line.answer === 'owned' && line.spec ? { ...product.spec, ...line.spec } : product.spec
  const notes = setAside ? [] : sayNotes({ kind: product.kind, spec }, line.answer === 'owned', units)
  return notes.length > 0 ? { notes } : {}
}

function pieceRow(piece: Piece, units: ReaderUnits): SlotRow {
  const name = counted(piece.quantity, piece.product.name)
  const base = {
    slot: piece.slot,
    lineId: piece.line.id,
    kind: piece.product.kind,
    productId: piece.product.id,
    quantity: piece.quantity,
    required: true,
    needs: null,
    ...notesOf(piece, units),
  }
  const inKit = piece.line.answer === 'owned' ? 'owned' : 'in_kit'
  if (piece.kit) return { ...base, answer: inKit, text: piece.setAside ? `${name}, in the kit, not used` : name }
  return { ...base, answer: piece.line.answer === 'owned' ? 'owned' : 'buy', text: name, ...lineNoteOf(piece.line) }
}

/** Owned gear that is no product of the catalog: its slot says its kind. */
function ownNotes(line: Extract<BuildLine, { answer: 'owned' }>, units: ReaderUnits): Pick<SlotRow, 'notes'> {
  const notes = sayNotes({ kind: KIND_OF[line.slot], spec: line.spec ?? {} }, true, units)
  return notes.length > 0 ? { notes } : {}
}

function saidRow(line: BuildLine, slot: Slot, required: boolean, units: ReaderUnits): SlotRow | null {
  const base = { slot, lineId: line.id, kind: null, productId: null, required, needs: null }
  if (line.answer === 'not_needed') return { ...base, answer: 'not_needed', text: line.reason || 'not needed', quantity: 0 }
  if (line.answer === 'owned' && line.productId === null)
    return {
      ...base,
      answer: 'owned',
      text: counted(line.quantity, line.description || 'your own'),
      quantity: line.quantity,
      ...ownNotes(line, units),
    }
  return null
}

/** A line whose product is gone from the catalog still shows; it never disappears from the paper in silence. */
function lostRow(line: BuildLine, products: ProductsById): SlotRow | null {
  if (line.answer === 'not_needed' || line.productId === null || products.has(line.productId)) return null
  const slot = line.answer === 'owned' ? line.slot : 'hold_water'
  return {
    slot,
    answer: 'missing',
    lineId: line.id,
    kind: null,
    text: 'a product that is no longer in the catalog',
    productId: line.productId,
    quantity: line.quantity,
    required: true,
    needs: null,
  }
}

/** Told once, under the last of the slot's packs; an answer that brings none has nothing to tell. */
const withAmount = (rows: SlotRow[], amount: SlotRow['amount']): SlotRow[] =>
  rows.map((row, index) =>
    amount !== undefined && index === rows.length - 1 && row.answer !== 'not_needed' && row.answer !== 'missing' ? { ...row, amount } : row,
  )

/** Work at our own price; the catalog's services are lines like any other. */
const serviceRow = ({ id, name, quantity, priceMinor }: OurService): SlotRow => ({
  slot: 'services',
  answer: 'our_price',
  lineId: id,
  kind: 'service',
  text: counted(quantity, name),
  productId: null,
  quantity,
  required: false,
  needs: null,
  ourPriceMinor: quantity * priceMinor,
})

/** What is already known of a build when its rows are told. */
export interface WorkedOut {
  products: ProductsById
  conditions: Conditions
  gear: Gear
  report: SizingReport
  /** The reader's, for what a row says. */
  units: ReaderUnits
}

/**
 * One build as rows, in the order of SLOTS: every basic slot has at least one, an extra one only where it is filled or required. What nobody answered is `missing`, with what it
 * needs where the engine can say it (`needsOf`), or `not_needed` where the need itself makes it superfluous.
 */
export function slotRows(
  build: Build,
  { products, conditions, gear, report, units }: WorkedOut,
  needsOf: (slot: Slot) => string | null,
  amountOf: (slot: Slot) => SlotRow['amount'],
): SlotRow[] {
  const pieces = piecesOf(build, products)
  return SLOTS.flatMap((slot): SlotRow[] => {
    const requirement = requirementOf(slot, conditions, gear, report)
    const mine = build.lines.filter((line) => slotOfLine(line, products) === slot)
    const rows = [
      ...(slot === 'hold_water' ? build.lines.map((line) => kitRow(line, products)) : []),
      ...pieces.filter((piece) => piece.slot === slot).map((piece) => pieceRow(piece, units)),
      ...(slot === 'services' ? (build.services ?? []).map(serviceRow) : []),
      ...mine.map((line) => saidRow(line, slot, requirement.required, units)),
      ...build.lines.map((line) => lostRow(line, products)).filter((row) => row?.slot === slot),
    ].filter((row): row is SlotRow => row !== null)
    if (rows.length === 0 && isExtraSlot(slot) && !requirement.required) return []
    if (rows.length > 0) return withAmount(rows, amountOf(slot)).map((row) => ({ ...row, required: requirement.required }))
    const empty = { slot, lineId: null, kind: null, productId: null, quantity: 0, required: requirement.required }
    if (requirement.because !== null) return [{ ...empty, answer: 'not_needed', text: requirement.because, needs: null }]
    return [
      {
        ...empty,
        answer: 'missing',
        text: requirement.required ? 'not chosen yet' : 'not chosen',
        needs: requirement.required ? needsOf(slot) : null,
      },
    ]
  })
}
