import { CORD_SLACK_MM, dripLoop, LOOP_DROP_MM, type CordRun } from '../../../core/sizing/drip-loop.ts'
import { LIFT_KG_PER_PERSON } from '../../../core/sizing/empty-lift.ts'
import { CONTINUOUS_SHARE, continuousLimitW } from '../../../core/sizing/electrical-load.ts'
import { ALWAYS, drawnOf, energyPerYear } from '../../../core/sizing/energy.ts'
import { exactly } from '../../../core/sizing/span.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const below: CordRun = { distanceMm: 600, exitHeightMm: 1350, outletHeightMm: 300 }
const beside: CordRun = { distanceMm: 900, exitHeightMm: 1300, outletHeightMm: 1100 }
const metres = (mm: number | undefined): number => (mm ?? NaN) / 1000

/** Heater as it loses 62.29 W, filter of 20 W, light of 50 W for 8 h, at 17 minor units of money a kWh. */
const year = () =>
  energyPerYear([drawnOf('Heater', exactly(62.29), ALWAYS), drawnOf('Filter', exactly(20), ALWAYS), drawnOf('Light', exactly(50), 8)], 17)
const ofYear = (index: number) => () => year().items[index]?.kwhPerYear

const load = 'core/sizing/electrical-load.ts'
const loop = 'core/sizing/drip-loop.ts'
const energy = 'core/sizing/energy.ts'

export const ELECTRICAL: ReferenceTopic = {
  title: 'Electrical: load, cords, energy',
  about:
    'Cords leave the tank at one height and end at an outlet at another; the loop hangs 0.10 m below the lower of both. Energy is told to a tenth of a kWh.',
  alsoIn: [
    'test/core/sizing/electrical.test.ts',
    'test/core/sizing/mains.test.ts',
    'test/core/sizing/drip-loop.test.ts',
    'test/core/sizing/cord-length.test.ts',
    'test/core/sizing/energy.test.ts',
    'test/core/sizing/empty-lift.test.ts',
  ],
  values: [
    ...from(
      {
        standing: 'from memory',
        source: 'NEC 210.19(A)(1) and 210.20(A): 125 % of what runs for three hours; the products by hand',
        within: { relative: 1e-12 },
        unit: '',
        by: load,
      },
      [
        ['15 A at 120 V, for hours, W', 1440, () => continuousLimitW(120, 15)],
        ['20 A at 120 V, for hours, W', 1920, () => continuousLimitW(120, 20)],
        ['device that 7.5 A for hours ask for, A', 9.375, () => 7.5 / CONTINUOUS_SHARE],
      ],
    ),
    ...from(
      { standing: 'own', source: '16 A · 230 V and 13 A · 230 V, four fifths of them', within: { relative: 1e-12 }, unit: 'W', by: load },
      [
        ['16 A at 230 V, for hours', 2944, () => continuousLimitW(230, 16)],
        ['fused plug of 13 A at 230 V, for hours', 2392, () => continuousLimitW(230, 13)],
      ],
    ),
    ...from({ standing: 'common practice', source: 'how a cord hangs', within: { absolute: 0 }, unit: 'mm', by: loop }, [
      ['loop below the lower end', 100, () => LOOP_DROP_MM],
      ['slack', 300, () => CORD_SLACK_MM],
    ]),
    ...from(
      {
        standing: 'own',
        source: 'mirror principle, verified by minimising over the low point',
        within: { absolute: 1e-6 },
        unit: 'm',
        by: loop,
      },
      [
        ['0.60 m sideways from 1.35 to 0.30 m: low point', 0.2, () => metres(dripLoop(below)?.lowPointMm)],
        ['0.60 m sideways: shortest cord', 1.386542, () => metres(dripLoop(below)?.shortestMm)],
        ['0.60 m sideways: low point from the tank', 0.552, () => metres(dripLoop(below)?.lowPointFromTankMm)],
        ['0.60 m sideways: hanging cord', 1.397112, () => metres(dripLoop(below)?.hangingMm)],
        ['0.90 m sideways from 1.30 to 1.10 m: low point', 1, () => metres(dripLoop(beside)?.lowPointMm)],
        ['0.90 m sideways: shortest cord', 0.984886, () => metres(dripLoop(beside)?.shortestMm)],
        ['0.90 m sideways: low point from the tank', 0.675, () => metres(dripLoop(beside)?.lowPointFromTankMm)],
        ['0.90 m sideways: hanging cord', 1.048683, () => metres(dripLoop(beside)?.hangingMm)],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: 'arithmetic, 8.76 kWh a watt; what runs by the day over 365.25 of them',
        within: { absolute: 0.06 },
        unit: 'kWh/year',
        by: energy,
      },
      [
        ['heater that loses 62.29 W', 545.66, ofYear(0)],
        ['filter of 20 W', 175.2, ofYear(1)],
        ['light of 50 W for 8 h', 146.1, ofYear(2)],
        ['all of them', 866.96, () => year().kwhPerYear],
      ],
    ),
    ...from({ standing: 'own', source: 'arithmetic', within: { absolute: 5e-3 }, unit: '', by: energy }, [
      ['cost of it at 0.17 a kWh', 147.38, () => year().costMinorPerYear / 100],
    ]),
    ...from(
      { standing: 'common practice', source: 'lifting by hand', within: { absolute: 0 }, unit: 'kg', by: 'core/sizing/empty-lift.ts' },
      [['for each person', 25, () => LIFT_KG_PER_PERSON]],
    ),
  ],
}
