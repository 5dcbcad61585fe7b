import { leastLength, phrase, quantity, type Quantity } from '../units/quantity.ts'
import { appliancesOf } from './appliances.ts'
import { dripLoop, type CordRun, type DripLoop } from './drip-loop.ts'
import { mainsCaution } from './mains.ts'
import type { Finding, Verdict } from './finding.ts'
import type { ApplianceKind, ApplianceSpec } from './gear.ts'
import { makeFinding, namesOf, type FindingParts } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span } from './span.ts'
import { CORD_MM, STAND_HEIGHT_MM } from './typical-ranges.ts'
import { settle, worstOf } from './verdict.ts'
import { assumedOf, startOf } from './words.ts'

const ENTER = phrase`Enter how long the cord is, or measure it.`
const ENTER_HEIGHT = phrase`Enter how high the stand is, or measure it.`
const NEARER = phrase`Bring the outlets nearer with a power strip hung above the water line, never a second strip behind it, or choose a longer cord.`

/** A canister stands on the floor of the stand; its cord leaves its head about here, a return pump's comes up through the sump to its rim. Common practice. */
const CANISTER_HEAD_MM = 350
/** What commonly stands on the floor of the stand. Common practice. */
const STANDS_LOW: ReadonlySet<ApplianceKind> = new Set(['chiller', 'uv', 'co2', 'battery_backup'])
/** A heater's cord takes this much to come over the rim. Common practice. */
const OVER_RIM_MM = 100

/** One appliance's cord outside the water, and what its loop asks for. */
interface Cord {
  name: string
  /** As on the label, told to the reader. */
  usableMm: Span
  /** Of it in the tank and over its rim. */
  underWaterMm: number
  stated: boolean
  run: CordRun
}

/** Floor to the tank's rim; a stand whose height nobody stated lies in the typical range. */
export function rimHeightMm({ gear, tank }: Situation): Span {
  const stand = gear.stand?.spec.heightMm
  const under = stand === undefined ? STAND_HEIGHT_MM : exactly(stand)
  return { low: under.low + tank.heightMm, high: under.high + tank.heightMm }
}

/** The loop of a cord that leaves over the rim: the longest that any appliance needs. Null where the outlet is too low. */
export function rimLoop(situation: Situation): { run: CordRun; loop: DripLoop } | null {
  const run = runFrom(situation, rimHeightMm(situation).high)
  const loop = dripLoop(run)
  return loop && { run, loop }
}

const runFrom = ({ conditions }: Situation, exitHeightMm: number): CordRun => ({
  exitHeightMm,
  outletHeightMm: conditions.outletHeightMm,
  distanceMm: conditions.outletDistanceMm,
})

function cordsOf(situation: Situation, rimMm: number): Cord[] {
  const { gear, tank } = situation
  const atRim = runFrom(situation, rimMm)
  const cord = (name: string, stated: number | undefined, typical: Span, underWaterMm: number, run: CordRun): Cord => {
    const whole = stated === undefined ? typical : exactly(stated)
    const usableMm = { low: whole.low - underWaterMm, high: whole.high - underWaterMm }
    return { name, usableMm, underWaterMm, stated: stated !== undefined, run }
  }
  return [
    // A heater may lie near the bottom: its cord has the whole height to climb.
    ...gear.heaters.map(({ name, spec }) => cord(name, spec.cordMm, CORD_MM.heater, tank.heightMm + OVER_RIM_MM, atRim)),
    ...gear.filters.map(({ name, spec }) =>
      cord(
        name,
        spec.cordMm,
        CORD_MM.filter,
        spec.type === 'internal' ? tank.heightMm + OVER_RIM_MM : spec.type === 'return_pump' ? CANISTER_HEAD_MM : 0,
        spec.type === 'canister' || spec.type === 'return_pump' ? runFrom(situation, CANISTER_HEAD_MM) : atRim,
      ),
    ),
    ...gear.lights.map(({ name, spec }) => cord(name, spec.cordMm, CORD_MM.light, 0, atRim)),
    ...appliancesOf(gear).map(({ kind, name, spec }) => {
      const [underWaterMm, run] = cordWay(situation, kind, spec, atRim)
      return cord(name, spec.cordMm, CORD_MM.appliance, underWaterMm, run)
    }),
  ]
}

/** Below the water line a cord climbs to the rim first; what stands beside a canister leaves as low as it does. */
function cordWay(
  situation: Situation,
  kind: ApplianceKind,
  { place }: ApplianceSpec,
  atRim: CordRun,
): [underWaterMm: number, run: CordRun] {
  if (kind === 'circulation_pump' || place === 'in_tank') return [situation.tank.heightMm + OVER_RIM_MM, atRim]
  return [0, STANDS_LOW.has(kind) || place === 'in_sump' ? runFrom(situation, CANISTER_HEAD_MM) : atRim]
}

/** Every cord judged, in the order of the gear, at the ends of what is stated. @example judgedCords(situation)[0]?.verdict // 'fits' */
export function judgedCords(situation: Situation): Judged[] {
  const rim = rimHeightMm(situation)
  const low = cordsOf(situation, rim.low)
  return cordsOf(situation, rim.high).map((cord, index) => judgeOne(cord, low[index] ?? cord))
}

