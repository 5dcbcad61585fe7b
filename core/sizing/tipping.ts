import type { StandSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase, type Quantity } from '../units/quantity.ts'
import { FREE_FALL } from './glass-plate.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { massTogether, tankCentres } from './mass-centre.ts'
import { settled } from './settled.ts'
import type { Corner, Situation } from './situation.ts'
import { exactly, isExact, type Span } from './span.ts'
import { freeSurfaceRiseMm, tipAngleDeg, tipForceN } from './tip-over.ts'
import { STAND_HEIGHT_MM, typicalStandMassKg } from './typical-ranges.ts'
import { bestOf, worstOf } from './verdict.ts'

/** A push that standing equipment of 25 kg and more bears: a fifth of its weight, 250 N at most, at up to 2 m. IEC 60950-1, 4.1, from memory. */
export const PUSH_SHARE = 0.2
export const MOST_PUSH_N = 250
/** A child's pull at a piece of furniture, N: 10 lbf, ASTM F2057, from memory. */
export const CHILD_PULL_N = 44.5
/** And a lean that it bears, degrees. IEC 60950-1, 4.1, from memory. */
export const LEAST_LEAN_DEG = 10
/** Nobody reaches higher. The same. */
const MOST_REACH_MM = 2000
/** Where the centre of an empty cabinet lies over its height: top and base about alike. Own. */
const STAND_CENTRE = 0.5

/** A top far smaller than its tank leaves no base to speak of: whatever stands on it falls at a touch. */
const LEAST_LEVER_MM = 1

/** A tank on one stand that the stated figures allow. */
export interface Standing {
  rimMm: number
  /** Where it is pushed: the rim, or as high as anybody reaches. */
  pushMm: number
  /** From the centre to the nearest edge of the base. */
  leverMm: number
  runningKg: number
  runningN: number
  emptyN: number
  leanDeg: number
  emptyLeanDeg: number
}

/**
 * How hard tank and stand are to tip over. Null without a stand: nobody knows what else it stands on.
 *
 * Value: horizontal force at the rim, or at 2 m where that is lower, that begins to tip it in use. Limit: a fifth of its weight, a child's pull at least and 250 N at most. Below a
 * child's pull it does not fit; below the limit, or where it leans by less than 10° first, or where a child's pull tips it empty, it is *marginal*: the stand
 * is fixed to the wall. The base is taken to be as large as the top, and not to slide.
 *
 * @example tipping(situation)?.value // 632 N at the rim, 129 cm up
 */
export function tipping(situation: Situation): Finding | null {
  const { gear, tankUnstated, loadDefaults } = situation
  if (!gear.stand) return null
  const cases = standingsOf(situation, gear.stand.spec)
  const worst = worstStanding(cases)
  const verdicts = cases.map(judge)
  const outcome = settled(worstOf(verdicts), bestOf(verdicts), namesOf(standUnstated(gear.stand.spec), tankUnstated), loadDefaults)
  const value = quantity(worst.runningN, 'N', 0)
  const limit = quantity(limitN(worst), 'N', 0)
  return makeFinding('tipping', {
    ...outcome,
    value,
    limit: { kind: 'at_least', low: limit },
    reason: reasonOf(worst, value),
    action: outcome.verdict === 'fits' ? null : { text: ACTION },
    caution: 'tipping',
  })
}

/** Every way that tank and stand may stand. @example standingsOf(situation, stand.spec).length // 1 where all is stated */
export function standingsOf(situation: Situation, { heightMm, massKg }: StandSpec): Standing[] {
  const heights = heightMm === undefined ? STAND_HEIGHT_MM : exactly(heightMm)
  const masses = massKg === undefined ? typicalStandMassKg(situation.tank.lengthMm) : exactly(massKg)
  return situation.corners.flatMap((corner) =>
    ends(heights).flatMap((standMm) => ends(masses).map((standKg) => standingOf(situation, corner, standMm, standKg))),
  )
}

/** The one that has least to spare. @example worstStanding(cases).runningN // 632 */
export const worstStanding = (cases: readonly Standing[]): Standing => cases.reduce((a, b) => (reserveOf(b) < reserveOf(a) ? b : a))

const ACTION = phrase`Fix the stand to the wall with its maker's fitting before water goes in, and leave it fixed while the tank is emptied.`

const ends = (span: Span): number[] => (isExact(span) ? [span.low] : [span.low, span.high])

