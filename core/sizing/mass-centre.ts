import type { TankGeometry, TankShape } from './tank-geometry.ts'
import type { TankMass } from './tank-mass.ts'

/** A mass and the height of its centre above what it stands on. */
export interface MassAt {
  kg: number
  heightMm: number
}

/**
 * Several masses as one: the height of the centre is their mean, weighted by mass.
 *
 * Units:  kg and mm, unrounded. Errors: none; without any mass the height is 0. Source: composite bodies, any statics text.
 *
 * @example massTogether([{ kg: 3, heightMm: 100 }, { kg: 1, heightMm: 500 }]) // { kg: 4, heightMm: 200 }
 */
export function massTogether(parts: readonly MassAt[]): MassAt {
  const kg = parts.reduce((sum, part) => sum + part.kg, 0)
  return { kg, heightMm: kg > 0 ? parts.reduce((sum, part) => sum + part.kg * part.heightMm, 0) / kg : 0 }
}

/** Of a tank alone, above its underside. */
export interface TankCentres {
  empty: MassAt
  running: MassAt
  brim: MassAt
}

/** Water above the inside floor up to a depth, less the grains that lie in it: its centre above the inside floor, mm. */
function waterCentreMm(geometry: TankGeometry, depthMm: number): number {
  const columnL = (geometry.insidePlanMm2 * depthMm) / 1e6
  const bed = geometry.substrateSolidL * (geometry.substrateDepthMm / 2)
  return (columnL * (depthMm / 2) - bed) / (columnL - geometry.substrateSolidL)
}

/**
 * Masses and centres of a tank empty, running and filled to the rim, whatever its plan: upright panes and a plate under them.
 *
 * Units:  kg and mm, unrounded. Range: any tank that `tankGeometry` accepts. Without rim, braces, lid and equipment.
 * Source: a shell is its outside less its inside, each with its centre at half its height (composite bodies, any statics text).
 *
 * @example // 48 × 18 × 21 in, 10 mm glass, 50 mm of gravel, 40 mm below the rim
 * tankCentres(shape, geometry, mass).running.heightMm // 229
 */
export function tankCentres(shape: Pick<TankShape, 'heightMm' | 'bottomMm'>, geometry: TankGeometry, mass: TankMass): TankCentres {
  const { bottomMm, heightMm } = shape
  const inside = geometry.grossVolumeL * (bottomMm + geometry.insideHeightMm / 2)
  const empty = { kg: mass.emptyKg, heightMm: (geometry.outsideVolumeL * (heightMm / 2) - inside) / geometry.shellVolumeL }
  const bed = { kg: mass.substrateKg, heightMm: bottomMm + geometry.substrateDepthMm / 2 }
  const filled = (kg: number, depthMm: number) => massTogether([empty, bed, { kg, heightMm: bottomMm + waterCentreMm(geometry, depthMm) }])
  return {
    empty,
    running: filled(mass.runningKg - mass.emptyKg - mass.substrateKg, geometry.waterDepthMm),
    brim: filled(mass.brimKg - mass.emptyKg - mass.substrateKg, geometry.insideHeightMm),
  }
}