/** *Fits* from the hanging form with slack, *marginal* from the shortest cord that still makes the loop. */
function judgeCord(usableMm: number, loop: DripLoop): Verdict {
  const usable = Math.round(usableMm)
  if (usable >= Math.round(loop.neededMm)) return 'fits'
  return usable >= Math.round(loop.shortestMm) ? 'marginal' : 'does_not_fit'
}

/**
 * Whether every appliance's cord reaches the outlet with a drip loop.
 *
 * Value: the shortest-falling cord outside the water in mm. Limit: hanging form and 0.3 m. A heater's cord counts its way up through the water.
 *
 * @example cordLength(situation)?.margin // 320 mm: 1967 mm of cord outside the water, of which a loop takes 1647 mm
 */
export function cordLength(situation: Situation): Finding | null {
  const judged = judgedCords(situation)
  if (judged.length === 0) return null
  const { conditions } = situation
  const tight = judged.find(({ loop }) => loop === null)
  const defaults = assumedOf(conditions, ['outletHeightMm', 'outletDistanceMm'])
  if (tight) return noRoom(tight.name, defaults)
  const verdict = worstOf(judged.map((each) => each.verdict))
  const worst = judged.filter((each) => each.verdict === verdict).sort((a, b) => a.reserveMm - b.reserveMm)[0]
  if (!worst?.loop) return null
  const needed = neededOf(worst.loop, worst.reserveMm)
  const base = { limit: { kind: 'at_least', low: needed }, caution: mainsCaution(conditions) } as const
  if (verdict === 'not_known') return notStated(worst, needed, { ...base, assumed: defaults, missing: unstatedOf(judged, verdict) })
  const value = quantity(worst.usableMm, 'mm', 0)
  return makeFinding('cord_length', {
    ...base,
    verdict,
    value,
    reason: phrase`${startOf(worst.name)} has ${value} of cord outside the water; a drip loop to the outlet takes ${needed}, slack included.`,
    action: verdict === 'fits' ? null : { text: NEARER },
    assumed: namesOf(unstatedOf(judged), defaults),
  })
}

/** A least length is told in steps of half an inch or a whole centimetre: a cord that reaches by less must not read as if it fell short. */
const TOLD_STEP_MM = 12.7

/** What a loop takes, rounded up for whoever measures, as in the startup plan. The verdict is of whole millimetres, so one below counts as reaching. */
const neededOf = ({ neededMm }: DripLoop, reserveMm: number): Quantity =>
  reserveMm > -1 && reserveMm < TOLD_STEP_MM ? quantity(neededMm, 'mm', 0) : leastLength(Math.round(neededMm))

/** What nobody stated of the cords with this verdict, of all without one: the cords themselves, and the stand's height where a cord leaves over the rim. */
function unstatedOf(judged: readonly Judged[], verdict?: Verdict): string[] {
  const looked = judged.filter((each) => verdict === undefined || each.verdict === verdict)
  return namesOf(
    looked.filter(({ stated }) => !stated).map(({ name }) => `cord of ${name}`),
    looked.some(({ heightUnstated }) => heightUnstated) ? ['height of the stand'] : [],
  )
}

function notStated(
  worst: Judged,
  needed: Quantity,
  base: Pick<FindingParts, 'limit' | 'source' | 'caution' | 'assumed' | 'missing'>,
): Finding {
  const takes = phrase`A drip loop at ${worst.name} takes ${worst.heightUnstated ? 'up to ' : ''}${needed} of cord outside the water`
  return makeFinding('cord_length', {
    ...base,
    verdict: 'not_known',
    reason: !worst.stated
      ? phrase`${takes}; nobody has stated how long its cord is.`
      : phrase`${takes}, by the height of the stand; nobody has stated it.`,
    action: { text: worst.stated ? ENTER_HEIGHT : ENTER },
  })
}

/** One cord against its loop. */
export type Judged = ReturnType<typeof judgeOne>

function judgeOne(high: Cord, low: Cord) {
  const loops = [dripLoop(high.run), dripLoop(low.run)] as const
  const worstLoop = loops[0] && loops[1] ? (loops[0].neededMm >= loops[1].neededMm ? loops[0] : loops[1]) : null
  const bestLoop = worstLoop === loops[0] ? loops[1] : loops[0]
  const verdict =
    worstLoop && bestLoop ? settle(judgeCord(high.usableMm.low, worstLoop), judgeCord(high.usableMm.high, bestLoop)) : 'does_not_fit'
  const reserveMm = worstLoop ? high.usableMm.low - worstLoop.neededMm : -Infinity
  const heightUnstated = high.run.exitHeightMm !== low.run.exitHeightMm
  const { name, stated, underWaterMm, run } = high
  const mostMm = high.usableMm.high
  return {
    name,
    stated,
    underWaterMm,
    run,
    mostMm,
    heightUnstated,
    usableMm: high.usableMm.low,
    loop: worstLoop,
    verdict,
    reserveMm,
  } as const
}

function noRoom(name: string, assumed: string[]): Finding {
  return makeFinding('cord_length', {
    verdict: 'does_not_fit',
    reason: phrase`The outlet is less than ${quantity(100, 'mm', 0)} above the floor: the cord of ${name} has no room to hang in a loop below it.`,
    action: { text: phrase`Use a power strip hung above the water line, or a higher outlet.` },
    assumed,
    caution: 'mains',
  })
}
