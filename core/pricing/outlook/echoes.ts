import type { ReportDay } from './timeline.ts'

/** What state a report told on a day. */
export type StateDay = Pick<ReportDay, 'day' | 'onSale'>

/** A price that somebody told is told again by others who read of it: within so many days, from memory of such records. */
const ECHO_DAYS = 3

/** Reports of the same state within a few days of one before, and the days on which one might have been. */
export interface Echoes {
  sale: number
  regular: number
  /** Days shortly after a regular report, up to the next report; `regular` of them had one. */
  regularDays: number
}

/** Of reports in the order of their days; `asOf` ends the record. The first one echoes nothing. */
export function echoesOf(reports: readonly StateDay[], asOf: number): Echoes {
  const echoes = { sale: 0, regular: 0, regularDays: 0 }
  reports.forEach(({ day, onSale }, index) => {
    const next = reports[index + 1]
    const isEcho = next !== undefined && next.onSale === onSale && next.day - day <= ECHO_DAYS
    if (isEcho) echoes[onSale ? 'sale' : 'regular'] += 1
    if (!onSale) echoes.regularDays += Math.min(ECHO_DAYS, (isEcho ? next.day : (next?.day ?? asOf + 1) - 1) - day)
  })
  return echoes
}

/** Days without an echo that are believed beforehand. */
const FIRST_DAYS = 100

/**
 * Chance a day that a report brings another: what shortly after regular reports is reported more than elsewhere. It is the same on a sale, whose
 * reports would else be taken for signs that every sale is reported.
 *
 * `products` with their chance of a report on a regular day. Range: 0 to 1.
 */
export function echoChance(products: ReadonlyArray<{ echoes: readonly Echoes[]; regularChance: number }>): number {
  let more = 0
  let days = FIRST_DAYS
  for (const { echoes, regularChance } of products)
    for (const { regular, regularDays } of echoes) {
      more += regular - regularChance * regularDays
      days += regularDays * (1 - regularChance)
    }
  return Math.max(0, more / days)
}
