import { beamResponse } from '../../../core/sizing/joist-beam.ts'
import { LIVE_LOAD_PA, PERMANENT_LOAD_FACTOR } from '../../../core/sizing/joist-floor.ts'
import { joistLoad, loadShare, type JoistCase } from '../../../core/sizing/joist-load.ts'
import { overhangStressPa } from '../../../core/sizing/overhang.ts'
import { CHILD_PULL_N, LEAST_LEAN_DEG, MOST_PUSH_N, PUSH_SHARE } from '../../../core/sizing/tipping.ts'
import { freeSurfaceRiseMm, tipAngleDeg, tipForceN } from '../../../core/sizing/tip-over.ts'
import { BLOCK_ON_SLOPE, BLOCK_PUSHED, CONE_ON_SLOPE } from '../tipping.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const US_FLOOR = { massKg: 385, spanM: 3.6576, spacingM: 0.4064, livePa: LIVE_LOAD_PA.other, path: 'full' } as const
const EN_FLOOR = { ...US_FLOOR, spanM: 4, spacingM: 0.4, livePa: 2000 } as const
const ACROSS = { alongM: 0.4572, acrossM: 1.2192, longSide: 'across' } as const
const ALONG = { alongM: 1.2192, acrossM: 0.4572, longSide: 'along' } as const
const AT_WALL = 0.2786
const MIDDLE = US_FLOOR.spanM / 2

const cases = {
  wall: { ...US_FLOOR, ...ACROSS, centreM: AT_WALL },
  middle: { ...US_FLOOR, ...ACROSS, centreM: MIDDLE },
  along: { ...US_FLOOR, ...ALONG, centreM: MIDDLE },
  enWall: { ...EN_FLOOR, ...ACROSS, centreM: AT_WALL },
  enMiddle: { ...EN_FLOOR, ...ACROSS, centreM: 2 },
  enAlong: { ...EN_FLOOR, ...ALONG, centreM: 2 },
  panelsAtWall: { ...US_FLOOR, ...ACROSS, centreM: AT_WALL, path: 'end_panels' },
  panels: { ...US_FLOOR, ...ACROSS, centreM: MIDDLE, path: 'end_panels' },
} satisfies Record<string, JoistCase>

const weightN = US_FLOOR.massKg * 9.80665
/** The share of one joist over its strip of floor, as reaction and moment. */
function onOneJoist({ alongM, acrossM, spacingM, centreM, spanM }: JoistCase) {
  const newtons = loadShare(acrossM, spacingM) * weightN
  return { newtons, ...beamResponse([{ newtons, fromM: centreM - alongM / 2, toM: centreM + alongM / 2 }], spanM) }
}
const evenly = beamResponse([{ newtons: 8, fromM: 0, toM: 4 }], 4)
const aMetre = beamResponse([{ newtons: 1, fromM: 1.5, toM: 2.5 }], 4)
const aWeight = beamResponse([{ newtons: 6, fromM: 2, toM: 2 }], 4)

const beam = 'core/sizing/joist-beam.ts'
const joist = 'core/sizing/joist-load.ts'

