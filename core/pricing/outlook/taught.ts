import { printedCount, type PrintedCount } from './printed-regular.ts'
import { priceIntervals, type PriceInterval } from './regular-changes.ts'
import { saleDepths, type SaleDepth } from './sale-depth.ts'
import type { StateDay } from './echoes.ts'
import type { Timeline } from './timeline.ts'

/** Days with a report at a store, oldest first: twice the day number, and one more where a sale was told. A record of millions holds them all. */
export interface StoreTaught {
  storeId: string
  packedDays: readonly number[]
}

/** All that is kept of a product while others are read: its states by day, and what its prices told. */
export interface ProductTaught {
  productId: string
  /** In the order of their ids. */
  stores: readonly StoreTaught[]
  /** Those in which the price changed, in their order; all others are one. */
  intervals: readonly PriceInterval[]
  printed: PrintedCount
  depths: readonly SaleDepth[]
  reportDays: number
  saleDays: number
}

/** What report days teach, product by product: each pair once, those of a product side by side. */
export const taughtBy = (lines: readonly Timeline[]): ProductTaught[] =>
  [...Map.groupBy(lines, ({ productId }) => productId)].map(([productId, own]) => ({
    productId,
    stores: own.map(({ storeId, reports }) => ({ storeId, packedDays: reports.map(({ day, onSale }) => day * 2 + (onSale ? 1 : 0)) })),
    intervals: withUnchangedAsOne(own.flatMap(({ reports }) => priceIntervals(reports))),
    printed: sumOf(own.map(({ reports }) => printedCount(reports))),
    depths: own.flatMap(({ reports }) => saleDepths(reports)),
    reportDays: own.reduce((sum, { reports }) => sum + reports.length, 0),
    saleDays: own.reduce((sum, { reports }) => sum + reports.filter(({ onSale }) => onSale).length, 0),
  }))

export const stateDays = ({ packedDays }: StoreTaught): StateDay[] =>
  packedDays.map((packed) => ({ day: Math.floor(packed / 2), onSale: packed % 2 !== 0 }))

/** Of an interval without a change only its days count, which are whole: their sum tells the same to the last bit. */
function withUnchangedAsOne(intervals: readonly PriceInterval[]): PriceInterval[] {
  const changed = intervals.filter(({ changeLog }) => changeLog !== 0)
  const days = intervals.reduce((sum, { days, changeLog }) => (changeLog === 0 ? sum + days : sum), 0)
  return days > 0 ? [...changed, { days, changeLog: 0 }] : changed
}

const sumOf = (counts: readonly PrintedCount[]): PrintedCount => ({
  told: counts.reduce((sum, { told }) => sum + told, 0),
  wrong: counts.reduce((sum, { wrong }) => sum + wrong, 0),
})
