import type { Build, QuoteDraft } from '../../../../core/quote/draft.ts'
import type { Need } from '../../../../core/quote/need.ts'
import type { QuoteView } from '../../../../core/quote/quote-view.ts'

/** A draft to edit: two builds, one suggested. Own invention. */
const need: Need = {
  lengthMm: 900, commonSizeId: null, place: 'living room', livestockId: 'small-tropical', livestockNote: '', budgetMinor: 60000, byDate: null, look: 'any',
  storeIds: [], usedAccepted: false, exact: { coldestRoomC: 17 },
} // prettier-ignore

export const buildOf = (id: string, name: string): Build => ({
  id,
  name,
  why: 'The most water.',
  lines: [
    { id: `${id}-tank`, answer: 'buy', productId: 'tank-1', quantity: 1, storeId: null, note: '' },
    { id: `${id}-heat`, answer: 'buy', productId: 'heater-1', quantity: 2, storeId: null, note: '' },
    { id: `${id}-mat`, answer: 'not_needed', slot: 'bed_glass', reason: 'rimmed tank' },
  ],
})

export const sampleDraft: QuoteDraft = {
  title: 'A planted tank',
  need,
  builds: [buildOf('a', 'Long and deep'), buildOf('b', 'One box')],
  suggestion: { buildId: 'b', reason: 'least money' },
  standsUntil: null,
  note: '',
}

export const sampleView = (version: number, draft: QuoteDraft): QuoteView => ({
  draft, products: [], stores: [], prices: [], asOf: '2026-10-20', id: 'q1', number: null, state: 'draft', version, advisor: 'Bram Ockley',
  savedAt: '2026-10-20T10:42:00Z', revisions: [], answer: null, links: null,
  customer: { id: 'c1', name: 'Ines Tillish', reach: '', note: '', gear: [], erasedOn: null, version: 1 },
  install: {
    name: 'Tarnwick Aquarium Club', mode: 'club', currency: 'USD', country: 'US', timeZone: 'America/Chicago', units: { system: 'us', gallon: 'us', decimal: '.' },
    contact: 'ask the club, 555-0100', paper: 'letter', energyPriceMinor: 16, circuitVoltageV: 120, circuitCurrentA: 15,
  },
}) // prettier-ignore
