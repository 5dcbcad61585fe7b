import type { TankSpec } from '../catalog/spec.ts'
import type { Cover } from './heat-transmission.ts'
import type { SizingSubject } from './report.ts'
import { boughtBedKg, ladenOf } from './laden-bed.ts'
import { exactly, type Span } from './span.ts'
import { tankGeometry, type TankGeometry, type TankRefusal, type TankShape } from './tank-geometry.ts'
import { tankMass, type Grain, type TankMass } from './tank-mass.ts'
import { sumpOf, type Sump } from './sump.ts'
import { plansOf } from './tank-forms.ts'
import { ACRYLIC_OVER_GLASS, BOTTOM_OVER_SIDES, typicalGlassMm } from './typical-ranges.ts'
import { assumedOf } from './words.ts'

/** One tank that the stated figures allow. */
export interface Corner {
  shape: TankShape
  geometry: TankGeometry
  /** The same with the bed that is weighed. */
  laden: TankGeometry
  mass: TankMass
}

/** A tank in a room: every tank and lid that the stated figures allow. A fully stated one has one corner and one cover. */
export interface Situation extends SizingSubject {
  tank: TankSpec
  /** Never empty. */
  corners: readonly Corner[]
  /** What nobody stated and the corners stand for: "glass thickness". */
  tankUnstated: readonly string[]
  /** Every way the top may be closed. */
  covers: readonly Cover[]
  coverUnstated: readonly string[]
  /** Defaults that the volumes and masses rest on: "water level below the rim". */
  fillDefaults: readonly string[]
  /** The same of what stand and floor carry: bags that are bought stand for no default. */
  loadDefaults: readonly string[]
  grain: Grain
  sump: Sump | null
  /** What nobody stated of tank and sump. */
  waterUnstated: readonly string[]
  /** What nobody stated of all that loses heat: the same, the cover and the sides of the sump. */
  lossUnstated: readonly string[]
}

export type SituationRefusal = { code: 'no_tank' } | TankRefusal

/** Depth of the bed that will really lie in the tank: none where the slot is answered "not needed" and nothing was chosen. */
export const bedDepthMm = (subject: SizingSubject): number => (isBare(subject) ? 0 : subject.conditions.substrateDepthMm)

const isBare = ({ gear }: Pick<SizingSubject, 'gear'>): boolean => gear.substrates.length === 0 && gear.notNeeded['substrate'] !== undefined

/** Defaults that the volumes rest on; no depth of a bed that nobody wants. */
const fillDefaultsOf = (subject: SizingSubject): string[] =>
  assumedOf(subject.conditions, isBare(subject) ? ['waterBelowRimMm'] : ['waterBelowRimMm', 'substrateDepthMm'])

const grainOf = ({ gear }: SizingSubject): Grain =>
  gear.substrates.length > 0 && gear.substrates.every(({ spec }) => spec.type === 'active_soil') ? 'active_soil' : 'quartz'

/** Shapes at the ends of what the maker left out, and the words for it. */
function shapesOf(tank: TankSpec): { shapes: TankShape[]; unstated: string[] } {
  const unstated: string[] = []
  if (tank.material === undefined) unstated.push('tank material')
  if (tank.glassMm === undefined) unstated.push('glass thickness')
  if (tank.bottomMm === undefined) unstated.push('bottom thickness')
  const { plans, unstated: planUnstated } = plansOf(tank)
  unstated.push(...planUnstated)
  const { heightMm } = tank
  const shapes: TankShape[] = []
  for (const material of tank.material ? [tank.material] : (['glass', 'acrylic'] as const)) {
    const sides = tank.glassMm === undefined ? typicalSides(tank, material) : exactly(tank.glassMm)
    // Volume, mass and loss all run one way with either thickness: thin with thin and thick with thick are the ends.
    const thin = { glassMm: sides.low, bottomMm: tank.bottomMm ?? sides.low * BOTTOM_OVER_SIDES.low }
    const thick = { glassMm: sides.high, bottomMm: tank.bottomMm ?? sides.high * BOTTOM_OVER_SIDES.high }
    const exact = thin.glassMm === thick.glassMm && thin.bottomMm === thick.bottomMm
    for (const panels of exact ? [thin] : [thin, thick]) for (const plan of plans) shapes.push({ ...plan, heightMm, ...panels, material })
  }
  return { shapes, unstated }
}

function typicalSides(tank: TankSpec, material: TankShape['material']): Span {
  const glass = typicalGlassMm(tank.lengthMm, tank.heightMm)
  return material === 'glass' ? glass : { low: glass.low * ACRYLIC_OVER_GLASS.low, high: glass.high * ACRYLIC_OVER_GLASS.high }
}

function coversOf({ gear }: SizingSubject): { covers: Cover[]; unstated: string[] } {
  if (!gear.lid) return { covers: ['open'], unstated: [] }
  if (gear.lid.spec.cover) return { covers: [gear.lid.spec.cover], unstated: [] }
  return { covers: ['mesh', 'glass', 'plastic'], unstated: ['what the lid is made of'] }
}

export type SituationResult = { ok: true; value: Situation } | { ok: false; refusal: SituationRefusal }

/**
 * Works out every tank that the stated figures allow.
 *
 * Errors: `no_tank`; or the refusal of `tankGeometry` where no allowed tank holds water above its substrate.
 */
export function situationOf(subject: SizingSubject): SituationResult {
  const tank = subject.gear.tank?.spec
  if (!tank) return { ok: false, refusal: { code: 'no_tank' } }
  const { shapes, unstated: tankUnstated } = shapesOf(tank)
  const grain = grainOf(subject)
  const { waterBelowRimMm, livestock } = subject.conditions
  const fill = { waterBelowRimMm, substrateDepthMm: bedDepthMm(subject) }
  const corners: Corner[] = []
  for (const shape of shapes) {
    const geometry = tankGeometry(shape, fill)
    if (!geometry.ok) return { ok: false, refusal: geometry.refusal }
    const laden = ladenOf(subject, geometry.value, grain)
    const mass = tankMass({
      shape,
      geometry: geometry.value,
      laden,
      grain,
      water: livestock.water,
      waterC: livestock.targetC,
      statedEmptyKg: tank.emptyMassKg,
    })
    corners.push({ shape, geometry: geometry.value, laden, mass })
  }
  const { covers, unstated: coverUnstated } = coversOf(subject)
  const sump = sumpOf(subject.gear, livestock)
  const waterUnstated = [...tankUnstated, ...(sump?.unstated ?? [])]
  const fillDefaults = fillDefaultsOf(subject)
  const loadDefaults = boughtBedKg(subject.gear) === undefined ? fillDefaults : assumedOf(subject.conditions, ['waterBelowRimMm'])
  const lossUnstated = [...waterUnstated, ...coverUnstated, ...(sump?.sidesUnstated ?? [])]
  const water = { grain, sump, waterUnstated, lossUnstated }
  return { ok: true, value: { ...subject, tank, corners, tankUnstated, covers, coverUnstated, fillDefaults, loadDefaults, ...water } }
}
