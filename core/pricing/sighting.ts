import type { CivilDate } from '../dates.ts'

export const CONDITIONS = ['shelf', 'sale', 'clearance', 'used'] as const
export type Condition = (typeof CONDITIONS)[number]

/** Why a sighting waits for a second member (design rule 8). */
export interface Doubt {
  code: 'slipped_decimal' | 'far_from_record' | 'too_deep' | 'above_regular' | 'other_product'
  /** In words for a person: "ten times the usual price; a slipped decimal?" */
  words: string
}

/** One member's report of a price of a product at a store on a day. Never edited: withdrawn, disputed or confirmed. */
export interface Sighting {
  /** UUIDv7 made on the phone. */
  id: string
  productId: string
  storeId: string
  condition: Condition
  priceMinor: number
  /** The regular price printed on the tag beside it ("was"), if any. */
  printedRegularMinor: number | null
  /** Civil day in the store's time zone. */
  seenOn: CivilDate
  /** Last day of the sale, inclusive, if printed. */
  lastDay: CivilDate | null
  evidence: 'none' | 'tag' | 'receipt' | 'page'
  note: string | null
  reporterId: string
  /** Instant the server first took it, ISO 8601 UTC. */
  receivedAt: string
  doubt: Doubt | null
  withdrawn: boolean
  confirmations: number
  disputes: number
  /** First civil day on which somebody found it gone: no judgment of the report, which was right on its day. */
  goneOn?: CivilDate | null
  /** It came with a file: the word of a list, which nobody need have seen. */
  imported?: boolean
}

/** The part of a sighting that says what was charged and whether it counts: all that doubt and regular prices ask. */
export type SeenPrice = Pick<
  Sighting,
  | 'id'
  | 'storeId'
  | 'condition'
  | 'priceMinor'
  | 'printedRegularMinor'
  | 'seenOn'
  | 'reporterId'
  | 'doubt'
  | 'withdrawn'
  | 'confirmations'
  | 'disputes'
  | 'goneOn'
  | 'imported'
>

/**
 * Whether a sighting counts: not withdrawn; no more disputes than confirmations, if disputed; a doubted one only once a second member confirmed it.
 *
 * @example isAccepted({ ...sighting, doubt, confirmations: 0 }) // false: it waits for a second member
 */
export function isAccepted(sighting: Pick<Sighting, 'withdrawn' | 'doubt' | 'confirmations' | 'disputes'>): boolean {
  if (sighting.withdrawn) return false
  if (sighting.disputes > 0 && sighting.disputes >= sighting.confirmations) return false
  return sighting.doubt === null || sighting.confirmations > 0
}
