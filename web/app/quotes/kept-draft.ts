import type { QuoteDraft } from '../../../core/quote/draft.ts'
import type { KeptDraft } from './desk-state.ts'

/** The part of the browser's storage that is used. */
export type Keep = Pick<Storage, 'getItem' | 'setItem' | 'removeItem'>

const keyOf = (quoteId: string) => `driploop.unsaved-quote.${quoteId}`

/** Keeps an unsaved draft in this tab until the server has it. Storage that is full or off is no reason to stop editing. */
export function keepDraft(storage: Keep, quoteId: string, kept: KeptDraft): boolean {
  try {
    storage.setItem(keyOf(quoteId), JSON.stringify(kept))
    return true
  } catch {
    return false
  }
}

export function forgetDraft(storage: Keep, quoteId: string): void {
  try {
    storage.removeItem(keyOf(quoteId))
  } catch {
    // Storage that cannot be written holds nothing to forget.
  }
}

/** What was kept, or null where nothing was or it cannot be read. */
export function keptDraft(storage: Keep, quoteId: string): KeptDraft | null {
  try {
    const text = storage.getItem(keyOf(quoteId))
    const value: unknown = text === null ? null : JSON.parse(text)
    return isKept(value) ? value : null
  } catch {
    return null
  }
}

function isKept(value: unknown): value is KeptDraft {
  if (typeof value !== 'object' || value === null) return false
  const { baseVersion, base, draft } = value as Partial<KeptDraft>
  return Number.isInteger(baseVersion) && isDraft(base) && isDraft(draft)
}

const isDraft = (value: unknown): value is QuoteDraft =>
  typeof value === 'object' &&
  value !== null &&
  Array.isArray((value as Partial<QuoteDraft>).builds) &&
  typeof (value as Partial<QuoteDraft>).need === 'object'