export const FLOOR: ReferenceTopic = {
  title: 'Floor: joists under a tank',
  about:
    '385.0 kg (3775.56 N) on a base of 48 × 18 in over joists of 12 ft at 16 in and 40 lbf/ft², unless a row says otherwise: EN has 4.0 m at 0.40 m and 2.0 kN/m². Ratios are before the factor for a load that stays. At the wall the back is 50 mm from the support. Off the middle the largest deflection is up to 2.6 % more than that at mid-span, which the code tells.',
  alsoIn: ['test/core/sizing/joist-load.test.ts', 'test/core/sizing/joist-finding.test.ts', 'test/core/sizing/floor-load.test.ts'],
  values: [
    ...from(
      {
        standing: 'published',
        source: 'NDS table 2.3.2, permanent load',
        within: { absolute: 0 },
        unit: '',
        by: 'core/sizing/joist-floor.ts',
      },
      [['factor for how long a load stays', 0.9, () => PERMANENT_LOAD_FACTOR]],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'AISC Manual, beam diagrams: w·l²/8, w·l/2, P·l/4, P·l³/48',
        within: { relative: 1e-12 },
        unit: '',
        by: beam,
      },
      [
        ['8 N over a span of 4 m: moment, N m', 4, () => evenly.momentNm],
        ['the same: end shear, N', 4, () => evenly.shearN],
        ['6 N at the middle of 4 m: moment, N m', 6, () => aWeight.momentNm],
        ['the same: EI times the deflection, N m³', 8, () => aWeight.midDeflection],
      ],
    ),
    ...from({ standing: 'own', source: 'by hand', within: { relative: 1e-12 }, unit: '', by: beam }, [
      ['1 N over the middle metre of 4 m: moment, N m', 0.875, () => aMetre.momentNm],
      ['the same: end shear, N', 0.5, () => aMetre.shearN],
    ]),
    ...from({ standing: 'own', source: 'lever rule, by hand', within: { absolute: 5e-6 }, unit: '', by: joist }, [
      ['share of 0.60 m at 0.40 m', 0.625, () => loadShare(0.6, 0.4)],
      ['share where both forms meet', 0.5, () => loadShare(0.8, 0.4)],
      ['share across', 0.33333, () => loadShare(1.2192, 0.4064)],
      ['share along', 0.71875, () => loadShare(0.4572, 0.4064)],
      ['share along, EN', 0.71425, () => loadShare(0.4572, 0.4)],
    ]),
    ...from({ standing: 'own', source: 'integrated over 400 001 points', within: { relative: 2e-4 }, unit: 'N', by: joist }, [
      ['on one joist, across', 1258.52, () => onOneJoist(cases.middle).newtons],
      ['on one joist, along', 2713.68, () => onOneJoist(cases.along).newtons],
      ['reaction, across at the wall', 1162.66, () => onOneJoist(cases.wall).shearN],
      ['reaction, across at mid-span', 629.26, () => onOneJoist(cases.middle).shearN],
      ['reaction, along at mid-span', 1356.84, () => onOneJoist(cases.along).shearN],
    ]),
    ...from({ standing: 'own', source: 'integrated over 400 001 points', within: { relative: 2e-4 }, unit: 'N m', by: joist }, [
      ['moment, across at the wall', 303.672, () => onOneJoist(cases.wall).momentNm],
      ['moment, across at mid-span', 1078.87, () => onOneJoist(cases.middle).momentNm],
      ['moment, along at mid-span', 2067.83, () => onOneJoist(cases.along).momentNm],
    ]),
    ...from({ standing: 'own', source: 'integrated over 400 001 points', within: { relative: 2.5e-4 }, unit: '', by: joist }, [
      ['bending, across at the wall', 0.2333, () => joistLoad(cases.wall).bending],
      ['bending, across at mid-span', 0.8289, () => joistLoad(cases.middle).bending],
      ['bending, along at mid-span', 1.5887, () => joistLoad(cases.along).bending],
      ['bending, EN, across at the wall', 0.1892, () => joistLoad(cases.enWall).bending],
      ['bending, EN, across at mid-span', 0.7299, () => joistLoad(cases.enMiddle).bending],
      ['bending, EN, along at mid-span', 1.4286, () => joistLoad(cases.enAlong).bending],
      ['bending on end panels, at the wall', 0.35, () => joistLoad(cases.panelsAtWall).bending],
      ['bending on end panels, at mid-span', 1.2433, () => joistLoad(cases.panels).bending],
      ['end shear, across at the wall', 0.8168, () => joistLoad(cases.wall).shear],
      ['end shear, across at mid-span', 0.4421, () => joistLoad(cases.middle).shear],
      ['end shear, along at mid-span', 0.9532, () => joistLoad(cases.along).shear],
      ['end shear, EN, across at the wall', 0.7203, () => joistLoad(cases.enWall).shear],
      ['end shear, EN, along at mid-span', 0.8427, () => joistLoad(cases.enAlong).shear],
      ['end shear on end panels, at the wall', 1.2252, () => joistLoad(cases.panelsAtWall).shear],
      ['end shear on end panels, at mid-span', 0.6632, () => joistLoad(cases.panels).shear],
      ['bending at mid-span, over the factor for a load that stays', 0.921, () => joistLoad(cases.middle).bending / PERMANENT_LOAD_FACTOR],
      [
        'bending at mid-span under a bedroom’s 30 lbf/ft²',
        1.1052,
        () => joistLoad({ ...cases.middle, livePa: LIVE_LOAD_PA.bedroom }).bending,
      ],
    ]),
    ...from({ standing: 'own', source: 'integrated over 400 001 points', within: { relative: 1e-3 }, unit: '', by: joist }, [
      ['deflection, across at mid-span', 0.702, () => joistLoad(cases.middle).deflection],
      ['deflection, along at mid-span', 1.4475, () => joistLoad(cases.along).deflection],
    ]),
    ...from(
      {
        standing: 'own',
        source: 'integrated over 400 001 points; the largest, wherever it is',
        within: { relative: 0.026 },
        unit: '',
        by: joist,
      },
      [['deflection, across at the wall', 0.1635, () => joistLoad(cases.wall).deflection]],
    ),
  ],
}

