import { drawDaysUntil, randomOf } from '../../../../core/pricing/outlook/random.ts'
import type { ReportDay } from '../../../../core/pricing/outlook/timeline.ts'

/** Reports of one product at one store: sales of a fixed length that begin with a daily chance, reported more often than regular days. */
export interface SaleProcess {
  ratePerYear: number
  saleDays: number
  days: number
  regularReportsPerYear: number
  reportOnSaleDay: number
}

/** The same seed and name give the same reports. */
export function reportsOf(process: SaleProcess, seed: number, name: string): ReportDay[] {
  const random = randomOf(seed, name)
  const chance = -Math.expm1(-process.ratePerYear / 365)
  // Begins long before the record, so that a sale may be running when it opens.
  let next = drawDaysUntil(random, chance) - 200
  let until = -1000
  const reports: ReportDay[] = []
  for (let day = -200; day < process.days; day += 1) {
    if (day === next) {
      until = day + process.saleDays - 1
      next = until + drawDaysUntil(random, chance)
    }
    const onSale = day <= until
    const seen = random() < (onSale ? process.reportOnSaleDay : process.regularReportsPerYear / 365)
    if (seen && day >= 0) reports.push({ day, onSale, saleMinor: onSale ? 800 : NaN, shelfMinor: onSale ? NaN : 1000, printedMinor: NaN })
  }
  return reports
}
