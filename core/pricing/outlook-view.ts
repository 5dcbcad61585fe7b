import type { CivilDate } from '../dates.ts'
import type { Likely } from './outlook/likely.ts'
import type { Advice, LineOutlook } from './outlook/line-outlook.ts'

/** Days ahead that anything is told of: further on the record says next to nothing. */
export const MOST_AHEAD_DAYS = 366

/** What a screen is told to expect of one line. Amounts in minor units of the install's currency, for all of the line, with tax where that was asked for; null where no price is known. */
export interface LineOutlookView {
  productId: string
  quantity: number
  advice: Advice
  /** The advice in words a beginner acts on. */
  title: string
  words: string
  /** Why, in one sentence. */
  reason: string
  noHurryUntil: CivilDate | null
  /** Today's price is that of a sale that runs, to this day where one is printed. */
  onSale: boolean
  saleLastDay: CivilDate | null
  payTodayMinor: number | null
  expectedPaidMinor: number | null
  paid10Minor: number | null
  paid90Minor: number | null
  /** To wait: so many in so many pay at most this. */
  likely: Likely | null
  /** What the tag of one then shows at most; null where its stores print tax differently. */
  likelyTagMinor: number | null
  /** 0 to 1, by the date. */
  chanceOfSale: number
  /** At or under this today; null where no price is worth more than the date's. */
  priceToBuyAtMinor: number | null
  /** The same for one unit as a tag shows it. */
  buyAtTagMinor: number | null
  /** The tag says the same at every store where it is sold; else the lowest of them is told. */
  tagsAgree: boolean
  nextSaleTime: { name: string; storeId: string; first: CivilDate; last: CivilDate } | null
  basis: LineOutlook['basis']
}

export interface OutlookView {
  asOf: CivilDate
  until: CivilDate
  /** Day of the record that this was learnt from; null where nothing was learnt yet, and then there are no lines. */
  learnedOn: CivilDate | null
  lines: LineOutlookView[]
  /** All lines together; null where one of them has no price. */
  total: { payTodayMinor: number; expectedPaidMinor: number; paid10Minor: number; paid90Minor: number } | null
}
