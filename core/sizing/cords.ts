import { appliancesOf } from './appliances.ts'
import { dripLoop, type CordRun, type DripLoop } from './drip-loop.ts'
import { VERDICTS, type Verdict } from './finding.ts'
import type { ApplianceKind, ApplianceSpec } from './gear.ts'
import { namesOf } from './make-finding.ts'
import { protectingStrips, usedStrips } from './protecting-strips.ts'
import type { Situation } from './situation.ts'
import { exactly, isExact, round, type Span } from './span.ts'
import { CORD_MM, STAND_HEIGHT_MM, SUMP_HEIGHT_MM } from './typical-ranges.ts'
import { bestOf, settle, worstOf } from './verdict.ts'

/** A canister stands on the floor of the stand; its cord leaves its head about here, a return pump's comes up through the sump to its rim. Common practice. */
const LOW_EXIT: Exit = { heightMm: exactly(350), unstated: [] }
/** What commonly stands on the floor of the stand. Common practice. */
const STANDS_LOW: ReadonlySet<ApplianceKind> = new Set(['chiller', 'uv', 'co2', 'battery_backup'])
/** A cord that comes up out of the water takes this much to come over the rim, of a tank or a sump. Common practice. */
const OVER_RIM_MM = 100
const NO_WATER = exactly(0)

/** Where a cord leaves what it belongs to, above the floor, and what nobody stated of that. */
interface Exit {
  heightMm: Span
  unstated: string[]
}

/** One appliance's cord. */
interface Cord {
  name: string
  /** As on the label. */
  wholeMm: Span
  /** Of it in the tank or the sump and over the rim: that of a sump moves with its exit. */
  underWaterMm: Span
  stated: boolean
  /** Taken to stand in the sump. */
  inSump: boolean
  exit: Exit
}

/** The wall outlet, or a strip of the build: hung beside the rim, or on the wall beside the outlet. */
export type Plug = 'outlet' | 'strip' | 'wall_strip'

/** One cord against its loop. */
export interface Judged {
  name: string
  stated: boolean
  inSump: boolean
  to: Plug
  underWaterMm: number
  run: CordRun
  /** The longest and the shortest cord outside the water at the heights of `run`, mm. */
  mostMm: number
  usableMm: number
  /** Null where no loop can hang. */
  loop: DripLoop | null
  verdict: Verdict
  reserveMm: number
  /** Heights that nobody stated and the loop hangs on. */
  heights: string[]
}

/** Floor to the tank's rim; a stand whose height nobody stated lies in the typical range. */
export function rimHeightMm({ gear, tank }: Pick<Situation, 'gear' | 'tank'>): Span {
  const stand = gear.stand?.spec.heightMm
  const under = stand === undefined ? STAND_HEIGHT_MM : exactly(stand)
  return { low: under.low + tank.heightMm, high: under.high + tank.heightMm }
}

/**
 * The loop of a cord that leaves over the rim: the longest that any appliance needs, to where all of them go; to the wall outlet where they go apart. Null where
 * the outlet is too low.
 */
export function rimLoop(situation: Situation, { cords }: AllJudged): { run: CordRun; loop: DripLoop; to: Plug } | null {
  const [{ to } = { to: 'outlet' as const }, ...others] = cords
  const way = others.every((each) => each.to === to) && to !== 'outlet' ? WAYS[to](situation) : toOutlet(situation)
  const run = runOf(overRim(situation), way, 'high', 'high')
  const loop = dripLoop(run)
  return loop && { run, loop, to: way.to }
}

/** Where cords go: the height of what they are plugged into, and how far it is. */
interface Way {
  to: Judged['to']
  end: Exit
  distanceMm: number
}

const toOutlet = ({ conditions }: Situation): Way => ({
  to: 'outlet',
  end: { heightMm: exactly(conditions.outletHeightMm), unstated: [] },
  distanceMm: conditions.outletDistanceMm,
})

/** A strip hangs beside the tank at the height of its rim, out of its drips: half the tank's length from its middle. Common practice. */
const toStrip = (situation: Situation): Way => ({ to: 'strip', end: overRim(situation), distanceMm: situation.tank.lengthMm / 2 })

const toWallStrip = (situation: Situation): Way => ({ ...toOutlet(situation), to: 'wall_strip' })
const WAYS = { strip: toStrip, wall_strip: toWallStrip }

const runOf = (exit: Exit, { end, distanceMm }: Way, side: keyof Span, endSide: keyof Span): CordRun => ({
  exitHeightMm: exit.heightMm[side],
  outletHeightMm: end.heightMm[endSide],
  distanceMm,
})

