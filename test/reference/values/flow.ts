import { filmForAmmonia } from '../../../core/sizing/filter-feed.ts'
import { systemHeadM, type FlowSystem } from '../../../core/sizing/flow-system.ts'
import { operatingFlowLph, type PumpCurve } from '../../../core/sizing/operating-point.ts'
import { frictionFactor } from '../../../core/sizing/pipe-friction.ts'
import { jetPowerW } from '../../../core/sizing/surface-oxygen.ts'
import { colebrook } from '../pipe-network.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const parabola: PumpCurve = { maxHeadM: 2, maxFlowLph: 1500, bend: 2 }
const hoses: FlowSystem = { staticHeadM: 0, boreMm: 16, lengthMm: 3000, fittings: 6, mediaLoss: 0, viscosityM2S: 8.93e-7 }
const mediaOnly: FlowSystem = { ...hoses, boreMm: 1e4, lengthMm: 0, fittings: 0, mediaLoss: 1e7 }
const through = (mediaLoss: number): number => operatingFlowLph(parabola, { ...hoses, mediaLoss })
const WATER_L = 237.7132

/** Reynolds number, roughness, Haaland, Colebrook. */
const FRICTION = [
  [1e4, 0, 0.03089, 0.03088],
  [1e5, 0, 0.01782, 0.01799],
  [1e5, 1e-4, 0.01827, 0.01851],
  [1e5, 1e-3, 0.02197, 0.02217],
  [1e6, 1e-4, 0.01333, 0.01344],
  [5000, 1e-3, 0.03862, 0.0385],
] as const

const friction = { unit: '', by: 'core/sizing/pipe-friction.ts' }
const meets = 'core/sizing/operating-point.ts'

export const FLOW: ReferenceTopic = {
  title: 'Filter: what arrives',
  about:
    'A pump of 2.0 m and 1500 L/h with a parabola for its curve; 3 m of hose of 16 mm, fittings of 6 velocity heads, water of 8.93·10⁻⁷ m²/s; turnover of the 237.7 L of the 75 gallon tank.',
  alsoIn: ['test/core/sizing/operating-point.test.ts', 'test/core/sizing/pump-curve.test.ts', 'test/core/sizing/canister-flow.test.ts'],
  values: [
    ...from(
      { standing: 'own', source: 'Haaland, J. Fluids Eng. 105 (1983) 89, by another program', within: { relative: 1e-3 }, ...friction },
      FRICTION.map(
        ([re, rough, haaland]) => [`friction at Re ${re}, roughness ${rough}`, haaland, () => frictionFactor(re, rough)] as const,
      ),
    ),
    ...from(
      { standing: 'own', source: 'Colebrook’s equation, another formula, by another program', within: { relative: 0.02 }, ...friction },
      FRICTION.map(([re, rough, , other]) => [`friction at Re ${re}, roughness ${rough}`, other, () => frictionFactor(re, rough)] as const),
    ),
    ...from(
      {
        standing: 'own',
        source: 'Colebrook’s equation, by another program',
        within: { relative: 1e-3 },
        unit: '',
        by: 'test/reference/pipe-network.ts',
      },
      FRICTION.map(([re, rough, , other]) => [`Colebrook at Re ${re}, roughness ${rough}`, other, () => colebrook(re, rough)] as const),
    ),
    ...from({ standing: 'from memory', source: 'Moody’s chart (White, Fluid Mechanics, ch. 6)', within: { absolute: 5e-4 }, ...friction }, [
      ['smooth pipe at Re 100000', 0.018, () => frictionFactor(1e5, 0)],
    ]),
    ...from({ standing: 'own', source: '64 ÷ 640 by hand (Hagen & Poiseuille)', within: { relative: 1e-9 }, ...friction }, [
      ['laminar, Re 640', 0.1, () => frictionFactor(640, 1e-3)],
    ]),
    ...from({ standing: 'own', source: 'closed forms', within: { relative: 1e-5 }, unit: 'L/h', by: meets }, [
      ['parabola against 10⁷·Q²', 1097.48, () => operatingFlowLph(parabola, mediaOnly)],
      ['straight curve against 10⁷·Q²', 963.155, () => operatingFlowLph({ ...parabola, bend: 1 }, mediaOnly)],
    ]),
    ...from({ standing: 'own', source: 'another solver', within: { relative: 1e-3 }, unit: 'L/h', by: meets }, [
      ['hoses without media', 1020.8, () => through(0)],
      ['with clean media', 962.9, () => through(3e6)],
      ['media loaded to twice that', 913.96, () => through(6e6)],
      ['media loaded to four times that', 835.16, () => through(12e6)],
    ]),
    ...from({ standing: 'own', source: 'another solver', within: { relative: 1e-3 }, unit: '', by: meets }, [
      ['head without media, m', 1.0737, () => systemHeadM(hoses, through(0))],
      [
        'Reynolds number without media',
        25_268,
        () => (4 * (through(0) / 3_600_000)) / (Math.PI * (hoses.boreMm / 1000) * hoses.viscosityM2S),
      ],
      ['turnover without media, an hour', 4.294, () => through(0) / WATER_L],
      ['turnover with clean media, an hour', 4.051, () => through(3e6) / WATER_L],
      ['turnover with media loaded to four times, an hour', 3.514, () => through(12e6) / WATER_L],
    ]),
    ...from({ standing: 'own', source: '½·ρ·Q·v², by hand', within: { relative: 3e-3 }, unit: 'W', by: 'core/sizing/surface-oxygen.ts' }, [
      ['jet of 1200 L/h through 16 mm', 0.458, () => jetPowerW(1200, 16)],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'Timmons & Ebeling, Recirculating Aquaculture: 0.2 to 1.0 g/m² a day',
        within: { relative: 1e-4 },
        unit: 'm²',
        by: 'core/sizing/filter-feed.ts',
      },
      [
        ['film for 0.207 g a day at 0.2 g/m²', 1.035, () => filmForAmmonia(0.207)],
        ['film for 0.207 g a day at 0.5 g/m²', 0.414, () => filmForAmmonia(0.207, 0.5)],
        ['film for 0.207 g a day at 1.0 g/m²', 0.207, () => filmForAmmonia(0.207, 1)],
      ],
    ),
  ],
}
