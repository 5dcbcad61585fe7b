import type { Store } from '../../../core/catalog/store.ts'
import type { BoardRow, SightingRow } from '../../../core/pricing/record.ts'

let made = 0

/** One row of the board, a shelf price that stands at its regular one. */
export function boardRow(sighting: Partial<SightingRow>, part: Partial<BoardRow> = {}): BoardRow {
  const whole: SightingRow = {
    id: `id-${(made += 1)}`, productId: 'p', storeId: 'upriver', condition: 'shelf', priceMinor: 18999, printedRegularMinor: null, seenOn: '2026-09-22', lastDay: null, evidence: 'none', note: null,
    reporterId: 'r1', receivedAt: '2026-09-22T10:00:00Z', doubt: null, withdrawn: false, confirmations: 0, disputes: 0, productName: 'Pellick C-1800', storeName: 'Upriver', reporterName: 'Noor Fenwick',
    own: false, mayVote: true, myVote: null, withdrawnReason: null, ...sighting,
  } // prettier-ignore
  return { sighting: whole, kind: 'filter', regularMinor: whole.priceMinor, underRegular: 0, over: false, ...part }
}

export const storeOf = (id: string, taxBasisPoints = 0, pricesIncludeTax = false): Store => ({
  id, name: id, kind: 'local', town: null, country: 'US', subdivision: null, timeZone: 'America/New_York', taxBasisPoints, pricesIncludeTax, deliveryTaxed: false,
  delivery: { kind: 'pickup_only' }, returnDays: null, note: null, archived: false, version: 1,
}) // prettier-ignore
