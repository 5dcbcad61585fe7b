import { isExtraSlot, type Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { WorkedBuild } from '../../../core/quote/revision.ts'
import { useDesk } from './desk-context.ts'
import type { DraftEdit } from './draft-edit.ts'
import { isUnanswered, openAfter, slotAfter } from './next-slot.ts'

interface Fetched {
  products: Product[]
  prices: PriceView[]
}

/** Answers a slot. One that was open goes on to the next open one, so that a build is filled without leaving the keys; a changed one closes. */
export function useAnswerSlot(build: WorkedBuild, slot: Slot): (edit: DraftEdit, fetched?: Fetched) => void {
  const { edit, open, priced, inputs, dialog } = useDesk()
  const settling = dialog?.at === 'cell' && dialog.want !== null
  return (answer, fetched = { products: [], prices: [] }) => {
    const next =
      isUnanswered(build, slot) && !isExtraSlot(slot) && !settling
        ? slotAfter(openAfter(inputs, build.id, answer, fetched.products), slot)
        : undefined
    priced(fetched.products, fetched.prices)
    edit(answer)
    open(next === undefined ? null : { at: 'cell', buildId: build.id, slot: next, want: null })
  }
}