const overRim = (situation: Situation): Exit => {
  const heightMm = rimHeightMm(situation)
  return { heightMm, unstated: isExact(heightMm) ? [] : ['height of the stand'] }
}

/** Over the rim of a sump that is chosen: it stands on the floor. */
function overSump({ gear }: Situation): Exit {
  const heightMm = gear.sump?.spec.heightMm
  if (!gear.sump) return LOW_EXIT
  return heightMm === undefined
    ? { heightMm: SUMP_HEIGHT_MM, unstated: ['height of the sump'] }
    : { heightMm: exactly(heightMm), unstated: [] }
}

const upThrough = (heightMm: Span): Span => ({ low: heightMm.low + OVER_RIM_MM, high: heightMm.high + OVER_RIM_MM })

const cord = (name: string, stated: number | undefined, typical: Span, underWaterMm: Span, exit: Exit, inSump = false): Cord => ({
  name,
  wholeMm: stated === undefined ? typical : exactly(stated),
  underWaterMm,
  stated: stated !== undefined,
  inSump,
  exit,
})

function cordsOf(situation: Situation): Cord[] {
  const { gear, tank } = situation
  const [rim, sump] = [overRim(situation), overSump(situation)]
  const inTank = upThrough(exactly(tank.heightMm))
  return [
    // A heater may lie near the bottom: its cord has the whole height to climb. In a build with a sump it stands there.
    ...gear.heaters.map(({ name, spec }) =>
      gear.sump
        ? cord(name, spec.cordMm, CORD_MM.heater, upThrough(sump.heightMm), sump, true)
        : cord(name, spec.cordMm, CORD_MM.heater, inTank, rim),
    ),
    ...gear.filters.map(({ name, spec: { type, cordMm } }) => {
      if (type === 'return_pump') return cord(name, cordMm, CORD_MM.filter, upThrough(sump.heightMm), sump)
      return cord(name, cordMm, CORD_MM.filter, type === 'internal' ? inTank : NO_WATER, type === 'canister' ? LOW_EXIT : rim)
    }),
    ...gear.lights.map(({ name, spec }) => cord(name, spec.cordMm, CORD_MM.light, NO_WATER, rim)),
    ...appliancesOf(gear).map(({ kind, name, spec }) => {
      const isUnderWater = kind === 'circulation_pump' || spec.place === 'in_tank'
      return cord(
        name,
        spec.cordMm,
        CORD_MM.appliance,
        isUnderWater ? inTank : spec.place === 'in_sump' ? upThrough(sump.heightMm) : NO_WATER,
        isUnderWater ? rim : exitOf(kind, spec, rim, sump),
      )
    }),
  ]
}

/** What stands beside a canister leaves as low as it does. */
function exitOf(kind: ApplianceKind, { place }: ApplianceSpec, rim: Exit, sump: Exit): Exit {
  if (place === 'in_sump') return sump
  return STANDS_LOW.has(kind) ? LOW_EXIT : rim
}

const better = (one: Judged, other: Judged): boolean =>
  VERDICTS.indexOf(one.verdict) > VERDICTS.indexOf(other.verdict) || (one.verdict === other.verdict && one.reserveMm > other.reserveMm)
const worse = (one: Judged, other: Judged): Judged => (better(one, other) ? other : one)

/** Every appliance's cord, and the strips' own that go to the wall. */
export interface AllJudged {
  cords: Judged[]
  strips: Judged[]
  /** At the place that a strip which is all that protects was not given. */
  rejected?: Judged[]
}

/**
 * Every cord judged, in the order of the gear, at the ends of what is stated: to the wall outlet, or to a strip of the build where that serves it better and the
 * strip's own cord reaches the wall; then the strip's own, where one of them goes there. Where a strip is all that protects, everything goes into it: on the wall
 * beside the outlet, or at the rim where the worst cord does better there.
 *
 * @example judgedCords(situation)[0]?.verdict // 'fits'
 */
export function judgedCords(situation: Situation): Judged[] {
  const { cords, strips } = judgeAll(situation)
  return [...cords, ...strips]
}

