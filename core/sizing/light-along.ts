import { FIXTURE_WIDTH_MM, lightAtBed, waterUnder, type BedLight } from './light-at-bed.ts'
import { dimmedShare } from './light-level.ts'
import { fixtureFactor, lightUtilisation } from './light-utilisation.ts'
import type { LightSpec } from '../catalog/spec.ts'
import type { Point } from './plan-outline.ts'
import type { Situation } from './situation.ts'
import { LIGHT_ABOVE_RIM_MM } from './typical-ranges.ts'
import { over, round, type Span } from './span.ts'

/** Light before an end pane over the light in the middle, and before the front pane over the same: 1 is even. At the dark end. */
export interface LightEven {
  endsShare: number
  frontShare: number
}

/** Light at the substrate along the middle of the tank, from the left end pane to the right one. */
export interface LightAlong extends LightEven {
  /** By rising distance from the left end pane, inside; µmol/m²s at the dark and at the bright end of what is stated. */
  points: Array<{ alongMm: number; lowUmol: number; highUmol: number }>
  /** Share to which the check dims the lights; absent where it leaves them as they are. The points are of the undimmed light. */
  dimmedTo?: number
}

/** The light of a build: its mean at the substrate, and how it lies over it. Undefined without a light. */
export interface Lit {
  bed: BedLight | undefined
  lies: LightLies | undefined
}

/** @example litOf(situation).lies?.even.endsShare // 0.8 */
export function litOf(situation: Situation): Lit {
  const bed = lightAtBed(situation)
  return { bed, lies: bed && lightLies(situation, bed) }
}

/** How the light of a build lies over its bed: places in mm from the middle of the bed, light in µmol/m²s. */
interface LightLies {
  /** The panes to the left and to the right. */
  ends: Span
  even: LightEven
  at: (alongMm: number, acrossMm: number) => number
}

/** Points from end to end, an odd number so that one is the middle. Own. */
const POINTS = 13
/** Refractive index of water: from above, the bed seems this much nearer than it is. */
const WATER_INDEX = 1.333
/** Fixtures shorter than this share of the tank stand in line rather than side by side. The least that one fixture should cover: common practice. */
const IN_LINE_BELOW = 0.75

/** One entry of the lights as a body that shines: several that stand in line are one as long as all. */
interface Row {
  lengthMm: number
  widthMm: number
}

/**
 * What shines, several taken as one: short ones in line, long ones side by side and evenly spread. Never more than the tank.
 *
 * Units: mm. @example rowOf({ lengthMm: 600, widthMm: 80 }, 2, shape) // { lengthMm: 1200, widthMm: 80 } over a tank of 1219 mm
 */
export function rowOf(spec: LightSpec, count: number, tank: { lengthMm: number; widthMm: number }): Row {
  const lengthMm = spec.lengthMm ?? tank.lengthMm
  const widthMm = spec.widthMm ?? FIXTURE_WIDTH_MM
  const inLine = lengthMm < IN_LINE_BELOW * tank.lengthMm
  const spreadMm = inLine ? 0 : (tank.widthMm * (count - 1)) / count
  return { lengthMm: Math.min(inLine ? lengthMm * count : lengthMm, tank.lengthMm), widthMm: Math.min(widthMm + spreadMm, tank.widthMm) }
}

/** The bed as its outline, from the middle of its area, and that area. */
interface Bed {
  water: readonly Point[]
  areaMm2: number
}

/** The bed of the first tank that the stated figures allow, as `lightAtBed` takes it; null where there is none. */
function bedOf({ corners: [corner] }: Situation): Bed | null {
  return corner ? { water: waterUnder(corner), areaMm2: corner.geometry.insidePlanMm2 } : null
}

/** Where the panes stand to either side of the middle along one axis. */
function panesOn(along: keyof Point, water: readonly Point[]): Span {
  const across = along === 'x' ? 'y' : 'x'
  const met = water.flatMap((to, index) => {
    const from = water.at(index - 1) ?? to
    if (from[across] > 0 === to[across] > 0) return []
    return [from[along] + (from[across] / (from[across] - to[across])) * (to[along] - from[along])]
  })
  return over(met, (each) => each)
}

