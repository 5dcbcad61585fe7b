import type { SumpSpec } from '../catalog/appliance-spec.ts'
import { seaWaterDensity } from '../water/density.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import { appliancesOf } from './appliances.ts'
import type { LivestockGroup } from './conditions.ts'
import type { Gear } from './gear.ts'
import { exactly, type Span, times } from './span.ts'
import { footprintM2 } from './tank-forms.ts'
import { tankGeometry, type TankGeometry, type TankShape } from './tank-geometry.ts'
import { PANEL_DENSITY } from './tank-mass.ts'
import { SUMP_OVER_TANK, SUMP_RUNNING, typicalGlassMm } from './typical-ranges.ts'

/** The sump of a build over all that nobody stated of it. Litres and kilograms, unrounded. */
export interface Sump {
  /** To its rim. */
  totalL: Span
  /** While the return pump runs. */
  runningL: Span
  /** Room above that for what runs back. */
  freeL: Span
  /** Mass of the least water that stands in it. */
  runningKg: number
  /** Filled to its rim, with its walls where its sides are stated: what the floor meets. */
  fullKg: number
  /** Walls and water at their most, where its sides are stated: what it loses heat through. */
  box: { shape: TankShape; geometry: TankGeometry } | null
  unstated: string[]
}

const MM3_PER_LITRE = 1e6

/** Whether the build has a sump, chosen or not: a return pump or a skimmer for one says so too. */
export const wantsSump = (gear: Gear): boolean =>
  gear.sump !== undefined ||
  gear.filters.some(({ spec }) => spec.type === 'return_pump') ||
  appliancesOf(gear).some(({ spec }) => spec.place === 'in_sump')

/** Inside to the rim, L. */
const insideL = ({ lengthMm, widthMm, heightMm, glassMm }: TankShape): number =>
  ((lengthMm - 2 * glassMm) * (widthMm - 2 * glassMm) * (heightMm - glassMm)) / MM3_PER_LITRE

/** With thin walls and with thick ones; null where a side is not stated. */
function wallsOf({ lengthMm, widthMm, heightMm, wallMm, material = 'glass' }: SumpSpec): { thin: TankShape; thick: TankShape } | null {
  if (lengthMm === undefined || widthMm === undefined || heightMm === undefined) return null
  const { low, high } = wallMm === undefined ? typicalGlassMm(lengthMm, heightMm) : exactly(wallMm)
  const shape = (mm: number): TankShape => ({ lengthMm, widthMm, heightMm, glassMm: mm, bottomMm: mm, material })
  return { thin: shape(low), thick: shape(high) }
}

/** The box with so much water in it; null where it holds less. */
function boxWith(shape: TankShape, litres: number): Sump['box'] {
  const { glassMm, heightMm } = shape
  const waterBelowRimMm = (heightMm - glassMm) * Math.max(0, 1 - litres / insideL(shape))
  const geometry = tankGeometry(shape, { waterBelowRimMm, substrateDepthMm: 0 })
  return geometry.ok ? { shape, geometry: geometry.value } : null
}

/**
 * What the sump holds, and what of that is free while its pump runs. Volumes that nobody stated follow from its sides, else from the tank's size.
 *
 * Units:  as the fields' names say. Null without a sump or a tank.
 * Source: geometry; the shares are common practice (typical-ranges.ts).
 *
 * @example sumpOf(gear, livestock)?.freeL // { low: 28, high: 28 } for one of 66 L that runs with 38 L
 */
export function sumpOf(
  { sump, tank }: Pick<Gear, 'sump' | 'tank'>,
  { water, targetC }: Pick<LivestockGroup, 'water' | 'targetC'>,
): Sump | null {
  if (!sump || !tank) return null
  const { spec } = sump
  const walls = wallsOf(spec)
  const boxL = walls && { low: insideL(walls.thick), high: insideL(walls.thin) }
  const one =
    spec.totalVolumeL === undefined
      ? (boxL ?? times(SUMP_OVER_TANK, footprintM2(tank.spec).high * tank.spec.heightMm))
      : exactly(spec.totalVolumeL)
  const { operatingVolumeL: running } = spec
  const share = (of: number, part: number): number => (running === undefined ? of * part : Math.min(of, running))
  const each = { low: share(one.low, SUMP_RUNNING.low), high: share(one.high, SUMP_RUNNING.high) }
  const free = { low: one.low - share(one.low, SUMP_RUNNING.high), high: one.high - share(one.high, SUMP_RUNNING.low) }
  const kgPerLitre = seaWaterDensity(SALINITY[water], targetC) / 1000
  const [box, heavy] = [walls && boxWith(walls.thin, each.high), walls && boxWith(walls.thick, 0.5 * each.low)]
  return {
    totalL: one,
    runningL: each,
    freeL: free,
    runningKg: each.low * kgPerLitre,
    fullKg: one.high * kgPerLitre + (heavy ? (heavy.geometry.shellVolumeL * PANEL_DENSITY[heavy.shape.material]) / 1000 : 0),
    box,
    unstated: [...(one.low === one.high ? [] : ['volume of the sump']), ...(running === undefined ? ['water in the sump'] : [])],
  }
}
