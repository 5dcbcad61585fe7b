import { floorMassKg, standOn } from './floor-load.ts'
import { joistsOf, onJoists, type Joists, type LaidCase } from './joist-floor.ts'
import type { LoadPath } from './joist-load.ts'
import type { Situation } from './situation.ts'

/** The tank on measured joists, as a plan draws it: the worst of the ways that nobody has ruled out. Millimetres. */
export interface FloorPlan {
  spanMm: number
  spacingMm: number
  lie: 'bearing_wall' | 'across' | 'along'
  /** False where nobody said how it lies, and the worst is drawn. */
  lieStated: boolean
  path: LoadPath
  pathStated: boolean
  /** Of the stand, along the joists and across them. */
  alongMm: number
  acrossMm: number
  /** Middle of the stand from the support it stands nearest to. */
  centreMm: number
  /** The same where it was answered to stand, which is mid-span; absent where that is the worst, or where nobody said how it lies. */
  answeredCentreMm?: number
  massKg: number
  /** What the worst joist takes of its allowance, and in what. */
  loadPercent: number
  governs: 'bending' | 'shear'
}

const mm = (metres: number): number => Math.round(metres * 1000)

/** Away from the bearing wall means anywhere between the supports: it is drawn in the middle, while the verdict is of the worst place. */
function answered(at: LaidCase, joists: Joists): Pick<FloorPlan, 'answeredCentreMm'> {
  const middle = mm(at.spanM / 2)
  return joists.joistLie === 'across' && mm(at.centreM) !== middle ? { answeredCentreMm: middle } : {}
}

/**
 * Where the tank stands on its joists in the case that the floor's finding is about.
 *
 * Units:  mm, kg, per cent, whole.
 * Errors: undefined where the floor is not of timber or nobody measured its joists.
 * Source: `onJoists`.
 *
 * @example floorPlan(situation)?.governs // 'shear', at the wall that carries the joists
 */
export function floorPlan(situation: Situation): FloorPlan | undefined {
  const { conditions } = situation
  const joists = conditions.floor === 'timber_upper' ? joistsOf(conditions) : null
  if (joists === null) return undefined
  const on = standOn(situation, floorMassKg(situation))
  const { at, ratio, governs } = onJoists(on, joists)
  return {
    spanMm: Math.round(joists.joistSpanMm),
    spacingMm: Math.round(joists.joistSpacingMm),
    lie: at.lie,
    lieStated: joists.joistLie !== undefined,
    path: at.path,
    pathStated: on.base !== undefined,
    alongMm: mm(at.alongM),
    acrossMm: mm(at.acrossM),
    centreMm: mm(at.centreM),
    ...answered(at, joists),
    massKg: Math.round(on.massKg),
    loadPercent: Math.round(ratio * 100),
    governs,
  }
}
