import { MAD_FACTOR, median } from '../robust-deviation.ts'
import type { ChangesLearned } from './learned.ts'
import { isSame, type ReportDay } from './timeline.ts'

/** Two shelf prices seen one after the other at a store: so many days apart, and ln of new ÷ old. */
export interface PriceInterval {
  days: number
  changeLog: number
}

/** A price that is gone and back within so many days was misread, or a sale that nobody called one. */
const BACK_AGAIN_DAYS = 150
/** Back means: by less than this share of how far it was gone. */
const BACK_SHARE = 0.35

/** Shelf prices of a store, oldest first, without those that stand alone, far from both neighbours, which are near each other. */
export function steadyShelf(reports: readonly ReportDay[]): Array<{ day: number; priceMinor: number }> {
  const shelf = reports
    .filter(({ shelfMinor }) => !Number.isNaN(shelfMinor))
    .map(({ day, shelfMinor }) => ({ day, priceMinor: shelfMinor }))
  return shelf.filter((here, index) => {
    const before = shelf[index - 1]
    const after = shelf[index + 1]
    if (before === undefined || after === undefined || after.day - before.day > BACK_AGAIN_DAYS) return true
    const gone = Math.log(here.priceMinor / before.priceMinor)
    const back = Math.log(here.priceMinor / after.priceMinor)
    const apart = Math.abs(Math.log(after.priceMinor / before.priceMinor))
    return gone * back <= 0 || apart >= BACK_SHARE * Math.min(Math.abs(gone), Math.abs(back))
  })
}

export function priceIntervals(reports: readonly ReportDay[]): PriceInterval[] {
  const shelf = steadyShelf(reports)
  return shelf.slice(1).map(({ day, priceMinor }, index) => {
    const before = shelf[index] as { day: number; priceMinor: number }
    return { days: day - before.day, changeLog: isSame(priceMinor, before.priceMinor) ? 0 : Math.log(priceMinor / before.priceMinor) }
  })
}

/** Before anything is known: a change in two years, as three quarters of a change seen in a year and a half. From memory of shelf tags. */
const FIRST_CHANGES = 0.75
const FIRST_DAYS = 548
/** Sizes taken where a kind has shown none: rises and falls by a few per cent, rises prevailing. From memory. */
const FIRST_SIZES = [-0.08, -0.03, 0.03, 0.05, 0.06, 0.1]
const ROUNDS = 40
/** So many sizes are kept: their quantiles, as fine as a range of a tenth asks. */
const KEPT_SIZES = 60

/**
 * Daily chance and sizes of changes of a regular price from interval-censored observations: that a price differs says that it changed at least
 * once since (design rule 1). Expectation and maximisation: of an interval with a change, λ t ÷ (1 − e^−λt) changes are expected.
 *
 * Units: days; logarithms. `first` is what is believed without any, weighing its own days.
 * Check value: all intervals alike, closed form λ = −ln(1 − share changed) ÷ t.
 */
export function learnChanges(
  intervals: readonly PriceInterval[],
  first?: { chance: number; days: number },
): Omit<ChangesLearned, 'falsePrinted'> {
  const days = first?.days ?? FIRST_DAYS
  const prior = first ? first.chance * first.days : FIRST_CHANGES
  const exposure = intervals.reduce((sum, interval) => sum + interval.days, 0)
  const changed = likelyChanges(intervals)
  let chance = prior / days
  const expected = (): number[] => changed.map((interval) => (chance * interval.days) / -Math.expm1(-chance * interval.days))
  for (let round = 0; round < ROUNDS; round += 1) chance = (prior + expected().reduce((a, b) => a + b, 0)) / (days + exposure)
  const changes = expected()
  // Of what censoring hides, the changes beyond the first of an interval, nothing was counted: the precision is that of the intervals.
  const counted = prior + changed.length
  return { shape: counted, days: counted / chance, ...sizesOf(changed, changes) }
}

/** So many robust deviations from the middle a change is taken for a misread price, and its interval for one without: misreading is rare, so that most are none. */
const FAR_DEVIATIONS = 4.5
const LEAST_SPREAD_LOG = 0.03

function likelyChanges(intervals: readonly PriceInterval[]): PriceInterval[] {
  const changed = intervals.filter(({ changeLog }) => changeLog !== 0)
  if (changed.length < 5) return changed.filter(({ changeLog }) => Math.abs(changeLog) < 0.4)
  const centre = median(changed.map(({ changeLog }) => changeLog))
  const spread = Math.max(LEAST_SPREAD_LOG, MAD_FACTOR * median(changed.map(({ changeLog }) => Math.abs(changeLog - centre))))
  return changed.filter(({ changeLog }) => Math.abs(changeLog - centre) < FAR_DEVIATIONS * spread)
}

function sizesOf(changed: readonly PriceInterval[], expected: readonly number[]): Pick<ChangesLearned, 'sizesLog' | 'meanError'> {
  if (changed.length < 3) return { sizesLog: FIRST_SIZES, meanError: 0.03 }
  const mean = changed.reduce((sum, { changeLog }) => sum + changeLog, 0) / expected.reduce((a, b) => a + b, 0)
  // An interval of one change shows a size; of several only their sum. It weighs by the chance that there was one.
  const weighted = changed
    .map(({ changeLog }, index) => {
      const many = expected[index] as number
      return { value: changeLog / Math.sqrt(many), weight: 1 / many }
    })
    .sort((a, b) => a.value - b.value)
  const whole = weighted.reduce((sum, { weight }) => sum + weight, 0)
  const middle = weighted.reduce((sum, { value, weight }) => sum + value * weight, 0) / whole
  const variance = weighted.reduce((sum, { value, weight }) => sum + weight * (value - middle) ** 2, 0) / whole
  const sizesLog = quantilesOf(weighted, Math.min(KEPT_SIZES, Math.max(changed.length, 12))).map((size) => size - middle + mean)
  return { sizesLog, meanError: Math.sqrt((variance + 0.03 ** 2) / changed.length) }
}

/** The middles of so many equal shares of a weighted sample, which must be in rising order. */
export function quantilesOf(sorted: ReadonlyArray<{ value: number; weight: number }>, count: number): number[] {
  const whole = sorted.reduce((sum, { weight }) => sum + weight, 0)
  const into: number[] = []
  let reached = 0
  for (const { value, weight } of sorted) {
    reached += weight
    while (into.length < count && ((into.length + 0.5) / count) * whole <= reached + 1e-12) into.push(value)
  }
  while (into.length < count) into.push(sorted.at(-1)?.value ?? 0)
  return into
}