function standUnstated(spec: NonNullable<Situation['gear']['stand']>['spec']): string[] {
  const { heightMm, massKg, topLengthMm, topWidthMm } = spec
  return [
    ...(heightMm === undefined ? ['height of the stand'] : []),
    ...(massKg === undefined ? ['mass of the stand'] : []),
    ...(topLengthMm === undefined || topWidthMm === undefined ? ['length and depth of the stand’s top'] : []),
  ]
}

/** The base follows the tank's own plan, and stands out by what the top has to spare on its worse side. */
function leverOf({ gear, tank }: Situation, { geometry }: Corner): number {
  const { topLengthMm = tank.lengthMm, topWidthMm = tank.widthMm } = gear.stand?.spec ?? {}
  if ((tank.shape ?? 'rectangular') === 'rectangular') return Math.min(topLengthMm, topWidthMm) / 2
  return Math.max(LEAST_LEVER_MM, geometry.outsideLeverMm + Math.min(topLengthMm - tank.lengthMm, topWidthMm - tank.widthMm) / 2)
}

function standingOf(situation: Situation, corner: Corner, standMm: number, standKg: number): Standing {
  const { shape, geometry, laden, mass } = corner
  const stand = { kg: standKg, heightMm: standMm * STAND_CENTRE }
  const on = (tank: { kg: number; heightMm: number }) => massTogether([stand, { kg: tank.kg, heightMm: tank.heightMm + standMm }])
  const centres = tankCentres(shape, laden, mass)
  const [running, empty] = [on(centres.running), on(centres.empty)]
  const leverMm = leverOf(situation, corner)
  const rimMm = standMm + shape.heightMm
  const pushMm = Math.min(rimMm, MOST_REACH_MM)
  const surface = {
    areaMm2: geometry.insidePlanMm2,
    widthMm: Math.min(geometry.insideLengthMm, geometry.insideWidthMm),
    waterDensity: (mass.waterKg / geometry.waterVolumeL) * 1000,
  }
  return {
    rimMm,
    pushMm,
    leverMm,
    runningKg: running.kg,
    runningN: tipForceN({ kg: running.kg, leverMm }, pushMm),
    emptyN: tipForceN({ kg: empty.kg, leverMm }, pushMm),
    leanDeg: tipAngleDeg(leverMm, running.heightMm + freeSurfaceRiseMm(surface, running.kg)),
    emptyLeanDeg: tipAngleDeg(leverMm, empty.heightMm),
  }
}

/** Never less than a child's pull: a fifth of a nano tank's weight is. */
const limitN = ({ runningKg }: Standing): number => Math.max(CHILD_PULL_N, Math.min(PUSH_SHARE * runningKg * FREE_FALL, MOST_PUSH_N))
/** Beyond the limit counted in the limit: what ranks one case against the next. */
const reserveOf = (standing: Standing): number =>
  Math.min(standing.runningN / limitN(standing), standing.leanDeg / LEAST_LEAN_DEG, standing.emptyN / CHILD_PULL_N)

function judge(standing: Standing): Verdict {
  const { runningN, emptyN, leanDeg, emptyLeanDeg } = standing
  const [push, emptyPush] = [Math.round(runningN), Math.round(emptyN)]
  if (push < CHILD_PULL_N) return 'does_not_fit'
  const lean = Math.min(leanDeg, emptyLeanDeg)
  return push < Math.round(limitN(standing)) || emptyPush < CHILD_PULL_N || Math.round(lean) < LEAST_LEAN_DEG ? 'marginal' : 'fits'
}

/** What the figures that are not the value are held against, where they fall short. */
function againstWhat(leanDeg: number, emptyN: number): Phrase {
  if (Math.round(emptyN) < CHILD_PULL_N) return phrase` A child manages about ${quantity(CHILD_PULL_N, 'N', 0)}.`
  return Math.round(leanDeg) < LEAST_LEAN_DEG ? phrase` Standing equipment is made to lean by ${LEAST_LEAN_DEG}°.` : phrase``
}

function reasonOf({ rimMm, leverMm, emptyN, leanDeg }: Standing, value: Quantity): Phrase {
  const times = (rimMm / (2 * leverMm)).toFixed(1)
  const base = phrase`The rim stands ${quantity(rimMm, 'mm', 0)} above the floor, ${times} times what the base is deep.`
  const push = phrase`It takes ${value} there to tip it in use, or a lean of ${Math.round(leanDeg)}°`
  return phrase`${base} ${push}; empty, ${quantity(emptyN, 'N', 0)} do it.${againstWhat(leanDeg, emptyN)}`
}
