import type { Product } from '../../../core/catalog/product.ts'
import type { PriceView } from '../../../core/pricing/price-view.ts'
import type { QuoteDraft } from '../../../core/quote/draft.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { editDraft, type DraftEdit } from './draft-edit.ts'
import { mergeDrafts, type Merged } from './draft-merge.ts'
import { sameValue } from './same-value.ts'
import { isClosed } from './saving-words.ts'
import { slotsBy } from './slot-of-line.ts'

/** How the draft on the screen stands to the one on the server. */
export type Saving =
  | { state: 'saved' }
  | { state: 'edited' }
  | { state: 'sending'; sent: QuoteDraft }
  /** Not saved: no signal, or refused. `words` says which; the change is kept. */
  | { state: 'failed'; words: string }
  /** Someone saved in between. Nothing is sent until the advisor chooses. */
  | { state: 'conflict'; theirs: QuoteView }
  /** Accepted or withdrawn meanwhile: the change can go to a new quote, or be dropped. The screen shows what is closed. */
  | { state: 'closed'; mine: QuoteDraft }
  /** Somebody discarded the quote, which was never issued: what is on the screen is all that is left of it. */
  | { state: 'gone' }

export interface DeskState {
  /** The quote as the server last gave it; its draft is what edits are based on. */
  view: QuoteView
  draft: QuoteDraft
  /** Catalog and prices for assembling: the server's, and what pickers fetched since. */
  products: Product[]
  prices: PriceView[]
  saving: Saving
}

export type DeskEvent =
  | { type: 'edit'; edit: DraftEdit }
  | { type: 'sending' }
  | { type: 'stored'; view: QuoteView }
  | { type: 'failed'; words: string }
  | { type: 'conflict'; theirs: QuoteView }
  | { type: 'closed'; theirs: QuoteView }
  | { type: 'gone' }
  | { type: 'take_theirs' }
  /** Lets go of a change that a closed quote cannot take, or of a quote that is gone. */
  | { type: 'discard' }
  | { type: 'keep_mine' }
  /** The server's copy after issue, withdrawal or reload, with nothing unsaved here. */
  | { type: 'reloaded'; view: QuoteView }
  /** The links were made anew: no part of the draft, nor of its version. */
  | { type: 'links'; links: QuoteView['links'] }
  | { type: 'priced'; products: Product[]; prices: PriceView[] }

/** What was kept in this browser from an earlier visit and never reached the server. */
export interface KeptDraft {
  baseVersion: number
  base: QuoteDraft
  draft: QuoteDraft
}

/** The desk as it opens: with the change that was kept here, if it still differs from what the server has. */
export function openDesk(view: QuoteView, kept: KeptDraft | null): DeskState {
  const state: DeskState = { view, draft: view.draft, products: view.products, prices: view.prices, saving: { state: 'saved' } }
  if (!kept || sameValue(kept.draft, view.draft)) return state
  if (isClosed(view.state)) return { ...state, saving: { state: 'closed', mine: kept.draft } }
  if (kept.baseVersion === view.version) return { ...state, draft: kept.draft, saving: { state: 'edited' } }
  return {
    ...state,
    view: { ...view, version: kept.baseVersion, draft: kept.base },
    draft: kept.draft,
    saving: { state: 'conflict', theirs: view },
  }
}

/** One step of the desk. A change made while another is on its way is kept and sent after it; a closed quote takes none. */
export function deskReducer(state: DeskState, event: DeskEvent): DeskState {
  switch (event.type) {
    case 'edit': {
      if (isClosed(state.view.state)) return state
      const draft = editDraft(state.draft, event.edit)
      if (draft === state.draft) return state
      const busy = ['sending', 'conflict', 'gone'].includes(state.saving.state)
      return { ...state, draft, saving: busy ? state.saving : { state: 'edited' } }
    }
    case 'sending':
      return { ...state, saving: { state: 'sending', sent: state.draft } }
    case 'stored':
      return stored(state, event.view)
    case 'failed':
      return { ...state, saving: { state: 'failed', words: event.words } }
    case 'conflict':
      return { ...state, saving: { state: 'conflict', theirs: event.theirs } }
    case 'closed':
      return fresh(state, event.theirs, event.theirs.draft, closedWith(state.draft, event.theirs.draft))
    case 'gone':
      return { ...state, saving: { state: 'gone' } }
    case 'discard':
      return state.saving.state === 'closed' || state.saving.state === 'gone' ? { ...state, saving: { state: 'saved' } } : state
    case 'take_theirs':
      return state.saving.state === 'conflict' ? fresh(state, state.saving.theirs, state.saving.theirs.draft, { state: 'saved' }) : state
    case 'keep_mine': {
      if (state.saving.state !== 'conflict') return state
      const { theirs } = state.saving
      return fresh(state, theirs, mergeWith(state, theirs).draft, { state: 'edited' })
    }
    case 'reloaded':
      return fresh(state, event.view, event.view.draft, { state: 'saved' })
    case 'links':
      return { ...state, view: { ...state.view, links: event.links } }
    case 'priced':
      return {
        ...state,
        products: joinBy(state.products, event.products, (p) => p.id),
        prices: joinBy(state.prices, event.prices, priceKey),
      }
  }
}

/** My change laid over what was saved meanwhile. */
export const mergeWith = ({ view, draft, products }: DeskState, theirs: QuoteView): Merged =>
  mergeDrafts(view.draft, draft, theirs.draft, slotsBy(products, theirs.products))

const closedWith = (mine: QuoteDraft, theirs: QuoteDraft): Saving =>
  sameValue(mine, theirs) ? { state: 'saved' } : { state: 'closed', mine }

function stored(state: DeskState, view: QuoteView): DeskState {
  const sent = state.saving.state === 'sending' ? state.saving.sent : state.draft
  const changedSince = state.draft !== sent
  return fresh(state, view, changedSince ? state.draft : keepShape(state.draft, view.draft), { state: changedSince ? 'edited' : 'saved' })
}

/** The object on screen where the server has the same, so that nothing is computed again after a save. */
const keepShape = (mine: QuoteDraft, servers: QuoteDraft): QuoteDraft => (sameValue(mine, servers) ? mine : servers)

function fresh(state: DeskState, view: QuoteView, draft: QuoteDraft, saving: Saving): DeskState {
  const products = joinBy(state.products, view.products, (product) => product.id)
  return { view, draft, products, prices: joinBy(state.prices, view.prices, priceKey), saving }
}

const priceKey = (price: PriceView) => `${price.productId} ${price.storeId}`

/** Newer items take the place of older ones with the same key; the old list itself where nothing changed. */
function joinBy<T>(older: T[], newer: T[], key: (item: T) => string): T[] {
  const all = new Map(older.map((item) => [key(item), item]))
  let changed = false
  for (const item of newer) {
    if (sameValue(all.get(key(item)), item)) continue
    all.set(key(item), item)
    changed = true
  }
  return changed ? [...all.values()] : older
}