/** How much more light than the mean a patch of the bed gets; 1 is the mean. Lengths in mm, from the middle of the bed. */
function relativeLight(row: Row, { water, areaMm2 }: Bed, aboveMm: number, depthMm: number) {
  const under = { fixtureLengthMm: row.lengthMm, fixtureWidthMm: row.widthMm, water }
  const belowMm = aboveMm + depthMm / WATER_INDEX
  const entering = lightUtilisation({ ...under, aboveWaterMm: aboveMm })
  const direct = Math.min(1, lightUtilisation({ ...under, aboveWaterMm: belowMm }) / entering)
  const scale = areaMm2 / (row.lengthMm * row.widthMm * entering)
  return (alongMm: number, acrossMm: number): number =>
    scale * fixtureFactor({ fixtureLengthMm: row.lengthMm, fixtureWidthMm: row.widthMm, alongMm, acrossMm, belowMm }) + 1 - direct
}

/** The light of all rows together at an end of what is stated, hung so high above the rim. */
function lightFrom({ gear, conditions, corners, tank }: Situation, light: BedLight, end: keyof Span, bed: Bed): LightLies['at'] {
  const { waterDepthMm = 0, substrateDepthMm = 0 } = corners[0]?.geometry ?? {}
  const aboveMm = conditions.waterBelowRimMm + LIGHT_ABOVE_RIM_MM[end === 'low' ? 'high' : 'low']
  // Entries that shine alike are reckoned once, with the light of all of them.
  const rows = new Map<string, { row: Row; share: number }>()
  for (const [index, { spec, quantity: count }] of gear.lights.entries()) {
    const row = rowOf(spec, count, tank)
    const size = `${row.lengthMm} ${row.widthMm}`
    rows.set(size, { row, share: (rows.get(size)?.share ?? 0) + (light.shares[index]?.[end] ?? 0) })
  }
  const lit = [...rows.values()].map(({ row, share }) => ({
    share,
    relative: relativeLight(row, bed, aboveMm, waterDepthMm - substrateDepthMm),
  }))
  return (alongMm, acrossMm) => lit.reduce((sum, { share, relative }) => sum + share * relative(alongMm, acrossMm), 0)
}

/**
 * How much darker ends and front are than the middle of the substrate, each share to a hundredth.
 *
 * Source: as `lightAlong`. @example lightLies(situation, light)?.even.endsShare // 0.8: before an end pane four fifths of the light in the middle
 */
export function lightLies(situation: Situation, light: BedLight): LightLies | undefined {
  const bed = bedOf(situation)
  if (!bed) return undefined
  const [ends, faces] = [panesOn('x', bed.water), panesOn('y', bed.water)]
  const at = lightFrom(situation, light, 'low', bed)
  const middle = at(0, 0)
  const even = {
    endsShare: round(Math.min(at(ends.low, 0), at(ends.high, 0)) / middle, 2),
    frontShare: round(at(0, faces.high) / middle, 2),
  }
  return { ends, even, at }
}

/**
 * Light at the substrate from end to end, and how much darker ends and front are than the middle.
 *
 * Units:  mm from the left end pane, µmol/m²s, rounded to a tenth; shares to a hundredth.
 * Source: own. What falls straight on a patch of the plan's own outline, by configuration factors (Lambert's integral round the edge), the bed raised by the refraction of the water; what meets
 *         the panes first comes back from them, since glass before air turns shallow light back, and is spread evenly. Their mean is that of `lightAtBed`.
 *
 * @example lightAlong(situation, light)?.points.length // 13
 */
export function lightAlong(situation: Situation, light: BedLight, lies = lightLies(situation, light)): LightAlong | undefined {
  const bed = bedOf(situation)
  if (!bed || !lies) return undefined
  const { ends, even, at } = lies
  const bright = lightFrom(situation, light, 'high', bed)
  const points = Array.from({ length: POINTS }, (_, i) => {
    const alongMm = ((ends.high - ends.low) * i) / (POINTS - 1)
    const [lowUmol, highUmol] = [at(ends.low + alongMm, 0), bright(ends.low + alongMm, 0)]
    return {
      alongMm: Math.round(alongMm),
      lowUmol: round(Math.min(lowUmol, highUmol), 1),
      highUmol: round(Math.max(lowUmol, highUmol), 1),
    }
  })
  const dimmedTo = round(dimmedShare(situation, light), 3)
  return { points, ...even, ...(dimmedTo < 1 ? { dimmedTo } : {}) }
}
