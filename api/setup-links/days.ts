import { addDays, FIRST_DAY, sayDate, yearOf, type CivilDate } from '../../core/dates.ts'
import { doneBefore, isDry } from '../../core/startup/done-day.ts'
import type { OpenedSetup } from './open.ts'

type Opened = Pick<Extract<OpenedSetup, { found: true }>, 'setup' | 'today'>

const MOST_DAYS_AHEAD = 365

const sayer =
  ({ today }: Opened) =>
  (date: CivilDate): string =>
    sayDate(date, yearOf(today))

/**
 * Why a day before the start, or where there is none before the setup was made, is refused; null where it is right. Without a start it counts from the
 * day before, for it was yesterday still elsewhere.
 */
function tooEarly(day: CivilDate, opened: Opened, fix: string): string | null {
  const { startedOn, issuedAt } = opened.setup
  const [say, madeOn] = [sayer(opened), issuedAt.slice(0, 10)]
  if (startedOn !== null && day < startedOn)
    return `${say(day)} is before the start on ${say(startedOn)}. ${fix}, or change the day of the start.`
  if (startedOn === null && day < addDays(madeOn, -1))
    return `${say(day)} is before this setup was made on ${say(madeOn)}. ${fix}, or set the day of the start first.`
  return null
}

/** Of a step that needs no water a start to come is no limit: it may be done from the day on which the setup was made. */
const beforeMade = (day: CivilDate, opened: Opened, fix: string): string | null =>
  day >= addDays(opened.setup.issuedAt.slice(0, 10), -1) ? null : tooEarly(day, opened, fix)

/** A test is of a day between the start and today: one of a day to come would hide what is read until then. Null where the day is right. */
export function readingDayFault(day: CivilDate, opened: Opened): string | null {
  const say = sayer(opened)
  const fix = 'Write the day on which you tested'
  if (day > opened.today) return `${say(day)} is in the future. Today is ${say(opened.today)}. ${fix}, today at the latest.`
  return tooEarly(day, opened, fix)
}

/** A step was done today or before, not before the start, and not before a step that comes before it; null where the day is right. */
export function doneDayFault(stepId: string, day: CivilDate, opened: Opened): string | null {
  const say = sayer(opened)
  const fix = 'Write the day on which it was done'
  if (day > opened.today) return `${say(day)} is in the future. Today is ${say(opened.today)}. ${fix}, today at the latest.`
  const early = isDry(opened.setup.plan, stepId) ? beforeMade(day, opened, fix) : tooEarly(day, opened, fix)
  const before = doneBefore(stepId, opened.setup)
  // Today is right even where a change of the zone has left a step on tomorrow.
  if (early !== null || before === null || before.title === null || day >= before.on || day === opened.today) return early
  return `${say(day)} is before ${say(before.on)}, when “${before.title}” was done, which comes first. ${fix}, ${say(before.on)} at the earliest, or take “Not done” at that step.`
}

/** The start is a day that can be stored, no later than the first step with water that is done and the first test, and no more than a year ahead; null where the day is right. */
export function startDayFault(day: CivilDate, opened: Opened): string | null {
  if (day < FIRST_DAY) return `${day} is before 1990. Check the year, and write the day like 2026-10-20.`
  const { plan, ticks, readings } = opened.setup
  const say = sayer(opened)
  const first = [
    ...ticks
      .filter(({ stepId }) => !isDry(plan, stepId))
      .map(({ stepId, on }) => ({ on, what: `“${plan.steps.find(({ id }) => id === stepId)?.title ?? stepId}” was done` })),
    ...readings.map(({ takenOn }) => ({ on: takenOn, what: 'a water test was taken' })),
  ].reduce<{ on: CivilDate; what: string } | null>((least, each) => (least === null || each.on < least.on ? each : least), null)
  if (first !== null && day > first.on)
    return `${say(day)} is after ${say(first.on)}, when ${first.what}. The start comes before that or on the same day: write ${say(first.on)} or an earlier day.`
  const most = addDays(opened.today, MOST_DAYS_AHEAD)
  return day > most ? `${say(day)} is more than a year ahead. Write ${say(most)} or an earlier day.` : null
}
