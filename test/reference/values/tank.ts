import { tankCentres, massTogether } from '../../../core/sizing/mass-centre.ts'
import { planFigures, type Side } from '../../../core/sizing/plan-outline.ts'
import { tankGeometry, type TankShape } from '../../../core/sizing/tank-geometry.ts'
import { tankMass } from '../../../core/sizing/tank-mass.ts'
import { tankPlan } from '../../../core/sizing/tank-plan.ts'
import { L_PER_US_GALLON } from '../../../core/units/factors.ts'
import { GEOMETRY_A, MASS_A, TANK_A } from '../../core/sizing/reference-tanks.ts'
import { HALF_DISC, HEXAGON, QUARTER_DISC, segment, TRIANGLE } from '../centroids.ts'
import { CYLINDER_ON_HEMISPHERE } from '../tipping.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const side = (x: number, y: number, sagittaMm = 0): Side => ({ from: { x, y }, sagittaMm })
const half = planFigures([side(-1, 0), side(1, 0, 1)])
const triangle = planFigures([side(0, 0), side(1, 0), side(0.5, 1)])
/** A segment of 1.4 rad at the centre of a circle of radius 1. */
const ALPHA = 0.7
const cap = planFigures([side(-Math.sin(ALPHA), 0), side(Math.sin(ALPHA), 0, 1 - Math.cos(ALPHA))])
const quarter = tankPlan({ lengthMm: 1000, widthMm: 1000, form: 'corner_round' }, 0)
const hexagon = tankPlan({ lengthMm: 600, widthMm: HEXAGON.overFlats * 300, form: 'hexagon' }, 0)

/** Half a metre of inside and 0.60 m of depth under panes of 10 mm. */
const grossL = (plan: Pick<TankShape, 'lengthMm' | 'widthMm' | 'form'>): number | undefined => {
  const shape: TankShape = { ...plan, heightMm: 610, glassMm: 10, bottomMm: 10, material: 'glass' }
  const found = tankGeometry(shape, { waterBelowRimMm: 30, substrateDepthMm: 0 })
  return found.ok ? found.value.grossVolumeL : undefined
}
const gallons = (litres: number): number => litres / L_PER_US_GALLON
const emptyCentreMm = (): number => tankCentres(TANK_A, GEOMETRY_A, MASS_A).empty.heightMm

const geometry = { unit: 'L', by: 'core/sizing/tank-geometry.ts' }
const massOf = (water: 'fresh' | 'salt', material: 'glass' | 'acrylic' = 'glass') =>
  tankMass({ shape: { material }, geometry: GEOMETRY_A, grain: 'quartz', water, waterC: 25 })

