import { addDays, type CivilDate } from '../dates.ts'
import type { Reading } from '../quote/quote-view.ts'
import { READY_MG_PER_L } from './ready-reading.ts'
import type { SetupPlan } from './setup-plan.ts'

const FIGURES = ['ammoniaMgL', 'nitriteMgL', 'nitrateMgL', 'ph', 'khDegrees', 'temperatureC'] as const
export type ReadingFigure = (typeof FIGURES)[number]
export interface NewestFigures extends Record<ReadingFigure, number | null> {
  /** The newest day one of them was read on; null in an empty log. */
  takenOn: CivilDate | null
}

/** By day; of one day as they came, for the later test is the second look. */
const inOrder = (readings: readonly Reading[]): Reading[] =>
  readings
    .map((reading, index) => ({ reading, index }))
    .sort((a, b) => (a.reading.takenOn < b.reading.takenOn ? -1 : a.reading.takenOn > b.reading.takenOn ? 1 : a.index - b.index))
    .map(({ reading }) => reading)

/**
 * Where the water stands: of each figure the newest reading, so that a test of the temperature alone hides no ammonia.
 *
 * Errors: null for what was never read. Readings of one day count in the order given.
 *
 * @example newestFigures([{ ammoniaMgL: 6, … }, { ammoniaMgL: null, ph: 7, … }]).ammoniaMgL // 6
 */
export function newestFigures(readings: readonly Reading[]): NewestFigures {
  const newestFirst = inOrder(readings).reverse()
  const newest = (of: ReadingFigure): number | null => newestFirst.find((reading) => reading[of] !== null)?.[of] ?? null
  const figures = Object.fromEntries(FIGURES.map((of) => [of, newest(of)])) as Record<ReadingFigure, number | null>
  return { ...figures, takenOn: newestFirst[0]?.takenOn ?? null }
}

/**
 * True where the two newest days with both figures in the log follow one another and were good: ammonia and nitrite at 0.25 mg/L or less.
 *
 * Errors: none. Of several tests in a day the last counts. Source: common practice, the plan's own criterion.
 *
 * @example twoGoodDays([at('2026-11-20', 0, 0.25), at('2026-11-21', 0.25, 0)]) // true
 */
export function twoGoodDays(readings: readonly Reading[]): boolean {
  const byDay = new Map<CivilDate, boolean>()
  for (const { takenOn, ammoniaMgL, nitriteMgL } of inOrder(readings)) {
    if (ammoniaMgL === null || nitriteMgL === null) continue
    byDay.set(takenOn, ammoniaMgL <= READY_MG_PER_L && nitriteMgL <= READY_MG_PER_L)
  }
  const [before, last] = [...byDay].slice(-2)
  return before !== undefined && last !== undefined && before[1] && last[1] && addDays(before[0], 1) === last[0]
}

/** Whole days that the plan holds the full tank: it is drained on the first day after. */
export const leakHoldDays = ({ steps }: Pick<SetupPlan, 'steps'>): number => steps.find((step) => step.id === 'drain')?.earliestDay ?? 1

/**
 * Days by which the full tank was held too short, by the ticks of the fill and of the hold; 0 where it was held or is not over yet.
 *
 * Source: the plan's own hold, one day for a new tank and three for a used one.
 *
 * @example leakHoldShortDays(plan, [{ stepId: 'leak-fill', on: '2026-11-01' }, { stepId: 'leak-hold', on: '2026-11-01' }]) // 1
 */
export function leakHoldShortDays(plan: Pick<SetupPlan, 'steps'>, ticks: ReadonlyArray<{ stepId: string; on: CivilDate }>): number {
  const on = (stepId: string): CivilDate | undefined => ticks.find((tick) => tick.stepId === stepId)?.on
  const [filled, held] = [on('leak-fill'), on('leak-hold')]
  if (filled === undefined || held === undefined) return 0
  const holdDays = leakHoldDays(plan)
  const short = [...Array(holdDays).keys()].find((days) => addDays(filled, days) >= held)
  return short === undefined ? 0 : holdDays - short
}
