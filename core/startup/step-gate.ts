import { addDays, type CivilDate } from '../dates.ts'
import type { Reading } from '../quote/quote-view.ts'
import { phrase, type Phrase, type Quantity, type ReaderUnits } from '../units/quantity.ts'
import { sayPhrase } from '../units/say.ts'
import { leakHoldDays, leakHoldShortDays, newestFigures, twoGoodDays, type NewestFigures } from './reading-log.ts'
import { AT_MARK, figureAsRead, GENERAL_MARKS } from './reading-marks.ts'
import { READY_MG_PER_L, SOIL_UNDER_MG_PER_L } from './ready-reading.ts'
import { tickedOn, type SetupLog } from './setup-log.ts'
import { asOf, dosedLately, monthShort, notEaten, notTested, ranShort, soilUnread, untilDay } from './step-waits.ts'
import { limitC, readC } from './temperatures.ts'
import { NITRATE_GOAL_MG_PER_L } from './water-change.ts'

/** Why a step is not ticked at once. */
export interface StepGate {
  /** The newest readings say otherwise: no word helps against them, only a new test in the log. */
  against: Phrase[]
  /** What the log does not show, and a word may stand for. */
  lacks: Phrase[]
  /** That word, as the box says it. */
  word: string
  /** A test written down may make good what lacks; else only time or the word does. */
  tests: boolean
  /** What believing the word means for the log: that step was done on that day, however late it was ticked, unless that is before what comes first. */
  late?: { stepId: string; on: CivilDate }
}

/**
 * What stands between a step and its tick: readings against it, or readings and days that the log lacks. Null where nothing does.
 *
 * Units:  mg/L, °C. Errors: none; a step that stands on no reading and no day has no gate.
 * Source: the plan's own criteria (common practice): 0.25 mg/L two days running after a dose that was seen to be eaten, nitrate 40 mg/L, the hold,
 *         and the days and tests of `step-waits.ts`.
 *
 * @example stepGate('ready', { plan, ticks: [], readings: [], today })?.lacks.length // 1: the first dose is not ticked
 */
export function stepGate(stepId: string, log: SetupLog): StepGate | null {
  const gate = gateOf(stepId, log)
  if (gate === null || gate.against.length + gate.lacks.length === 0) return null
  return { ...gate, tests: !HOLDS.includes(stepId) && lacksForever(stepId, log) }
}

/** Something lacks that no waiting mends. */
const lacksForever = (stepId: string, log: SetupLog): boolean =>
  (GATES.get(stepId)?.(log, { ...asOf(log), today: addDays(log.today, LONG_AFTER) }).lacks.length ?? 0) > 0

/** All of it in one line, for who is not on the page. @example sayGate(gate, METRIC) // 'The first ammonia dose is not ticked: …' */
export function sayGate({ against, lacks, word, tests }: StepGate, units: ReaderUnits): string {
  const said = (against.length > 0 ? against : lacks).map((each) => sayPhrase(each, units)).join(' ')
  if (against.length > 0) return `${said} Write down a new test first.`
  return `${said} Wait, ${tests ? 'or write it down first, ' : ''}or tick: ${word}.`
}

type Gate = (now: SetupLog, then: SetupLog) => Omit<StepGate, 'tests'>

/** What lacks in them is mended by time alone. */
const HOLDS = ['leak-hold', 'run-in']
/** Longer than any step waits, days. */
const LONG_AFTER = 60

/** By step. `now` holds every reading, for the newest one speaks against whatever day is named; `then` those of the day that the step is said to be done on. */
const GATES: ReadonlyMap<string, Gate> = new Map<string, Gate>(
  Object.entries<Gate>({
    'leak-hold': holdGate,
    'run-in': (_now, then) => ({ against: [], lacks: ranShort(then), word: 'It did run for a day: the steps before were ticked late' }),
    'soil-ammonia': (now, then) => ({
      against: soilOver(newestFigures(now.readings)),
      lacks: soilUnread(then),
      word: `I tested on paper: ammonia is under ${SOIL_UNDER_MG_PER_L} mg/L`,
    }),
    'daily-readings': (_now, then) => ({
      against: [],
      lacks: notTested(then),
      word: 'I tested after the first dose, and wrote it on paper',
    }),
    'second-dose': (_now, then) => ({
      against: pastDosing(then),
      lacks: notEaten(then),
      word: 'I tested on paper: the first dose was eaten',
    }),
    ready: (now, then) => fishGate(poisonOver(newestFigures(now.readings)), then),
    'large-change': (now, then) => ({
      against: nitrateOver(newestFigures(now.readings)),
      lacks: nitrateUnread(then),
      word: 'I read nitrate after the change: it was 40 or less',
    }),
    'first-fish': (now, then) => {
      const newest = newestFigures(now.readings)
      return fishGate([...poisonOver(newest), ...nitrateOver(newest), ...outsideBand(newest, now.plan)], then)
    },
    'first-month': (now, then) => ({
      against: poisonOver(newestFigures(now.readings)),
      lacks: monthShort(then),
      word: 'The first fish went in four weeks ago or longer, and my tests since were steady',
    }),
  }),
)

const gateOf = (stepId: string, log: SetupLog): ReturnType<Gate> | null => GATES.get(stepId)?.(log, asOf(log)) ?? null

const fishGate = (against: Phrase[], log: SetupLog): ReturnType<Gate> => ({
  against,
  lacks: [...notCycled(log), ...dosedLately(log)],
  word: `I tested on paper after the first dose: it was eaten, and then both were ${READY_MG_PER_L} or less, two days running`,
})

