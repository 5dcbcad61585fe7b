import type { ChangesLearned } from './learned.ts'
import { steadyShelf } from './regular-changes.ts'
import { isSame, type ReportDay } from './timeline.ts'

/** Regular prices printed on sale tags, held against shelf prices before and behind that are one. */
export interface PrintedCount {
  told: number
  wrong: number
}

export function printedCount(reports: readonly ReportDay[]): PrintedCount {
  const shelf = steadyShelf(reports)
  const count = { told: 0, wrong: 0 }
  for (const { day, printedMinor } of reports) {
    if (Number.isNaN(printedMinor)) continue
    const before = shelf.findLast((at) => at.day <= day)
    const after = shelf.find((at) => at.day >= day)
    if (before === undefined || after === undefined || !isSame(before.priceMinor, after.priceMinor)) continue
    count.told += 1
    if (!isSame(printedMinor, before.priceMinor)) count.wrong += 1
  }
  return count
}

/** Before anything is known one in twenty is taken to be wrong, weighing as much as ten tags. From memory of flyers. */
export const falseShare = (counts: readonly PrintedCount[]): number =>
  (0.5 + counts.reduce((sum, { wrong }) => sum + wrong, 0)) / (10 + counts.reduce((sum, { told }) => sum + told, 0))

/** A regular price and the days since it stood. */
export interface KnownPrice {
  minor: number
  age: number
}

/** From which price a future sets out: the printed one with `chance`, else the shelf's. */
export interface RegularStart {
  shelf: KnownPrice
  printed: KnownPrice
  chance: number
}

/** False regular prices lie above the true one, by up to a half (in logarithms); below it hardly ever. */
const FALSE_DENSITY = { above: 1.9, below: 0.1 }

/**
 * A regular price printed on a sale tag after the last shelf price: the same says that it stood until then; another one that it changed, or
 * that the tag is false, whichever is likelier by how often and by how much prices change. It moves no tier (design rule 1), only what is expected.
 */
export function regularStart(shelf: KnownPrice, printed: KnownPrice | null, changes: ChangesLearned): RegularStart {
  if (printed === null || printed.age >= shelf.age) return { shelf, printed: shelf, chance: 0 }
  if (isSame(printed.minor, shelf.minor)) return { shelf: { ...shelf, age: printed.age }, printed, chance: 0 }
  const sizeLog = Math.log(printed.minor / shelf.minor)
  const changed = -Math.expm1((-changes.shape / changes.days) * (shelf.age - printed.age)) * sizeDensity(sizeLog, changes.sizesLog)
  const wrong = changes.falsePrinted * (sizeLog > 0 ? FALSE_DENSITY.above : FALSE_DENSITY.below)
  return { shelf, printed, chance: changed / (changed + wrong) }
}

/** Normal with the mean and the spread of the sizes seen, and a tenth of it five times as wide: changes have tails. */
function sizeDensity(sizeLog: number, sizes: readonly number[]): number {
  const mean = sizes.reduce((a, b) => a + b, 0) / sizes.length
  const sd = Math.max(0.02, Math.sqrt(sizes.reduce((sum, size) => sum + (size - mean) ** 2, 0) / sizes.length))
  const normal = (spread: number): number => Math.exp(-0.5 * ((sizeLog - mean) / spread) ** 2) / (spread * Math.sqrt(2 * Math.PI))
  return 0.9 * normal(sd) + 0.1 * normal(5 * sd)
}
