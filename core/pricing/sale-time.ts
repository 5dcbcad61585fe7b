import { addDays, type CivilDate } from '../dates.ts'

/** When a sale is known to begin. Days are civil days of each store's own zone. */
export type SaleTimeRule =
  /** RFC 5545, like `FREQ=YEARLY;BYMONTH=11;BYDAY=FR;BYMONTHDAY=23,24,25,26,27,28,29`; `from` is its DTSTART. */
  | { kind: 'rule'; rule: string; from: CivilDate }
  /** So many days after a holiday of the store's country and subdivision (negative: before it), by its English name. */
  | { kind: 'holiday'; holiday: string; offsetDays: number }
  | { kind: 'dates'; firstDays: CivilDate[] }

/** When sales are known to happen at some stores. */
export interface SaleTime {
  id: string
  name: string
  when: SaleTimeRule
  /** Days it lasts, the first one counted. */
  lengthDays: number
  /** Stores it happens at; none: every store. */
  storeIds: string[]
  note: string | null
  version: number
}

/** One run of a sale time, both days inclusive. */
export interface SaleDays {
  first: CivilDate
  last: CivilDate
}

/**
 * The runs that touch the days from `from` to `to`, both inclusive, in order; a first day that is named twice is one run.
 *
 * Units: civil days. Range: a length of at least 1.
 *
 * @example runsOf(['2026-11-27'], 5, '2026-12-01', '2026-12-31') // [{ first: '2026-11-27', last: '2026-12-01' }]
 */
export const runsOf = (firstDays: readonly CivilDate[], lengthDays: number, from: CivilDate, to: CivilDate): SaleDays[] =>
  [...new Set(firstDays)]
    .toSorted()
    .map((first) => ({ first, last: addDays(first, lengthDays - 1) }))
    .filter(({ first, last }) => last >= from && first <= to)

/** What a run did by the club's record: what was reported, no more. Silence is not "no sale". */
export interface SaleRunRecord extends SaleDays {
  /** Stores at which somebody reported a sale in these days. */
  stores: number
  products: number
  sightings: number
  /** Middle one of the reported reductions against the newest shelf price before, 0 to 1; null where none is known. */
  medianDepth: number | null
}

/** One row of the sale calendar. */
export interface SaleCalendarRow {
  saleTime: SaleTime
  /** Coming runs, the same days of several stores together. */
  coming: Array<SaleDays & { storeIds: string[] }>
  /** Past runs that lie inside the record, newest first. */
  past: SaleRunRecord[]
}