export const TANK: ReferenceTopic = {
  title: 'Tank: volumes, masses, plans, centre of mass',
  about:
    'The 75 gallon tank: 48 × 18 × 21 in outside, 10 mm glass all round, water 40 mm below the rim, 50 mm of quartz gravel at a porosity of 0.40. Glass 2500 kg/m³ (EN 572-1), acrylic 1190 kg/m³ (ISO 7823-1, from memory).',
  alsoIn: [
    'test/core/sizing/tank-geometry.test.ts',
    'test/core/sizing/tank-mass.test.ts',
    'test/core/sizing/tank-plan.test.ts',
    'test/core/sizing/tipping.test.ts',
  ],
  values: [
    ...from({ standing: 'own', source: 'computed apart from this code', within: { relative: 2e-6 }, ...geometry }, [
      ['outside box', 297.3269, () => GEOMETRY_A.outsideVolumeL],
      ['inside, to the rim', 274.4135, () => GEOMETRY_A.grossVolumeL],
      ['column under the surface', 253.4419, () => GEOMETRY_A.columnVolumeL],
      ['grains', 15.7287, () => GEOMETRY_A.substrateSolidL],
      ['actual water', 237.7132, () => GEOMETRY_A.waterVolumeL],
      ['panes', 22.9134, () => GEOMETRY_A.shellVolumeL],
    ]),
    ...from({ standing: 'own', source: 'panel by panel, walls on the base or beside it', within: { relative: 1e-9 }, ...geometry }, [
      ['panes', 22.9133776, () => GEOMETRY_A.shellVolumeL],
    ]),
    ...from({ standing: 'own', source: '48 · 18 · 21 ÷ 231', within: { relative: 1e-9 }, unit: 'US gal', by: geometry.by }, [
      ['outside box', 78.545454545, () => gallons(GEOMETRY_A.outsideVolumeL)],
    ]),
    ...from({ standing: 'own', source: 'computed apart from this code', within: { absolute: 0.005 }, unit: 'US gal', by: geometry.by }, [
      ['inside, to the rim', 72.49, () => gallons(GEOMETRY_A.grossVolumeL)],
      ['column under the surface', 66.95, () => gallons(GEOMETRY_A.columnVolumeL)],
      ['actual water', 62.8, () => gallons(GEOMETRY_A.waterVolumeL)],
    ]),
    ...from(
      { standing: 'own', source: 'computed apart from this code', within: { relative: 1e-5 }, unit: 'kg', by: 'core/sizing/tank-mass.ts' },
      [
        ['empty', 57.2834, () => MASS_A.emptyKg],
        ['empty, of acrylic', 27.2669, () => massOf('fresh', 'acrylic').emptyKg],
        ['water of 25 °C', 237.011, () => MASS_A.waterKg],
        ['sea water of 25 °C', 243.262, () => massOf('salt').waterKg],
        ['substrate', 41.681, () => MASS_A.substrateKg],
        ['running', 335.976, () => MASS_A.runningKg],
      ],
    ),
    ...from(
      { standing: 'own', source: 'computed apart from this code', within: { relative: 1e-4 }, unit: 'kg', by: 'core/sizing/tank-mass.ts' },
      [['filled to the rim', 356.9, () => MASS_A.brimKg]],
    ),
    ...from({ standing: 'own', source: 'π·(D/2)²·h and (3√3/2)·s²·h', within: { relative: 1e-6 }, ...geometry }, [
      ['cylinder, 0.50 m inside, 0.60 m high', 117.8097, () => grossL({ lengthMm: 520, widthMm: 520, form: 'cylinder' })],
      [
        'hexagon, inside side 0.30 m, 0.60 m high',
        140.2961,
        () => grossL({ lengthMm: 600 + 40 / Math.sqrt(3), widthMm: 300 * Math.sqrt(3) + 20, form: 'hexagon' }),
      ],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'Hibbeler, Engineering Mechanics: Statics, inside back cover; Beer & Johnston, Vector Mechanics, figure 5.8A',
        within: { relative: 1e-9 },
        unit: 'of the radius or side',
        by: 'core/sizing/plan-outline.ts',
      },
      [
        ['half a disc: area', HALF_DISC.area, () => half.areaMm2],
        ['half a disc: centroid from its diameter', HALF_DISC.fromDiameter, () => half.centre.y],
        ['triangle: centroid from its base', TRIANGLE.fromBase, () => triangle.centre.y],
        ['segment of 1.4 rad: area', segment(ALPHA).area, () => cap.areaMm2],
        ['segment of 1.4 rad: centroid from the centre', segment(ALPHA).fromCentre, () => cap.centre.y + Math.cos(ALPHA)],
        ['quarter of a disc: area', QUARTER_DISC.area, () => quarter.areaMm2 / 1e6],
        ['quarter of a disc: centroid from either radius', QUARTER_DISC.fromEitherRadius, () => quarter.centre.x / 1000],
        ['regular hexagon: area', HEXAGON.area, () => hexagon.areaMm2 / 300 ** 2],
        ['regular hexagon: round', HEXAGON.round, () => hexagon.roundMm / 300],
      ],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'composite bodies, any statics text',
        within: { relative: 1e-9 },
        unit: 'radii',
        by: 'core/sizing/mass-centre.ts',
      },
      [
        [
          'cylinder on a hemisphere of its own material: centre above the lowest point',
          CYLINDER_ON_HEMISPHERE.centreMm,
          () => massTogether([CYLINDER_ON_HEMISPHERE.cylinder, CYLINDER_ON_HEMISPHERE.hemisphere]).heightMm,
        ],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: 'five panels, each at its own centre, by hand',
        within: { relative: 1e-4 },
        unit: 'mm',
        by: 'core/sizing/mass-centre.ts',
      },
      [['centre of the empty tank above its underside', 206.82, emptyCentreMm]],
    ),
  ],
}
