import { refuse, ok, type Result } from '../result.ts'
import { backMm, insideBox, leavesInside, planFault, tankPlan, type PlanFault, type TankPlan } from './tank-plan.ts'

/** Plan, height and panel thicknesses, outside. The panes stand upright and are all as thick. */
export interface TankShape extends TankPlan {
  heightMm: number
  glassMm: number
  bottomMm: number
  material: 'glass' | 'acrylic'
}

/** How far it is filled. Decor is not counted: nobody has stated its volume. */
export interface TankFill {
  /** Water surface below the upper rim. */
  waterBelowRimMm: number
  substrateDepthMm: number
}

/** Lengths in mm, areas in mm², volumes in litres. */
export interface TankGeometry {
  /** Of the box around the inside. */
  insideLengthMm: number
  insideWidthMm: number
  /** Water surface, and the floor that a bed covers. */
  insidePlanMm2: number
  /** What stands on the stand. */
  outsidePlanMm2: number
  /** Length of the panes all round, outside. */
  outsideRoundMm: number
  /** The part of it that is turned to the wall. */
  outsideBackMm: number
  /** From the centre of the plan to the nearest side, outside. */
  outsideLeverMm: number
  insideHeightMm: number
  /** Water surface above the inside floor. */
  waterDepthMm: number
  substrateDepthMm: number
  outsideVolumeL: number
  grossVolumeL: number
  columnVolumeL: number
  /** Grains without the water between them. */
  substrateSolidL: number
  /** What is dosed, heated and weighed. */
  waterVolumeL: number
  /** Volume of the panels themselves, whatever way they are joined. */
  shellVolumeL: number
}

export type TankRefusal =
  | PlanFault
  | { code: 'no_inside'; side: 'length' | 'width' | 'height' }
  | { code: 'no_water'; waterBelowRimMm: number; insideHeightMm: number }
  | { code: 'substrate_too_deep'; substrateDepthMm: number; waterDepthMm: number }

/** 1 L is 1 dm³: SI Brochure, 9th edition, table 8. */
const MM3_PER_LITRE = 1e6

/** Share of a substrate bed that is water between the grains. Gravel 0.25 to 0.40, sand 0.25 to 0.50: Freeze & Cherry (1979) table 2.4, from memory; 0.40 is common practice. */
export const POROSITY = 0.4

/**
 * Volumes of a tank as it will be filled, whatever its plan.
 *
 * Units:  millimetres in, litres out, unrounded.
 * Errors: those of `planFault`; `no_inside` names a side that the panels fill; `no_water` when the fill line is at or below the floor; `substrate_too_deep` when the bed
 *         reaches the water surface.
 * Source: geometry; substrate displaces only its grains.
 *
 * @example // 48 × 18 × 21 in, 10 mm glass, filled to 40 mm below the rim, 50 mm of gravel
 * tankGeometry(shape, { waterBelowRimMm: 40, substrateDepthMm: 50 }) // waterVolumeL 237.7132
 */
export function tankGeometry(shape: TankShape, fill: TankFill): Result<TankGeometry, TankRefusal> {
  const fault = planFault(shape)
  if (fault) return refuse(fault)
  const { lengthMm: insideLengthMm, widthMm: insideWidthMm } = insideBox(shape, shape.glassMm)
  const insideHeightMm = shape.heightMm - shape.bottomMm
  if (!(insideLengthMm > 0)) return refuse({ code: 'no_inside', side: 'length' })
  if (!(insideWidthMm > 0)) return refuse({ code: 'no_inside', side: 'width' })
  if (!leavesInside(shape, shape.glassMm)) return refuse({ code: 'no_inside', side: 'length' })
  if (!(insideHeightMm > 0)) return refuse({ code: 'no_inside', side: 'height' })
  const waterDepthMm = insideHeightMm - fill.waterBelowRimMm
  if (!(waterDepthMm > 0)) return refuse({ code: 'no_water', waterBelowRimMm: fill.waterBelowRimMm, insideHeightMm })
  const substrateDepthMm = fill.substrateDepthMm
  if (!(substrateDepthMm < waterDepthMm)) return refuse({ code: 'substrate_too_deep', substrateDepthMm, waterDepthMm })
  const [outside, inside] = [tankPlan(shape, 0), tankPlan(shape, shape.glassMm)]
  const litresPerMm = inside.areaMm2 / MM3_PER_LITRE
  const outsideVolumeL = (outside.areaMm2 * shape.heightMm) / MM3_PER_LITRE
  const grossVolumeL = litresPerMm * insideHeightMm
  const columnVolumeL = litresPerMm * waterDepthMm
  const substrateSolidL = litresPerMm * substrateDepthMm * (1 - POROSITY)
  return ok({
    insideLengthMm,
    insideWidthMm,
    insidePlanMm2: inside.areaMm2,
    outsidePlanMm2: outside.areaMm2,
    outsideRoundMm: outside.roundMm,
    outsideBackMm: backMm(shape),
    outsideLeverMm: outside.leverMm,
    insideHeightMm,
    waterDepthMm,
    substrateDepthMm,
    outsideVolumeL,
    grossVolumeL,
    columnVolumeL,
    substrateSolidL,
    waterVolumeL: columnVolumeL - substrateSolidL,
    shellVolumeL: outsideVolumeL - grossVolumeL,
  })
}
