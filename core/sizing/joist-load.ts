import { FREE_FALL } from './glass-plate.ts'
import { beamResponse, type BeamLoad } from './joist-beam.ts'

/** What stands on the floor, and the joists under it. Metres, kilograms, pascals. */
export interface JoistCase {
  massKg: number
  /** Of the stand, along the joists and across them. */
  alongM: number
  acrossM: number
  spanM: number
  spacingM: number
  /** What the floor was designed for, Pa. */
  livePa: number
  /** Middle of the stand from the nearer support. */
  centreM: number
  path: LoadPath
  /** Which way the longer side lies: end panels stand under the ends of it. */
  longSide: 'along' | 'across'
}

/** How the stand hands its load on: over its whole base, through a panel at each end, or through four feet. */
export const LOAD_PATHS = ['full', 'end_panels', 'feet'] as const
export type LoadPath = (typeof LOAD_PATHS)[number]

/** Each as a share of what the most-loaded joist was designed for, before any factor for how long the load stays. */
export interface JoistRatios {
  bending: number
  shear: number
  deflection: number
}

/**
 * Share of a load spread over `acrossM` that the joist under its middle takes, the boards spanning from joist to joist: the lever rule, at the worst place.
 *
 * @example loadShare(0.6, 0.4) // 0.625
 */
export function loadShare(acrossM: number, spacingM: number): number {
  return acrossM <= 2 * spacingM ? 1 - acrossM / (4 * spacingM) : spacingM / acrossM
}

/** Share of two equal loads, a distance apart across the joists, that the worst joist takes: one of them, and what the other leaves it. */
const pairShare = (apartM: number, spacingM: number): number => (1 + Math.max(0, 1 - apartM / spacingM)) / 2

/** What rests on the most-loaded joist, N and m. @example loadsOf(at).reduce((sum, { newtons }) => sum + newtons, 0) // 3067 of 385 kg on its whole base */
export function loadsOf(at: JoistCase): BeamLoad[] {
  const totalN = at.massKg * FREE_FALL
  const [fromM, toM] = [at.centreM - at.alongM / 2, at.centreM + at.alongM / 2]
  const ends = (newtons: number): BeamLoad[] => [fromM, toM].map((x) => ({ newtons: newtons / 2, fromM: x, toM: x }))
  if (at.path === 'full') return [{ newtons: loadShare(at.acrossM, at.spacingM) * totalN, fromM, toM }]
  if (at.path === 'feet') return ends(pairShare(at.acrossM, at.spacingM) * totalN)
  if (at.longSide === 'across') return [{ newtons: pairShare(at.acrossM, at.spacingM) * totalN, fromM, toM }]
  return ends(loadShare(at.acrossM, at.spacingM) * totalN)
}

/**
 * What a tank puts on the most-loaded joist, against what the joist was designed for: an even load over its strip of floor.
 *
 * Units:  metres, kg, Pa; ratios without a unit.
 * Range:  the stand lies between the supports; spacing and span above 0. Nothing else in the room is counted, and no notch, splice or bridging.
 * Errors: none.
 * Source: statics; live loads by IRC table R301.5 or EN 1991-1-1 table 6.2; sharing among joists by the lever rule.
 *
 * @example // 385 kg, 48 × 18 in across joists of 12 ft at 16 in, 40 lbf/ft², at mid-span, on its whole base
 * joistLoad({ massKg: 385, alongM: 0.4572, acrossM: 1.2192, spanM: 3.6576, spacingM: 0.4064, livePa: 1915.2, centreM: 1.8288, path: 'full', longSide: 'across' }).bending // 0.8289
 */
export function joistLoad(at: JoistCase): JoistRatios {
  const { spanM, spacingM, livePa } = at
  const designed = livePa * spacingM
  const { momentNm, shearN, midDeflection } = beamResponse(loadsOf(at), spanM)
  return {
    bending: momentNm / ((designed * spanM ** 2) / 8),
    shear: shearN / ((designed * spanM) / 2),
    deflection: midDeflection / ((5 * designed * spanM ** 4) / 384),
  }
}
