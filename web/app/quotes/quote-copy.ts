import type { CivilDate } from '../../../core/dates.ts'
import type { Region } from '../../../core/catalog/region.ts'
import type { QuoteDraft } from '../../../core/quote/draft.ts'

/**
 * The draft of a new quote made from one that is closed: the same need and builds. A last day that is past is asked anew, a region that was
 * taken out since is left out, so that the stores that are ticked stand.
 *
 * @example copiedDraft({ ...draft, standsUntil: '2026-10-01' }, { asOf: '2026-10-20' }).standsUntil // null
 */
export const copiedDraft = (
  draft: QuoteDraft,
  { asOf, regions = [] }: { asOf: CivilDate; regions?: readonly Region[] | undefined },
): QuoteDraft => ({
  ...draft,
  ...(draft.need.regionId && !regions.some(({ id }) => id === draft.need.regionId) && { need: { ...draft.need, regionId: null } }),
  standsUntil: draft.standsUntil !== null && draft.standsUntil >= asOf ? draft.standsUntil : null,
})
