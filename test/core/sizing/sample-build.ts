import { livestockGroup } from '../../../core/catalog/livestock.ts'
import type { Conditions, LivestockGroup } from '../../../core/sizing/conditions.ts'
import type { Check, ToldFinding } from '../../../core/sizing/finding.ts'
import type { Counted, Gear } from '../../../core/sizing/gear.ts'
import { withAllFigures } from '../../../core/sizing/all-figures.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import { toldReport } from '../../../core/sizing/told-report.ts'
import { INCH } from './reference-tanks.ts'

export function group(id: string): LivestockGroup {
  const found = livestockGroup(id)
  if (!found) throw new Error(`no livestock group ${id}`)
  return found
}

export const one = <S>(name: string, spec: S, quantity = 1): Counted<S> => ({ name, quantity, spec })

/** A living room in which everything was measured. */
export const conditions = (changes: Partial<Conditions> = {}): Conditions => ({
  coldestRoomC: 18,
  warmestRoomC: 24,
  waterBelowRimMm: 40,
  substrateDepthMm: 50,
  circuitVoltageV: 120,
  circuitCurrentA: 15,
  otherLoadW: 0,
  outletHeightMm: 300,
  outletDistanceMm: 600,
  circuitProtected: false,
  energyPriceMinor: 17,
  lightHoursPerDay: 8,
  plants: 'medium',
  floor: 'timber_upper',
  livestock: group('small-tropical'),
  disinfectant: 'chloramine',
  assumed: [],
  ...changes,
})

/** A 75 gallon build with every spec stated. All names are invented. */
export const gear = (changes: Partial<Gear> = {}): Gear => ({
  tank: one('Wendlemere 75', {
    lengthMm: 48 * INCH,
    widthMm: 18 * INCH,
    heightMm: 21 * INCH,
    glassMm: 10,
    bottomMm: 10,
    material: 'glass',
    style: 'rimmed',
  }),
  stand: one('Thornby Bench 48 × 18', {
    topLengthMm: 1220,
    topWidthMm: 460,
    heightMm: 760,
    ratedLoadKg: 450,
    top: 'perimeter',
    base: 'end_panels',
    surface: 'plywood',
    massKg: 28.1,
  }),
  mat: null,
  lid: one('Wendlemere lid', { lengthMm: 1210, widthMm: 450, cover: 'glass' }),
  filters: [one('Pellick canister', { type: 'canister', ratedFlowLph: 2000, powerW: 20, mediaVolumeL: 9, cordMm: 1500 })],
  heaters: [one('Torvane 100 W', { powerW: 100, lengthMm: 300, cordMm: 2600 }, 2)],
  lights: [one('Halden Row', { lengthMm: 1150, widthMm: 80, powerW: 30, luminousFluxLm: 3000, dimmable: true, cordMm: 3000 })],
  // 40 kg in its bags, a little less than the stated 50 mm weigh: the depth is what is carried.
  substrates: [one('Millrace gravel', { type: 'gravel', packMassKg: 8, packVolumeL: 5.7 }, 5)],
  conditioners: [one('Stillwell', { packVolumeMl: 500, doseMlPerL: 0.13, bindsAmmonia: true })],
  testKits: [one('Lockridge', { measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.25 })],
  power: [one('Corbelle strip', { outlets: 6, ratedCurrentA: 15, protective: true, cordMm: 1800 })],
  notNeeded: { bed_glass: 'the tank has a frame' },
  ...changes,
})

/** With every figure and the words of its sources and cautions. */
export function reportOf(gearChanges: Partial<Gear> = {}, roomChanges: Partial<Conditions> = {}) {
  const subject = { gear: gear(gearChanges), conditions: conditions(roomChanges) }
  return toldReport(withAllFigures(subject, sizingReport(subject)))
}

/** The finding of one check; fails the test where the check was not made. */
export function findingOf(check: Check, gearChanges: Partial<Gear> = {}, roomChanges: Partial<Conditions> = {}): ToldFinding {
  const found = reportOf(gearChanges, roomChanges).findings.find((finding) => finding.check === check)
  if (!found) throw new Error(`no finding for ${check}`)
  return found
}
