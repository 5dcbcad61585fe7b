import type { QuoteDraft } from './draft.ts'
import type { Need } from './need.ts'

/** The livestock most people mean when they say "a fish tank". */
const FIRST_LIVESTOCK_ID = 'small-tropical'

/** A need in which nothing was answered yet. */
export function emptyNeed(): Need {
  return {
    lengthMm: null, commonSizeId: null, place: '', livestockId: FIRST_LIVESTOCK_ID, livestockNote: '', budgetMinor: null, byDate: null, look: 'any', storeIds: [], usedAccepted: false, exact: {},
  } // prettier-ignore
}

/** A draft with one empty build, to be named after its tank; its id comes from the caller, since ids are made outside the core. */
export function emptyDraft(buildId: string): QuoteDraft {
  return {
    title: '',
    need: emptyNeed(),
    builds: [{ id: buildId, name: '', why: '', lines: [] }],
    suggestion: null,
    standsUntil: null,
    note: '',
  }
}
