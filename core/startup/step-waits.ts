import { addDays, daysBetween, sayDate, yearOf, type CivilDate } from '../dates.ts'
import { phrase, type Phrase } from '../units/quantity.ts'
import { READY_MG_PER_L } from './ready-reading.ts'
import { tickedOn, type SetupLog } from './setup-log.ts'

/** A dose and its reading 24 h later, twice, one after the other (common practice). */
const READY_DAYS = 2
/** Two groups of animals with two weeks of tests after each, as the step of the first month asks (common practice). */
const FIRST_MONTH_DAYS = 28
/** Steps after which the tank runs: the day of running counts from the last of them. */
const RUNNING_STEPS = ['fill', 'heater'] as const
const DOSE_STEPS = ['first-ammonia', 'second-dose'] as const

/** Until when, as a sentence ends: by its date, since the day that is judged may be a past one. @example untilDay('2026-12-01', 1) // 'until Dec 2' */
export const untilDay = (judged: CivilDate, daysLeft: number): string => `until ${sayDate(addDays(judged, daysLeft), yearOf(judged))}`

/** Nothing where `days` have passed since `from`; else until when. */
function remains(from: CivilDate, days: number, today: CivilDate): string | null {
  const left = days - daysBetween(from, today)
  return left <= 0 ? null : untilDay(today, left)
}

const latestOf = (log: SetupLog, steps: readonly string[]): CivilDate | undefined =>
  steps.flatMap((stepId) => tickedOn(log, stepId) ?? []).sort().at(-1) // prettier-ignore

/**
 * The day of running before the thermometer is read. A plan without the step of the fill waits for nothing.
 *
 * Units:  civil dates; of days only whole ones are known, and the next day is taken for 24 h.
 * Source: the step's own day of running; common practice (a thermometer is checked after 24 h, before any chemistry).
 *
 * @example ranShort({ …, ticks: [{ stepId: 'fill', on: today }], today }).length // 1
 */
export function ranShort(log: SetupLog): Phrase[] {
  if (!log.plan.steps.some(({ id }) => id === 'fill')) return []
  const since = latestOf(log, RUNNING_STEPS)
  if (since === undefined || tickedOn(log, 'fill') === undefined)
    return [phrase`The fill is not ticked: the day of running begins when filter and heater run.`]
  const wait = remains(since, 1, log.today)
  return wait === null
    ? []
    : [
        phrase`Filled and warmed on this very day: a weak pump, a slow leak or a thermostat that lies shows only after a day. Run it ${wait}.`,
      ]
}

const NOT_DOSED = phrase`The first ammonia dose is not ticked: before it every reading of zero is only tap water.`

/** Readings of a later day than the first dose: those of its own day may be from before it. */
function afterDose(log: SetupLog): SetupLog['readings'] | undefined {
  const dosedOn = tickedOn(log, 'first-ammonia')
  return dosedOn === undefined ? undefined : log.readings.filter(({ takenOn }) => takenOn > dosedOn)
}

/**
 * The daily test: ammonia and nitrite, each read on a later day than the first dose.
 *
 * Source: the step's own words ("each day ammonia, nitrite"); common practice.
 *
 * @example notTested({ …, ticks: [{ stepId: 'first-ammonia', on: '2026-11-02' }], readings: [] }).length // 1
 */
export function notTested(log: SetupLog): Phrase[] {
  const since = afterDose(log)
  if (since === undefined) return [NOT_DOSED]
  const tested = since.some(({ ammoniaMgL }) => ammoniaMgL !== null) && since.some(({ nitriteMgL }) => nitriteMgL !== null)
  return tested
    ? []
    : [phrase`No test of ammonia and nitrite from a day after the first dose is in the log: only the figures show where the tank is.`]
}

/**
 * The dose that is eaten before the next: ammonia at 0.25 mg/L or less on a later day than the first dose.
 *
 * Units:  mg/L. Source: the step's own criterion; common practice.
 *
 * @example notEaten({ …, readings: [{ takenOn: '2026-11-09', ammoniaMgL: 0.25, … }] }) // []: dosed on the 2nd
 */
export function notEaten(log: SetupLog): Phrase[] {
  const since = afterDose(log)
  if (since === undefined) return [NOT_DOSED]
  const eaten = since.some(({ ammoniaMgL }) => ammoniaMgL !== null && ammoniaMgL <= READY_MG_PER_L)
  return eaten
    ? []
    : [
        phrase`No test since the first dose shows ammonia at ${READY_MG_PER_L} mg/L or less: a dose on top of one that is not eaten stalls the bacteria.`,
      ]
}

/**
 * Ammonia read since the tank was filled: the soil's own shows in no other way. Its height is asked of the newest reading, not here.
 *
 * Source: the step's own criterion; common practice.
 *
 * @example soilUnread({ …, readings: [] }).length // 1
 */
export function soilUnread(log: SetupLog): Phrase[] {
  const filledOn = tickedOn(log, 'fill')
  const read = log.readings.some(({ takenOn, ammoniaMgL }) => ammoniaMgL !== null && (filledOn === undefined || takenOn > filledOn))
  return read ? [] : [phrase`No test of ammonia from a day after the fill is in the log: what the soil gives off shows in no other way.`]
}

/**
 * Two days since the last dose that is ticked: a dose and its reading 24 h later, and once more. Empty where no dose is ticked.
 *
 * Source: the step's own words; common practice.
 *
 * @example dosedLately({ …, ticks: [{ stepId: 'second-dose', on: '2026-11-20' }], today: '2026-11-21' }).length // 1
 */
export function dosedLately(log: SetupLog): Phrase[] {
  const dosedOn = latestOf(log, DOSE_STEPS)
  const wait = dosedOn === undefined ? null : remains(dosedOn, READY_DAYS, log.today)
  return wait === null ? [] : [phrase`The last dose is too young: each of the two readings is taken 24 h after a dose. Go on ${wait}.`]
}

/**
 * The four weeks after the first animals, and a test of both in them.
 *
 * Source: the step's own words: two groups, and tests for two weeks after each; common practice.
 *
 * @example monthShort({ …, ticks: [{ stepId: 'first-fish', on: '2026-11-01' }], today: '2026-11-29' }) // [] with a test of both
 */
export function monthShort(log: SetupLog): Phrase[] {
  const inOn = tickedOn(log, 'first-fish')
  if (inOn === undefined) return [phrase`The first fish are not ticked: the month begins with them.`]
  const wait = remains(inOn, FIRST_MONTH_DAYS, log.today)
  const since = log.readings.filter(({ takenOn }) => takenOn >= inOn)
  const tested = since.some(({ ammoniaMgL }) => ammoniaMgL !== null) && since.some(({ nitriteMgL }) => nitriteMgL !== null)
  return [
    ...(wait === null
      ? []
      : [
          phrase`The first fish went in less than ${FIRST_MONTH_DAYS} days ago: the filter grows slowly, and harm shows late. Keep watching ${wait}.`,
        ]),
    ...(tested ? [] : [phrase`No test of ammonia and nitrite since the first fish is in the log.`]),
  ]
}

/** The log as it stood on the day of a tick. A test may be of the next day already where the tank stands. */
export const asOf = (log: SetupLog): SetupLog => ({
  ...log,
  readings: log.readings.filter(({ takenOn }) => takenOn <= addDays(log.today, 1)),
})
