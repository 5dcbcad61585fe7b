import type { Conditions } from '../../../core/sizing/conditions.ts'
import type { Gear } from '../../../core/sizing/gear.ts'
import { withAllFigures } from '../../../core/sizing/all-figures.ts'
import { sizingReport } from '../../../core/sizing/engine.ts'
import type { SizingReport } from '../../../core/sizing/report.ts'
import type { StartupSubject } from '../../../core/startup/startup-subject.ts'

/** Tank A of the published checks: 237.7132 L of water, 274.4135 L to the rim, 57.2834 kg empty. */
export const TANK_A = { waterL: 237.7132, brimL: 274.4135, emptyKg: 57.2834 }

const gear: Gear = {
  tank: { name: 'Wendlemere 75', quantity: 1, spec: { lengthMm: 1219.2, widthMm: 457.2, heightMm: 533.4, glassMm: 10, style: 'rimmed' } },
  stand: { name: 'Thornby Bench 48', quantity: 1, spec: { heightMm: 760 } },
  mat: null,
  lid: null,
  filters: [{ name: 'Pellick C-1800', quantity: 1, spec: { type: 'canister', ratedFlowLph: 1800, cordMm: 1800 } }],
  heaters: [{ name: 'Torvane 150 W', quantity: 2, spec: { powerW: 150, cordMm: 1830 } }],
  lights: [{ name: 'Halden Row 48', quantity: 1, spec: { powerW: 30 } }],
  substrates: [{ name: 'Millrace gravel, 20 lb', quantity: 5, spec: { type: 'gravel', packMassKg: 9.07 } }],
  conditioners: [{ name: 'Stillwell 500 mL', quantity: 1, spec: { packVolumeMl: 500, doseMlPerL: 0.1, bindsAmmonia: true } }],
  testKits: [
    { name: 'Lockridge five-test kit', quantity: 1, spec: { measuresAmmonia: true, measuresNitrite: true, lowestAmmoniaMgL: 0.25 } },
  ],
  power: [{ name: 'Corbelle protected strip', quantity: 1, spec: { outlets: 6, protective: true } }],
  ammoniaSources: [{ name: 'Stillwell ammonium chloride', quantity: 1, spec: { form: 'ammonium_chloride', strength: 1 } }],
  thermometers: [{ name: 'Torvane thermometer', quantity: 1, spec: { type: 'glass' } }],
  notNeeded: {},
}

const conditions: Conditions = {
  coldestRoomC: 18,
  warmestRoomC: 24,
  waterBelowRimMm: 40,
  substrateDepthMm: 50,
  circuitVoltageV: 120,
  circuitCurrentA: 15,
  otherLoadW: 300,
  outletHeightMm: 300,
  outletDistanceMm: 600,
  circuitProtected: false,
  energyPriceMinor: 17,
  lightHoursPerDay: 8,
  plants: 'none',
  floor: 'ground_slab',
  livestock: {
    id: 'small-community',
    name: 'Small community fish',
    examples: 'small schooling fish',
    lowestC: 22,
    targetC: 25,
    highestC: 28,
    dangerC: 32,
    flowCeilingPerHour: null,
    flowFloorPerHour: 4,
    smallestVolumeL: 60,
    feedGramsPerDay: 2,
    lidNeeded: true,
    water: 'fresh',
    source: 'common practice',
  },
  disinfectant: 'chlorine',
  assumed: [],
}

const report: SizingReport = {
  findings: [],
  counts: { does_not_fit: 0, not_known: 0, marginal: 0, fits: 0 },
  pageOne: [],
  figures: {
    waterVolumeL: TANK_A.waterL,
    grossVolumeL: TANK_A.brimL,
    emptyMassKg: TANK_A.emptyKg,
    brimMassKg: 385,
    substrateMassKg: 41.7,
    heaterPowerW: 300,
    dripLoop: { neededMm: 1697, lowPointMm: 200, exitHeightMm: 1350, outletHeightMm: 300, distanceMm: 600 },
  },
}

/** A whole subject with parts of it replaced. */
export function sampleSubject(
  change: { gear?: Partial<Gear>; conditions?: Partial<Conditions>; figures?: Partial<SizingReport['figures']> } = {},
): StartupSubject {
  return {
    gear: { ...gear, ...change.gear },
    conditions: { ...conditions, ...change.conditions },
    report: { ...report, figures: { ...report.figures, ...change.figures } },
    install: { country: 'US' },
  }
}

/** The same, with the report that the sizing itself makes of it. */
export function sizedSubject(change: { gear?: Partial<Gear>; conditions?: Partial<Conditions> } = {}): StartupSubject {
  const subject = sampleSubject(change)
  return { ...subject, report: withAllFigures(subject, sizingReport(subject)) }
}
