// In the order that compresses best, found by trying: a browser loads it compressed, and a word is found again only within the last 32 kB.
import { deliveryOf, type Delivery } from './filter-delivery.ts'
import { oxygenCheck } from './oxygen-check.ts'
import { filterFeed } from './filter-feed.ts'
import { circulation } from './circulation.ts'
import { filterFlow, flowCeiling } from './filter-flow.ts'
import { VERDICTS, type Finding, type Verdict } from './finding.ts'
import { weeklyChange } from './weekly-change.ts'
import { skimmerSize } from './skimmer-size.ts'
import { drainDown } from './drain-down.ts'
import { conditionerCheck } from './conditioner-check.ts'
import { ammoniaTests } from './ammonia-tests.ts'
import { judgeAll, type AllJudged } from './cords.ts'
import { electricalLoad } from './electrical-load.ts'
import { heatingOf, type Heating } from './heating.ts'
import { outlets } from './outlets.ts'
import { outletProtection } from './outlet-protection.ts'
import { warmRoom } from './warm-room.ts'
import { heaterSpare } from './heater-spare.ts'
import { salinityDrift } from './salinity-drift.ts'
import { heaterHolds } from './heater-holds.ts'
import { situationOf, type Situation } from './situation.ts'
import { lightLevel } from './light-level.ts'
import { cordLength } from './cord-length.ts'
import { litOf, type Lit } from './light-along.ts'
import { heaterStuck } from './heater-stuck.ts'
import { lightCoverage } from './light-coverage.ts'
import { substrateDepth } from './substrate-depth.ts'
import { smallestVolume } from './smallest-volume.ts'
import { floorLoad } from './floor-load.ts'
import { gearFigures, tankFigures } from './figures.ts'
import { emptyLift } from './empty-lift.ts'
import { tipping } from './tipping.ts'
import { glassPane } from './glass-pane.ts'
import { standWet } from './stand-wet.ts'
import { standFootprint } from './stand-footprint.ts'
import { standLoad } from './stand-load.ts'
import { withoutTank } from './no-tank.ts'
import { lidCheck } from './lid-check.ts'
import { standBedding } from './stand-bedding.ts'
import type { SizingFigures, SizingReport, SizingSubject } from './report.ts'

/** Rules that take something in common, reckoned once. A rule answers null where it does not apply. */
export interface RuleSet<From, Shared> {
  share: (from: From) => Shared
  rules: ReadonlyArray<(from: From, shared: Shared) => Finding | null>
}

/** Checks that need no tank. */
export const GEAR_RULES: RuleSet<SizingSubject, undefined> = {
  share: () => undefined,
  rules: [outletProtection, electricalLoad, outlets, standWet, ammoniaTests],
}

/** Checks of a tank in a room, by what they take besides. */
export const TANK_RULES: {
  heat: RuleSet<Situation, Heating>
  light: RuleSet<Situation, Lit>
  flow: RuleSet<Situation, Delivery | undefined>
  cords: RuleSet<Situation, AllJudged>
  rest: RuleSet<Situation, undefined>
} = {
  heat: { share: heatingOf, rules: [heaterStuck, heaterHolds, heaterSpare, warmRoom, salinityDrift] },
  light: {
    share: litOf,
    rules: [(situation, { bed }) => lightLevel(situation, bed), (situation, { lies }) => lightCoverage(situation, lies?.even)],
  },
  flow: { share: deliveryOf, rules: [filterFlow, flowCeiling, oxygenCheck, circulation] },
  cords: { share: judgeAll, rules: [cordLength] },
  rest: {
    share: () => undefined,
    rules: [
      standLoad,
      standFootprint,
      standBedding,
      tipping,
      floorLoad,
      glassPane,
      smallestVolume,
      lidCheck,
      filterFeed,
      weeklyChange,
      skimmerSize,
      drainDown,
      substrateDepth,
      conditionerCheck,
      emptyLift,
    ],
  },
}

/** Told by its own words alone: it is no approval, and nothing that anybody could mend. */
const FLOOR_WITHIN: Finding['wording'] = 'within the usual allowance'

/** Page one has room for three. */
const PAGE_ONE = 3

const RANK = Object.fromEntries(VERDICTS.map((verdict, index) => [verdict, index])) as Record<Verdict, number>