/** The same, apart. @example judgeAll(situation).strips // [] where nothing goes to a strip beside the rim */
export function judgeAll(situation: Situation): AllJudged {
  const cords = cordsOf(situation)
  const to = (way: Way): Judged[] => cords.map((each) => judgeWay(each, way))
  const strips = usedStrips(situation).map(({ name, spec }) =>
    judgeWay(cord(name, spec.cordMm, CORD_MM.strip, NO_WATER, overRim(situation)), toOutlet(situation)),
  )
  const hung = to(toStrip(situation))
  if (cords.length > 0 && protectingStrips(situation).length > 0) {
    const wall = to(toWallStrip(situation))
    const atRim = [...hung, ...strips]
    return better(atRim.reduce(worse), wall.reduce(worse))
      ? { cords: hung, strips, rejected: wall }
      : { cords: wall, strips: [], rejected: atRim }
  }
  const [first, ...others] = strips.filter(({ verdict }) => verdict !== 'does_not_fit')
  const wall = to(toOutlet(situation))
  if (!first) return { cords: wall, strips: [] }
  const strip = others.reduce((best, each) => (better(each, best) ? each : best), first)
  const judged = hung.map((by, index) => {
    const alone = wall[index] ?? by
    return better({ ...by, verdict: worstOf([by.verdict, strip.verdict]) }, alone) ? by : alone
  })
  return { cords: judged, strips: judged.some((each) => each.to === 'strip') ? [strip] : [] }
}

/** *Fits* from the hanging form with slack, *marginal* from the shortest cord that still makes the loop. */
function judgeCord(usableMm: number, loop: DripLoop): Verdict {
  const usable = Math.round(usableMm)
  if (usable >= Math.round(loop.neededMm)) return 'fits'
  return usable >= Math.round(loop.shortestMm) ? 'marginal' : 'does_not_fit'
}

/** A cord at one end of its exit's height and one of what it is plugged into. */
interface Corner extends Pick<Judged, 'underWaterMm' | 'run' | 'mostMm' | 'usableMm' | 'loop' | 'reserveMm'> {
  /** With the shortest and with the longest cord. */
  verdicts: [least: Verdict, most: Verdict]
}

function cornerOf({ wholeMm, underWaterMm, exit }: Cord, way: Way, side: keyof Span, endSide: keyof Span): Corner {
  const run = runOf(exit, way, side, endSide)
  const loop = dripLoop(run)
  const [usableMm, mostMm] = [wholeMm.low - underWaterMm[side], wholeMm.high - underWaterMm[side]]
  return {
    underWaterMm: underWaterMm[side],
    run,
    mostMm,
    usableMm,
    loop,
    reserveMm: loop ? round(usableMm - loop.neededMm, 6) : -Infinity,
    verdicts: loop ? [judgeCord(usableMm, loop), judgeCord(mostMm, loop)] : ['does_not_fit', 'does_not_fit'],
  }
}

const SIDES = ['high', 'low'] as const

const sidesOf = (height: Span): ReadonlyArray<keyof Span> => (isExact(height) ? ['high'] : SIDES)

/** Exit and end of one rim are high together; a sump and a stand that nobody measured are each what they are. */
function cornersOf(cord: Cord, way: Way): Corner[] {
  const [height] = cord.exit.unstated
  const isOneRim = height !== undefined && way.end.unstated.includes(height)
  const ends = sidesOf(way.end.heightMm)
  return sidesOf(cord.exit.heightMm).flatMap((side) => (isOneRim ? [side] : ends).map((endSide) => cornerOf(cord, way, side, endSide)))
}

const neededOf = ({ loop }: Pick<Corner, 'loop'>): number => round(loop?.neededMm ?? Infinity, 3)
/** The least reserve, and of several the longest loop: what lies in the water may make up for it. */
const tighter = (one: Corner, other: Corner): Corner =>
  other.reserveMm < one.reserveMm || (other.reserveMm === one.reserveMm && neededOf(other) > neededOf(one)) ? other : one

function judgeWay(cord: Cord, way: Way): Judged {
  const corners = cornersOf(cord, way)
  const { verdicts: _, ...worst } = corners.reduce(tighter)
  const [least, most] = [corners.map(({ verdicts }) => verdicts[0]), corners.map(({ verdicts }) => verdicts[1])]
  const moves = corners.some((each) => neededOf(each) !== neededOf(worst) || each.underWaterMm !== worst.underWaterMm)
  return {
    name: cord.name,
    stated: cord.stated,
    inSump: cord.inSump,
    to: way.to,
    ...worst,
    verdict: worst.loop ? settle(worstOf(least), bestOf(most)) : 'does_not_fit',
    heights: moves ? namesOf(cord.exit.unstated, way.end.unstated) : [],
  }
}
