import { echoesOf, type Echoes, type StateDay } from './echoes.ts'
import type { Unwatched } from './unwatched.ts'

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
/** So many days, their eve being `gap` days after what came before, on which nobody looked: silence on them says nothing. */
export interface AwayStep {
  what: 'away'
  gap: number
  days: number
}
export type SaleStep = ReportStep | EndStep | WindowStep | AwayStep

/** What one product at one store tells of its sales. */
export interface SaleSteps {
  /** What the first report told, on which all else is conditioned. */
  startsOnSale: boolean
  steps: SaleStep[]
  /** Watched days after the first report, and of these with a report. */
  days: number
  regularDays: number
  saleDays: number
  echoes: Echoes
}

/** What else is known of the store: windows in order of their days, stretches on which nobody looked. */
export interface StoreDays {
  windows: readonly WindowDays[]
  unwatched: readonly Unwatched[]
}

/**
 * Reports, windows of sale times and stretches that nobody watched in the order of their days, from the first report outside a window: that
 * one only conditions, since a record begins because there is a sale as often as not. Undefined where there is none.
 *
 * Units: day numbers. A window that begins inside another begins after it; one that touches a stretch that nobody watched tells nothing.
 */
export function saleSteps(reports: readonly StateDay[], { windows, unwatched }: StoreDays, asOf: number): SaleSteps | undefined {
  const begin = reports.find(({ day }) => !windows.some(({ first, last }) => first <= day && day <= last))
  if (begin === undefined) return undefined
  const after = reports.filter(({ day }) => day > begin.day)
  const steps: SaleStep[] = []
  let reached = begin.day
  let next = 0
  let away = 0
  const tellUpTo = (day: number): void => {
    for (let report = after[next]; report !== undefined && report.day <= day; report = after[next]) {
      steps.push({ what: report.onSale ? 'sale' : 'regular', gap: report.day - reached })
      reached = report.day
      next += 1
    }
  }
  for (const span of spansOf(windows, unwatched)) {
    const first = Math.max(span.first, reached + 1)
    const last = Math.min(span.last, asOf)
    if (first > last) continue
    tellUpTo(first - 1)
    const gap = first - 1 - reached
    const days = last - first + 1
    if (span.window === undefined) {
      steps.push({ what: 'away', gap, days })
      away += days
    } else {
      const inside: WindowStep['inside'] = []
      for (let report = after[next]; report !== undefined && report.day <= last; report = after[next]) {
        inside.push({ at: report.day - first + 1, onSale: report.onSale })
        next += 1
      }
      steps.push({ what: 'window', gap, window: span.window, days, inside, open: span.last >= asOf })
    }
    reached = last
  }
  tellUpTo(asOf)
  if (asOf > reached) steps.push({ what: 'end', gap: asOf - reached })
  const saleDays = after.filter(({ onSale }) => onSale).length
  const counts = {
    days: asOf - begin.day - away,
    regularDays: after.length - saleDays,
    saleDays,
    echoes: echoesOf([begin, ...after], asOf),
  }
  return { startsOnSale: begin.onSale, steps, ...counts }
}

interface Span extends Unwatched {
  window?: WindowDays
}

function spansOf(windows: readonly WindowDays[], unwatched: readonly Unwatched[]): Span[] {
  const watched = windows.filter((window) => !unwatched.some(({ first, last }) => first <= window.last && window.first <= last))
  const spans: Span[] = [...watched.map((window) => ({ first: window.first, last: window.last, window })), ...unwatched]
  return spans.sort((a, b) => a.first - b.first || (a.window && b.window && a.window.saleTimeId < b.window.saleTimeId ? -1 : 1))
}