/**
 * All checks of one build in one room, worst first and what can hurt first within.
 *
 * Units:  as the subject's fields say. Every value is rounded to its declared digits before its verdict.
 * Errors: never throws on a subject that its schema accepts; without a tank, or with one that its fill contradicts, the findings are *not known* and say
 *         what to enter. Nothing is NaN or infinite.
 * Source: in each finding.
 *
 * @example sizingReport({ gear, conditions }).counts.does_not_fit // 0
 */
export const sizingReport = (subject: SizingSubject): SizingReport => inspectedReport(subject).report

/**
 * The same, with what it was found from: for who reckons all figures as well. Null without a tank that holds water.
 *
 * Errors: as `sizingReport`. @example inspectedReport({ gear, conditions }).inspected?.heating.installedW // { low: 200, high: 200 }
 */
export function inspectedReport(subject: SizingSubject): { report: SizingReport; inspected: Inspected | null } {
  const { found, inspected } = inspect(subject)
  const figures: SizingFigures = inspected ? tankFigures(inspected.situation, inspected.heating, inspected.delivery) : gearFigures(subject)
  const findings = found.sort((a, b) => RANK[a.verdict] - RANK[b.verdict] || a.hurtRank - b.hurtRank)
  const counts: Record<Verdict, number> = { does_not_fit: 0, not_known: 0, marginal: 0, fits: 0 }
  for (const { verdict, wording } of findings) if (wording !== FLOOR_WITHIN) counts[verdict]++
  return { report: { findings, counts, pageOne: pageOneOf(findings), figures }, inspected }
}

/** A tank in its room with what rules and figures ask for in common, reckoned once. */
export interface Inspected {
  situation: Situation
  heating: Heating
  lit: Lit
  delivery: Delivery | undefined
  cords: AllJudged
}

/**
 * The findings of one build in one room alone, in no order: what is asked again and again while something is tried. `usable` tells a tank that holds water.
 *
 * Errors: as `sizingReport`. @example findingsOf({ gear, conditions }).usable // true
 */
export function findingsOf(subject: SizingSubject): { findings: Finding[]; usable: boolean } {
  const { found, inspected } = inspect(subject)
  return { findings: found, usable: inspected !== null }
}

/** Runs every rule. */
function inspect(subject: SizingSubject): { found: Finding[]; inspected: Inspected | null } {
  const found: Finding[] = []
  runInto(found, GEAR_RULES, subject)
  const result = situationOf(subject)
  if (result.ok) return { found, inspected: inspectTank(result.value, found) }
  found.push(...withoutTank(result.refusal, subject.gear))
  return { found, inspected: null }
}

/** Runs the rules of a tank, adding to `found`. */
function inspectTank(situation: Situation, found: Finding[]): Inspected {
  runInto(found, TANK_RULES.rest, situation)
  return {
    situation,
    lit: runInto(found, TANK_RULES.light, situation),
    heating: runInto(found, TANK_RULES.heat, situation),
    delivery: runInto(found, TANK_RULES.flow, situation),
    cords: runInto(found, TANK_RULES.cords, situation),
  }
}

/** Runs a set of rules, adding to `found`; gives what they share. */
function runInto<From, Shared>(found: Finding[], { share, rules }: RuleSet<From, Shared>, from: From): Shared {
  const shared = share(from)
  for (const rule of rules) {
    const finding = rule(from, shared)
    if (finding) found.push(finding)
  }
  return shared
}

/**
 * What comes first where there is room for a few: all that does not fit before anything else, and of each what can hurt first.
 *
 * @example [marginalHeater, lightThatDoesNotFit].sort(byHurt) // the light first
 */
export const byHurt = (a: Finding, b: Finding): number =>
  Number(b.verdict === 'does_not_fit') - Number(a.verdict === 'does_not_fit') || a.hurtRank - b.hurtRank

/** What does not fit, is not known or marginal; a floor within its usual allowance takes nobody's place there. */
function pageOneOf(findings: readonly Finding[]): number[] {
  return findings
    .map((finding, index) => ({ finding, index }))
    .filter(({ finding }) => finding.verdict !== 'fits' && finding.wording !== FLOOR_WITHIN)
    .sort((a, b) => byHurt(a.finding, b.finding))
    .slice(0, PAGE_ONE)
    .map(({ index }) => index)
}
