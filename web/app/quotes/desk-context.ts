import { createContext, useContext } from 'react'
import type { Slot } from '../../../core/catalog/kinds.ts'
import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { WorkedBuild, QuoteInputs } from '../../../core/quote/revision.ts'
import type { ReaderUnits } from '../../../core/units/quantity.ts'
import type { DeskEvent, DeskState } from './desk-state.ts'
import type { DraftEdit } from './draft-edit.ts'
import type { ExactKey } from './exact-fields.ts'
import type { Want } from './meets-want.ts'
import type { PackProposal } from './proposed-packs.tsx'

/** What lies open over the desk. */
export type DeskDialog =
  | { at: 'cell'; buildId: string; slot: Slot; want: Want | null; mix?: PackProposal }
  | { at: 'describe'; buildId: string }
  | { at: 'remove'; buildId: string }
  | { at: 'issue' }
  | { at: 'withdraw' }
  | { at: 'discard' }
  | { at: 'compare' }

/** Everything the parts of the desk share. */
export interface Desk {
  state: DeskState
  inputs: QuoteInputs
  builds: WorkedBuild[]
  /** The columns there is room for: every build, or on a phone the chosen one. */
  shown: WorkedBuild[]
  /** Accepted or withdrawn: shown, and nothing of it changes. */
  locked: boolean
  /** The build whose column is watered and whose report is shown. */
  chosen: WorkedBuild
  choose(buildId: string): void
  edit(edit: DraftEdit): void
  /** Catalog entries and prices a picker fetched: they take part in assembling from then on. */
  priced(products: Product[], prices: PriceView[]): void
  /** What is not an edit: take theirs, keep mine. */
  act(event: DeskEvent): void
  dialog: DeskDialog | null
  open(dialog: DeskDialog | null): void
  /** A question of the need that the report leads to, until it has the focus. */
  asked: ExactKey | null
  ask(key: ExactKey | null): void
  reader: ReaderUnits
  currency: string
}

const Context = createContext<Desk | null>(null)
export const DeskProvider = Context.Provider

/** The desk around this part. Throws outside one. */
export function useDesk(): Desk {
  const desk = useContext(Context)
  if (!desk) throw new Error('This part belongs on the desk')
  return desk
}

/** The dialog of one kind, if it is the one that lies open, and how it closes: the browser tells a dialog's close late, when another may lie open already. */
export function useDialog<At extends DeskDialog['at']>(at: At): { shown: Extract<DeskDialog, { at: At }> | null; close(): void } {
  const { dialog, open } = useDesk()
  const shown = dialog?.at === at ? (dialog as Extract<DeskDialog, { at: At }>) : null
  return { shown, close: () => shown && open(null) }
}
