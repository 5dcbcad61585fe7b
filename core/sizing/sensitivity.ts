import type { Quantity } from '../units/quantity.ts'
import { findingsOf } from './engine.ts'
import { VERDICTS, type Finding, type Limit, type Turn, type Verdict } from './finding.ts'
import type { InputEnd, OpenInput } from './open-input.ts'
import { openInputs } from './open-inputs.ts'
import { openQuestions } from './open-questions.ts'
import { reinspection, type Moved } from './reinspection.ts'
import type { SizingReport, SizingSubject, ToldReport } from './report.ts'
import { toldFinding } from './told-report.ts'

/** Reports that one call makes at most: a build that states nothing has some twenty open inputs, and twice that many ends. Beyond it no further corner is tried. */
const MOST_REPORTS = 90

/** One end of one input, tried alone. */
interface Trial {
  input: OpenInput
  end: InputEnd
  moved: Moved
}

/** Which end of which input, by the input's place in the list. */
type Corner = Map<number, InputEnd>

/**
 * A report as it is read: with its sources and cautions, the range of every value over all that is assumed, and what would change a verdict.
 *
 * Each open input is tried alone at its ends with the others as they stand: where that changes a verdict, it is a turn. Then, for each finding, all of them
 * together at the ends that lower its value, and at those that raise it: the corners between which the value lies, since every check runs one way with each of
 * its inputs over their typical range; what one moves by less than the last digit it is not seen to move. Verdicts stay as they were. Bounded to 90 reports: the
 * report itself is made without them.
 *
 * Units:  as the report. Errors: none; an end that leaves no usable tank is left out.
 * Source: own.
 *
 * @example withRanges(subject, sizingReport(subject)).findings[0]?.range // { low: 31.2 °C, high: 34.3 °C }
 */
export function withRanges(subject: SizingSubject, report: SizingReport): ToldReport {
  const inputs = openInputs(subject)
  const movedAt = reinspection(subject) ?? withoutTankAt
  const trials = inputs.flatMap((input) =>
    input.ends.flatMap((end): Trial[] => {
      const moved = movedAt(end.state(subject))
      return moved === null ? [] : [{ input, end, moved }]
    }),
  )
  const corners = cornersOf(report, inputs, trials).slice(0, Math.max(0, MOST_REPORTS - trials.length))
  const tried = trials.map(({ moved }) => moved)
  for (const corner of corners) {
    const moved = movedAt([...corner.values()].reduce((at, end) => end.state(at), subject))
    if (moved !== null) tried.push(moved)
  }
  const findings = report.findings.map((finding) => ({
    ...toldFinding(finding),
    ...spreadOf(finding, tried),
    turns: turnsOf(finding, trials),
  }))
  return { ...report, findings, questions: openQuestions(findings, inputs, subject) }
}

/** Where no tank holds water, all is found anew, and an answer that makes it hold some is left out. */
function withoutTankAt(subject: SizingSubject): Moved | null {
  const { findings, usable } = findingsOf(subject)
  return usable ? null : new Map(findings.map((finding) => [finding.check, finding]))
}

/** The corners worth trying, those that agree merged into one: an input that leaves a finding alone may stand at either end for it. */
function cornersOf(report: SizingReport, inputs: readonly OpenInput[], trials: readonly Trial[]): Corner[] {
  const corners: Corner[] = []
  const ofEach = inputs.map((input) => trials.filter((trial) => trial.input === input))
  for (const finding of report.findings) {
    for (const sign of [1, -1] as const) {
      const wanted: Corner = new Map()
      for (const [index, own] of ofEach.entries()) {
        const end = extremeEnd(finding, own, sign)
        if (end) wanted.set(index, end)
      }
      if (wanted.size > 1) merge(corners, wanted)
    }
  }
  return corners
}

/** The end of one input that takes a finding's value furthest one way; undefined where neither does. */
function extremeEnd(finding: Finding, trials: readonly Trial[], sign: 1 | -1): InputEnd | undefined {
  let best: { end: InputEnd; by: number } | undefined
  for (const { end, moved } of trials) {
    const found = moved.get(finding.check)
    const by = found === undefined ? 0 : sign * changeOf(finding, found)
    if (by > (best?.by ?? 0)) best = { end, by }
  }
  return best?.end
}

/** How far a trial takes a finding: by its value, where that moves; else by its distance to the limit; else by its verdict. */
function changeOf(from: Finding, to: Finding): number {
  for (const key of ['value', 'margin'] as const) {
    const [before, after] = [from[key], to[key]]
    if (before && after && before.unit === after.unit && before.value !== after.value) return after.value - before.value
  }
  return RANK[to.verdict] - RANK[from.verdict]
}

function merge(corners: Corner[], wanted: Corner): void {
  const home = corners.find((corner) => [...wanted].every(([index, end]) => (corner.get(index) ?? end) === end))
  if (home === undefined) corners.push(wanted)
  else for (const [index, end] of wanted) home.set(index, end)
}

const RANK = Object.fromEntries(VERDICTS.map((verdict, index) => [verdict, index])) as Record<Verdict, number>

/** Ends of the value and of its limit, where they vary, and the worst verdict, where it is worse, over all that was tried. */
function spreadOf(finding: Finding, tried: readonly Moved[]): Pick<Finding, 'range' | 'limitRange' | 'worst'> {
  const found = tried.flatMap((moved) => moved.get(finding.check) ?? [])
  const range = rangeOf([finding, ...found].map(({ value }) => value))
  const limitRange = rangeOf([finding, ...found].map(({ limit }) => limit && edgeOf(limit)))
  let worst = finding.verdict
  for (const { verdict } of found) if (verdict !== 'not_known' && RANK[verdict] < RANK[worst]) worst = verdict
  return { ...(range ? { range } : {}), ...(limitRange ? { limitRange } : {}), ...(worst === finding.verdict ? {} : { worst }) }
}

/** The one edge of a limit; of a band its lower one. */
const edgeOf = (limit: Limit): Quantity => (limit.kind === 'at_most' ? limit.high : limit.low)

/** Least and greatest of those in the first one's unit; undefined where they are the same. */
function rangeOf(values: ReadonlyArray<Quantity | undefined>): { low: Quantity; high: Quantity } | undefined {
  const [first] = values
  if (first === undefined) return undefined
  let [low, high] = [first, first]
  for (const value of values) {
    if (value?.unit !== first.unit) continue
    if (value.value < low.value) low = value
    if (value.value > high.value) high = value
  }
  return low.value < high.value ? { low, high } : undefined
}

/** Ends that change the verdict, or the floor's words in its place: the worst first, so that what speaks against it is read first. */
function turnsOf(finding: Finding, trials: readonly Trial[]): Turn[] {
  const turns = trials.flatMap(({ input, end, moved }) => {
    const found = moved.get(finding.check)
    if (found === undefined || (found.verdict === finding.verdict && found.wording === finding.wording)) return []
    const turn: Turn = { input: input.name, at: end.says, verdict: found.verdict, ...(found.wording ? { wording: found.wording } : {}) }
    return [{ turn, by: Math.abs(changeOf(finding, found)) }]
  })
  return turns.sort((a, b) => RANK[a.turn.verdict] - RANK[b.turn.verdict] || b.by - a.by).map(({ turn }) => turn)
}