/** By the newest tests until that day, its own ones too: the marks at which the steps say to dose nothing. */
function pastDosing({ plan: { marks = GENERAL_MARKS }, readings, today }: SetupLog): Phrase[] {
  const { nitriteMgL, ph, khDegrees } = newestFigures(readings.filter(({ takenOn }) => takenOn <= today))
  const kh = (degrees: number): Quantity => figureAsRead(degrees, 'dKH')
  return [
    ...(nitriteMgL !== null && nitriteMgL > marks.nitriteMgL
      ? [phrase`Nitrite reads ${figureAsRead(nitriteMgL, 'mg/L')}. Above ${marks.nitriteMgL} mg/L: ${AT_MARK.nitrite}`]
      : []),
    ...(ph !== null && ph < marks.lowestPh
      ? [phrase`pH reads ${figureAsRead(ph, 'share')}. Under ${marks.lowestPh}: ${AT_MARK.soft}`]
      : []),
    ...(khDegrees !== null && khDegrees < marks.lowestKhDegrees
      ? [phrase`KH reads ${kh(khDegrees)}. Under ${kh(marks.lowestKhDegrees)}: ${AT_MARK.soft}`]
      : []),
  ]
}

function poisonOver({ ammoniaMgL, nitriteMgL }: NewestFigures): Phrase[] {
  const over = (name: string, value: number | null): Phrase[] =>
    value === null || value <= READY_MG_PER_L
      ? []
      : [phrase`${name} reads ${figureAsRead(value, 'mg/L')} in the newest test. It must be ${READY_MG_PER_L} mg/L or less.`]
  return [...over('Ammonia', ammoniaMgL), ...over('Nitrite', nitriteMgL)]
}

const soilOver = ({ ammoniaMgL }: NewestFigures): Phrase[] =>
  ammoniaMgL === null || ammoniaMgL < SOIL_UNDER_MG_PER_L
    ? []
    : [
        phrase`Ammonia reads ${figureAsRead(ammoniaMgL, 'mg/L')} in the newest test. Dose nothing until it reads under ${SOIL_UNDER_MG_PER_L} mg/L.`,
      ]

const nitrateOver = ({ nitrateMgL }: NewestFigures): Phrase[] =>
  nitrateMgL === null || nitrateMgL <= NITRATE_GOAL_MG_PER_L
    ? []
    : [
        phrase`Nitrate reads ${figureAsRead(nitrateMgL, 'mg/L')} in the newest test. Above ${NITRATE_GOAL_MG_PER_L} mg/L: change three quarters of the water once more, and test again.`,
      ]

/** A plan frozen before the highest mark was part of it is judged by its danger mark. */
function outsideBand({ temperatureC }: NewestFigures, { marks = GENERAL_MARKS }: SetupLog['plan']): Phrase[] {
  const { lowestC, highestC, dangerC } = marks
  const most = highestC ?? dangerC
  if (temperatureC === null || (temperatureC >= lowestC && temperatureC <= most && temperatureC < dangerC)) return []
  return [phrase`The water reads ${readC(temperatureC)} in the newest test. No fish goes in outside ${limitC(lowestC)} to ${limitC(most)}.`]
}

/** Days before the first dose say nothing: clean tap water reads zero of both. */
function notCycled(log: SetupLog): Phrase[] {
  const dosedOn = tickedOn(log, 'first-ammonia')
  if (dosedOn === undefined) return [phrase`The first ammonia dose is not ticked: before it every reading of zero is only tap water.`]
  const since = log.readings.filter(({ takenOn }) => takenOn >= dosedOn)
  return [
    ...(since.some((reading) => showsDose(reading, dosedOn))
      ? []
      : [
          phrase`No test since the first dose shows that it was eaten: ammonia or nitrite above ${READY_MG_PER_L} mg/L, or on a later day nitrate above zero.`,
        ]),
    ...(twoGoodDays(since)
      ? []
      : [
          phrase`The last two days tested since the first dose must show ammonia and nitrite at ${READY_MG_PER_L} mg/L or less, one day after the other.`,
        ]),
  ]
}

const above = (value: number | null, least: number): boolean => value !== null && value > least
const showsDose = ({ takenOn, ammoniaMgL, nitriteMgL, nitrateMgL }: Reading, dosedOn: CivilDate): boolean =>
  above(ammoniaMgL, READY_MG_PER_L) || above(nitriteMgL, READY_MG_PER_L) || (takenOn > dosedOn && above(nitrateMgL, 0))

function nitrateUnread(log: SetupLog): Phrase[] {
  const readyOn = tickedOn(log, 'ready')
  const read = log.readings.some(({ takenOn, nitrateMgL }) => nitrateMgL !== null && (readyOn === undefined || takenOn >= readyOn))
  return read ? [] : [phrase`No test of nitrate since the tank was ready is in the log.`]
}

function holdGate(log: SetupLog): ReturnType<Gate> {
  const late = { stepId: 'leak-fill', on: addDays(log.today, -leakHoldDays(log.plan)) }
  return { against: [], lacks: heldShort(log), word: 'It did stand full that long: the fill was ticked late', late }
}

function heldShort({ plan, ticks, today }: SetupLog): Phrase[] {
  const others = ticks.filter(({ stepId }) => stepId !== 'leak-hold')
  const short = leakHoldShortDays(plan, [...others, { stepId: 'leak-hold', on: today }])
  if (short === 0) return []
  return [phrase`The fill was ticked too short a time ago: a slow leak shows only with time. Leave it full ${untilDay(today, short)}.`]
}