const tip = 'core/sizing/tip-over.ts'

export const STANDING_FIRM: ReferenceTopic = {
  title: 'Stand: overhang and tipping',
  about: 'A bottom that sticks out is a cantilever of glass; a tank tips where its weight passes the edge of its base.',
  alsoIn: ['test/core/sizing/overhang.test.ts', 'test/core/sizing/tipping.test.ts'],
  values: [
    ...from(
      {
        standing: 'from memory',
        source: 'AISC Manual table 3-23, cases 19 and 22',
        within: { relative: 1e-9 },
        unit: 'MPa',
        by: 'core/sizing/overhang.ts',
      },
      [
        [
          'cantilever of 2 m, 0.2 m thick, under 3 kN/m: 6 kN m',
          0.9,
          () => overhangStressPa({ outM: 2, thicknessM: 0.2, pressurePa: 3000, edgeNPerM: 0 }) / 1e6,
        ],
        [
          'the same with 4 kN at its end alone: 8 kN m',
          1.2,
          () => overhangStressPa({ outM: 2, thicknessM: 0.2, pressurePa: 0, edgeNPerM: 4000 }) / 1e6,
        ],
      ],
    ),
    ...from({ standing: 'from memory', source: 'impending tipping, any statics text', within: { absolute: 5e-4 }, unit: '°', by: tip }, [
      [
        'block twice as high as wide, on a slope',
        BLOCK_ON_SLOPE.degrees,
        () => tipAngleDeg(BLOCK_ON_SLOPE.width / 2, BLOCK_ON_SLOPE.height / 2),
      ],
      [
        'cone four times as high as its radius, on a slope',
        CONE_ON_SLOPE.degrees,
        () => tipAngleDeg(CONE_ON_SLOPE.radius, CONE_ON_SLOPE.height / 4),
      ],
    ]),
    ...from({ standing: 'from memory', source: 'impending tipping, any statics text', within: { relative: 1e-6 }, unit: 'N', by: tip }, [
      [
        'block of 100 kg, 0.5 × 2 m, pushed at its upper edge',
        122.583125,
        () => tipForceN({ kg: BLOCK_PUSHED.kg, leverMm: BLOCK_PUSHED.widthMm / 2 }, BLOCK_PUSHED.heightMm),
      ],
    ]),
    ...from(
      { standing: 'from memory', source: 'free surface effect, naval architecture', within: { relative: 1e-5 }, unit: 'mm', by: tip },
      [
        [
          'barge of 10 × 2 m and 20 t, all of it free surface',
          333.333,
          () => freeSurfaceRiseMm({ areaMm2: 20e6, widthMm: 2000, waterDensity: 1000 }, 20_000),
        ],
      ],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'IEC 60950-1, 4.1, standing equipment',
        within: { absolute: 0 },
        unit: '',
        by: 'core/sizing/tipping.ts',
      },
      [
        ['push that is borne, of the weight', 0.2, () => PUSH_SHARE],
        ['push that is borne, at most, N', 250, () => MOST_PUSH_N],
        ['lean that is borne, °', 10, () => LEAST_LEAN_DEG],
      ],
    ),
    ...from(
      { standing: 'from memory', source: 'ASTM F2057, 10 lbf', within: { relative: 1e-3 }, unit: 'N', by: 'core/sizing/tipping.ts' },
      [['a child’s pull', 44.4822, () => CHILD_PULL_N]],
    ),
  ],
}
