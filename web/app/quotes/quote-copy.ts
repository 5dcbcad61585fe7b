import type { CivilDate } from '../../../core/dates.ts'
import type { QuoteDraft } from '../../../core/quote/draft.ts'

/**
 * The draft of a new quote made from one that is closed: the same need and builds. A last day that is past is asked anew.
 *
 * @example copiedDraft({ ...draft, standsUntil: '2026-10-01' }, '2026-10-20').standsUntil // null
 */
export const copiedDraft = (draft: QuoteDraft, today: CivilDate): QuoteDraft => ({
  ...draft,
  standsUntil: draft.standsUntil !== null && draft.standsUntil >= today ? draft.standsUntil : null,
})
