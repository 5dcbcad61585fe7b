/**
 * The day of a step as screen and paper say it. Day 1 is the day you start.
 *
 * Units:  days after the start, 0 and above; null where readings decide and no day is promised.
 *
 * @example sayStepDay(0) // 'day 1'
 * @example sayStepDay(1) // 'day 2 at the earliest'
 */
export function sayStepDay(earliestDay: number | null): string {
  if (earliestDay === null) return 'by the readings'
  return earliestDay === 0 ? 'day 1' : `day ${earliestDay + 1} at the earliest`
}

/** The rule itself, said once where days are listed. */
export const DAY_ONE = 'Day 1 is the day you start.'
