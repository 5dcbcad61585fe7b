import { SLOTS, type Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import { workBuild } from '../../../core/quote/worked-build.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import { illFittingSlots } from './candidates.ts'
import { editDraft, type DraftEdit } from './draft-edit.ts'

type Rows = Pick<WorkedBuild, 'rows'>

/** Slots that nobody has answered and that must be filled, or that a check condemns while they are empty; an empty build's included. */
export function unanswered(build: Pick<WorkedBuild, 'rows' | 'report'>): Slot[] {
  const condemned = illFittingSlots(build)
  return build.rows
    .filter((row) => row.answer === 'missing' && row.lineId === null && (row.required || condemned.includes(row.slot)))
    .map((row) => row.slot)
}

/** Whether nothing answers the slot yet: filling it goes on to the next, changing it goes back. */
export const isUnanswered = ({ rows }: Rows, slot: Slot): boolean =>
  rows.filter((row) => row.slot === slot).every((row) => row.answer === 'missing' && row.lineId === null)

/**
 * The open slot after this one, in the order a build is put together; from the end it begins anew. Undefined where none is open.
 *
 * @example slotAfter(['filter', 'heat'], 'heat') // 'filter'
 */
export function slotAfter(open: readonly Slot[], slot: Slot | null): Slot | undefined {
  const at = slot === null ? -1 : SLOTS.indexOf(slot)
  const others = open.filter((one) => one !== slot)
  return others.find((one) => SLOTS.indexOf(one) > at) ?? others[0]
}

/** What is open in a build once an edit is made: a kit fills several slots, a tank decides whether it needs a mat. */
export function openAfter(inputs: QuoteInputs, buildId: string, edit: DraftEdit, products: readonly Product[] = []): Slot[] {
  const draft = editDraft(inputs.draft, edit)
  const index = draft.builds.findIndex((build) => build.id === buildId)
  const known = new Set(inputs.products.map((product) => product.id))
  const all = [...inputs.products, ...products.filter((product) => !known.has(product.id))]
  return index === -1 ? [] : unanswered(workBuild({ ...inputs, draft, products: all }, index))
}
