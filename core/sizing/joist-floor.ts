import type { StandSpec } from '../catalog/spec.ts'
import type { JoistConditions } from './conditions.ts'
import { joistLoad, LOAD_PATHS, type JoistCase, type LoadPath } from './joist-load.ts'

/** Live loads of dwellings, Pa: IRC table R301.5, 30 lbf/ft² in bedrooms and 40 elsewhere; a pound-force per square foot is 47.88 Pa (NIST SP 811). */
export const LIVE_LOAD_PA = { bedroom: 1436.4, other: 1915.2 } as const
/** A full tank never leaves: NDS table 2.3.2, permanent load. */
export const PERMANENT_LOAD_FACTOR = 0.9
/** Gap that hoses and cords leave behind a stand. Common practice. */
const BEHIND_STAND_M = 0.05
/** Shear close to a support and bending at mid-span are one figure in two ways of reckoning: bending is told. */
const SAME = 1e-9

/** What stands on the joists: millimetres, kilograms. */
export interface OnJoists {
  massKg: number
  lengthMm: number
  widthMm: number
  base: StandSpec['base']
}

export interface JoistVerdict {
  /** Worst of bending and end shear over the allowance, the load's lasting counted. */
  ratio: number
  governs: 'bending' | 'shear'
  /** Sag at mid-span over the sag under the load the floor was designed for. Wood under a load that stays sags half as much again or twice. */
  sag: number
  /** How it lies and stands where the ratio is worst. */
  at: LaidCase
}

/** The joists that somebody measured; null where span or spacing is not known. */
export type Joists = JoistConditions & { joistSpanMm: number; joistSpacingMm: number }
export const joistsOf = (conditions: JoistConditions): Joists | null =>
  conditions.joistSpanMm !== undefined && conditions.joistSpacingMm !== undefined
    ? { ...conditions, joistSpanMm: conditions.joistSpanMm, joistSpacingMm: conditions.joistSpacingMm }
    : null

type Lie = NonNullable<JoistConditions['joistLie']>
/** A case of the statics, and the lie that it comes from. */
export type LaidCase = JoistCase & { lie: Lie }

const PATHS_OF: Record<NonNullable<StandSpec['base']>, readonly LoadPath[]> = { full: ['full'], end_panels: ['end_panels'], feet: ['feet'] }

function casesOf(tank: OnJoists, joists: Joists, lie: Lie): LaidCase[] {
  const spanM = joists.joistSpanMm / 1000
  const [lengthM, widthM] = [tank.lengthMm / 1000, tank.widthMm / 1000]
  const alongM = Math.min(lie === 'along' ? lengthM : widthM, spanM)
  const nearest = alongM / 2
  const centres = lie === 'bearing_wall' ? [Math.min(BEHIND_STAND_M + nearest, spanM / 2)] : [spanM / 2, nearest]
  return (tank.base ? PATHS_OF[tank.base] : LOAD_PATHS).flatMap((path) =>
    centres.map((centreM) => ({
      lie,
      massKg: tank.massKg,
      alongM,
      acrossM: lie === 'along' ? widthM : lengthM,
      spanM,
      spacingM: joists.joistSpacingMm / 1000,
      livePa: LIVE_LOAD_PA[joists.floorUse ?? 'bedroom'],
      centreM,
      path,
      longSide: lie === 'along' ? ('along' as const) : ('across' as const),
    })),
  )
}

/**
 * The worst that a tank puts on one joist, over every way it may lie and stand that nobody has ruled out: both directions, close to a support and at
 * mid-span, and through a full base, end panels or feet.
 *
 * Units:  millimetres, kilograms; ratios without a unit.
 * Range:  joists that are whole, dry and simply supported, with nothing else heavy on them.
 * Errors: none.
 * Source: as `joistLoad`; the duration factor by NDS table 2.3.2.
 *
 * @example onJoists({ massKg: 385, lengthMm: 1219, widthMm: 457, base: 'end_panels' }, { joistSpanMm: 3658, joistSpacingMm: 406, joistLie: 'bearing_wall', floorUse: 'other' }).governs // 'shear'
 */
export function onJoists(tank: OnJoists, joists: Joists): JoistVerdict {
  const lies: readonly Lie[] = joists.joistLie ? [joists.joistLie] : ['across', 'along']
  return lies
    .flatMap((lie) => casesOf(tank, joists, lie))
    .map(verdictOf)
    .reduce((worst, each) => ({ ...(each.ratio > worst.ratio * (1 + SAME) ? each : worst), sag: Math.max(worst.sag, each.sag) }))
}

function verdictOf(at: LaidCase): JoistVerdict {
  const { bending, shear, deflection } = joistLoad(at)
  return {
    ratio: Math.max(bending, shear) / PERMANENT_LOAD_FACTOR,
    governs: shear > bending * (1 + SAME) ? 'shear' : 'bending',
    sag: deflection,
    at,
  }
}
