import type { ReportDay } from './timeline.ts'

/** A window of a sale time at a store, in day numbers, both inclusive. */
export interface WindowDays {
  saleTimeId: string
  first: number
  last: number
}

/** A report so many days after what came before. */
export interface ReportStep {
  what: 'regular' | 'sale'
  gap: number
}
/** Silence to the end of the record. */
export interface EndStep {
  what: 'end'
  gap: number
}
/** A window of a sale time: `gap` days after what came before is its eve. */
export interface WindowStep {
  what: 'window'
  gap: number
  window: WindowDays
  /** Its days inside the record. */
  days: number
  /** Reports on its days, 1 being the first. */
  inside: Array<{ at: number; onSale: boolean }>
  /** It reaches the end of the record or goes on beyond. */
  open: boolean
}
export type SaleStep = ReportStep | EndStep | WindowStep

/** What one product at one store tells of its sales. */
export interface SaleSteps {
  /** What the first report told, on which all else is conditioned. */
  startsOnSale: boolean
  steps: SaleStep[]
  /** Days after the first report, and of these with a report. */
  days: number
  regularDays: number
  saleDays: number
}

/**
 * Reports and windows of sale times in the order of their days, from the first report outside a window: that one only conditions, since a
 * record begins because there is a sale as often as not. Undefined where there is none.
 *
 * Units: day numbers. Windows must be of the same store, in order; one that begins inside another begins after it.
 */
export function saleSteps(reports: readonly ReportDay[], windows: readonly WindowDays[], asOf: number): SaleSteps | undefined {
  const begin = reports.find(({ day }) => !windows.some(({ first, last }) => first <= day && day <= last))
  if (begin === undefined) return undefined
  const after = reports.filter(({ day }) => day > begin.day)
  const steps: SaleStep[] = []
  let reached = begin.day
  let next = 0
  const tellUpTo = (day: number): void => {
    for (let report = after[next]; report !== undefined && report.day <= day; report = after[next]) {
      steps.push({ what: report.onSale ? 'sale' : 'regular', gap: report.day - reached })
      reached = report.day
      next += 1
    }
  }
  for (const window of windows) {
    const first = Math.max(window.first, reached + 1)
    const last = Math.min(window.last, asOf)
    if (first > last) continue
    tellUpTo(first - 1)
    const inside: WindowStep['inside'] = []
    for (let report = after[next]; report !== undefined && report.day <= last; report = after[next]) {
      inside.push({ at: report.day - first + 1, onSale: report.onSale })
      next += 1
    }
    steps.push({ what: 'window', gap: first - 1 - reached, window, days: last - first + 1, inside, open: window.last >= asOf })
    reached = last
  }
  tellUpTo(asOf)
  if (asOf > reached) steps.push({ what: 'end', gap: asOf - reached })
  const saleDays = after.filter(({ onSale }) => onSale).length
  return { startsOnSale: begin.onSale, steps, days: asOf - begin.day, regularDays: after.length - saleDays, saleDays }
}
