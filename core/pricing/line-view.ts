import type { LineOutlookView } from './outlook-view.ts'
import type { LineOutlook } from './outlook/line-outlook.ts'
import { sayAdvice, type AdviceReader, type UsedSeen } from './outlook/say-advice.ts'

/** A line's outlook as it travels: without what is a function. */
export type PlainLine = Omit<LineOutlook, 'priceToBuyAt'>

export interface ViewedWith {
  reader: AdviceReader
  /** Names of sale times by their id. */
  saleTimeNames: ReadonlyMap<string, string>
  /** Newest used price that counts at the line's stores, where one does. */
  used?: UsedSeen | undefined
  /** Bought wherever it costs least. */
  anyStore?: boolean | undefined
}

/** Whole minor units; null for what is not known. */
const whole = (amount: number): number | null => (Number.isFinite(amount) ? Math.round(amount) : null)

/** A line as a screen is told of it: in whole minor units and in words, null for what is not known. */
export function lineView(line: PlainLine, { reader, saleTimeNames, used, anyStore = false }: ViewedWith): LineOutlookView {
  const { productId, quantity, advice, noHurryUntil, onSale, saleLastDay, chanceOfSale, nextSaleTime: next, basis } = line
  const known = Number.isFinite(line.payTodayMinor)
  const nextSaleTime = next && {
    name: saleTimeNames.get(next.saleTimeId) ?? 'a sale time',
    storeId: next.storeId,
    first: next.first,
    last: next.last,
  }
  return {
    productId,
    quantity,
    advice,
    ...sayAdvice(line, reader, { used, nextSaleTime, anyStore }),
    noHurryUntil,
    onSale,
    saleLastDay,
    payTodayMinor: whole(line.payTodayMinor),
    expectedPaidMinor: known ? whole(line.expectedPaidMinor) : null,
    paid10Minor: known ? whole(line.paid10Minor) : null,
    paid90Minor: known ? whole(line.paid90Minor) : null,
    likely: line.likely,
    likelyTagMinor: line.likelyTagMinor,
    chanceOfSale: Number.isFinite(chanceOfSale) ? Math.min(1, Math.max(0, chanceOfSale)) : 0,
    priceToBuyAtMinor: known ? whole(line.priceToBuyAtMinor) : null,
    buyAtTagMinor: known ? whole(line.buyAtTagMinor) : null,
    tagsAgree: line.tagsAgree,
    nextSaleTime,
    basis,
  }
}
