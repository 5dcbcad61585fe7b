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
import { SUMP_FORM, SUMP_OVER_TANK, SUMP_RUNNING, typicalGlassMm } from './typical-ranges.ts'

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
  /** What each of `count` sumps loses heat through: the box of its stated sides at its fullest, else a compact and a flat one. */
  boxes: readonly SumpBox[]
  count: number
  unstated: string[]
  /** Nothing but the loss of heat hangs on them. */
  sidesUnstated: string[]
}

export interface SumpBox {
  shape: TankShape
  geometry: TankGeometry
}

/** Litres of all sumps of a build together, without their mass. */
export interface SumpVolumes {
  each: Span
  totalL: Span
  runningL: Span
  /** Of the height, 0 to 1. */
  level: Span
}

const MM3_PER_LITRE = 1e6

/** Whether the build has a sump, chosen or not: a return pump or a skimmer for one says so too. */
export const wantsSump = (gear: Gear): boolean =>
  gear.sump !== undefined ||
  gear.filters.some(({ spec }) => spec.type === 'return_pump') ||
  appliancesOf(gear).some(({ spec }) => spec.place === 'in_sump')

/** Inside to the rim, L. */
const insideL = ({ lengthMm, widthMm, heightMm, glassMm }: TankShape): number =>
  (Math.max(0, lengthMm - 2 * glassMm) * Math.max(0, widthMm - 2 * glassMm) * Math.max(0, heightMm - glassMm)) / MM3_PER_LITRE

/** Outer sides of a sump of usual form that holds so many litres: the compact one loses least heat, the flat one most. mm. */
export function sumpSides(litres: number, form: keyof typeof SUMP_FORM, statedWallMm?: number): Sides {
  const { length, width } = SUMP_FORM[form]
  const heightMm = Math.cbrt((litres * MM3_PER_LITRE) / (length * width))
  const wallMm = statedWallMm ?? typicalGlassMm(length * heightMm, heightMm).low
  return { lengthMm: length * heightMm + 2 * wallMm, widthMm: width * heightMm + 2 * wallMm, heightMm: heightMm + wallMm }
}

interface Walls {
  thin: TankShape
  thick: TankShape
}

type Sides = Required<Pick<SumpSpec, 'lengthMm' | 'widthMm' | 'heightMm'>>

/** With thin walls and with thick ones. */
function wallsIn({ lengthMm, widthMm, heightMm, wallMm, material = 'glass' }: SumpSpec & Sides): Walls {
  const { low, high } = wallMm === undefined ? typicalGlassMm(lengthMm, heightMm) : exactly(wallMm)
  const shape = (mm: number): TankShape => ({ lengthMm, widthMm, heightMm, glassMm: mm, bottomMm: mm, material })
  return { thin: shape(low), thick: shape(high) }
}

/** The same; null where a side is not stated. */
function wallsOf(spec: SumpSpec): Walls | null {
  const { lengthMm, widthMm, heightMm } = spec
  if (lengthMm === undefined || widthMm === undefined || heightMm === undefined) return null
  return wallsIn({ ...spec, lengthMm, widthMm, heightMm })
}

/** The box with so much water in it; null where it holds less. */
function boxWith(shape: TankShape, litres: number): SumpBox | null {
  const { glassMm, heightMm } = shape
  const waterBelowRimMm = (heightMm - glassMm) * Math.max(0, 1 - litres / insideL(shape))
  const geometry = tankGeometry(shape, { waterBelowRimMm, substrateDepthMm: 0 })
  return geometry.ok ? { shape, geometry: geometry.value } : null
}

/**
 * What the sumps of a build hold together, and how high the water stands in them. Null without a sump or a tank.
 *
 * Units: L. Source: as `sumpOf`. @example sumpVolumes(gear)?.level // { low: 0.4, high: 0.75 } where nobody stated the running water
 */
export function sumpVolumes({ sump, tank }: Pick<Gear, 'sump' | 'tank'>): SumpVolumes | null {
  if (!sump || !tank) return null
  const { spec, quantity } = sump
  const walls = wallsOf(spec)
  const each =
    spec.totalVolumeL !== undefined
      ? exactly(spec.totalVolumeL)
      : walls
        ? { low: insideL(walls.thick), high: insideL(walls.thin) }
        : times(SUMP_OVER_TANK, (footprintM2(tank.spec).high * tank.spec.heightMm) / quantity)
  const { operatingVolumeL: running } = spec
  const share = (of: number, part: number): number => (running === undefined ? of * part : Math.min(of, running))
  const one = { low: share(each.low, SUMP_RUNNING.low), high: share(each.high, SUMP_RUNNING.high) }
  const level = running === undefined ? SUMP_RUNNING : { low: Math.min(1, running / each.high), high: Math.min(1, running / each.low) }
  return { each, totalL: times(each, quantity), runningL: times(one, quantity), level }
}

/**
 * What the sump holds, and what of that is free while its pump runs. Volumes that nobody stated follow from its sides, else from the tank's size.
 * Of several their volumes add: they stand level with one another, joined below.
 *
 * Units:  as the fields' names say. Null without a sump or a tank.
 * Source: geometry; the shares are common practice (typical-ranges.ts).
 *
 * @example sumpOf(gear, livestock)?.freeL // { low: 28, high: 28 } for one of 66 L that runs with 38 L
 */
export function sumpOf(gear: Pick<Gear, 'sump' | 'tank'>, { water, targetC }: Pick<LivestockGroup, 'water' | 'targetC'>): Sump | null {
  const volumes = sumpVolumes(gear)
  if (!volumes || !gear.sump) return null
  const { spec, quantity: count } = gear.sump
  const { each, totalL, runningL, level } = volumes
  const kgPerLitre = seaWaterDensity(SALINITY[water], targetC) / 1000
  const walls = wallsOf(spec)
  const formed = (end: keyof Span, form: keyof typeof SUMP_FORM) =>
    boxWith(wallsIn({ ...spec, ...sumpSides(each[end], form, spec.wallMm) })[form === 'flat' ? 'thin' : 'thick'], runningL[end] / count)
  const boxes = walls ? [boxWith(walls.thin, runningL.high / count)] : [formed('low', 'compact'), formed('high', 'flat')]
  const heavy = walls && boxWith(walls.thick, (0.5 * runningL.low) / count)
  return {
    totalL,
    runningL,
    freeL: { low: totalL.low * (1 - level.high), high: totalL.high * (1 - level.low) },
    runningKg: runningL.low * kgPerLitre,
    fullKg: totalL.high * kgPerLitre + (heavy ? (count * heavy.geometry.shellVolumeL * PANEL_DENSITY[heavy.shape.material]) / 1000 : 0),
    boxes: boxes.filter((box) => box !== null),
    count,
    unstated: [
      ...(each.low === each.high ? [] : ['volume of the sump']),
      ...(spec.operatingVolumeL === undefined ? ['water in the sump'] : []),
    ],
    sidesUnstated: walls ? [] : ['sides of the sump'],
  }
}
