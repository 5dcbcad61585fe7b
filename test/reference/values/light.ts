import { dailyLight } from '../../../core/sizing/daily-light.ts'
import { ENTERING, THROUGH_LID } from '../../../core/sizing/light-at-bed.ts'
import { lightAtDepth, type LightPath } from '../../../core/sizing/light-at-depth.ts'
import { PLANT_LIGHT } from '../../../core/sizing/light-level.ts'
import { lightUtilisation, polygonFactor, rectangleCorners } from '../../../core/sizing/light-utilisation.ts'
import { LUMENS_PER_UMOL_S } from '../../../core/sizing/typical-ranges.ts'
import { reflected, reflectedDiffuse } from '../fresnel.ts'
import { luxPerUmol, umolPerJoule } from '../photon-units.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const factor = { unit: '', by: 'core/sizing/light-utilisation.ts' }
const opposed = (side: number): number =>
  lightUtilisation({
    fixtureLengthMm: side * 1000,
    fixtureWidthMm: side * 1000,
    water: rectangleCorners(side * 1000, side * 1000),
    aboveWaterMm: 1000,
  })
const overTank = (fixtureLengthMm: number, aboveWaterMm: number): number =>
  lightUtilisation({ fixtureLengthMm, fixtureWidthMm: 80, water: rectangleCorners(1199.2, 437.2), aboveWaterMm })

/** The share of a level light that is left at a depth of clear to tinted water. */
const left = (attenuationPerM: number, depthM = 0.45): number =>
  lightAtDepth({ fluxUmolS: 1, utilisation: 1, entering: 1, waterAreaM2: 1, attenuationPerM, depthM })
const worked: LightPath = {
  fluxUmolS: 3000 / 70,
  utilisation: 0.9532,
  entering: 0.97,
  waterAreaM2: 0.52429,
  attenuationPerM: 0.5,
  depthM: 0,
}
const atBed = (): number => lightAtDepth({ ...worked, depthM: 0.43 })
const usualLumens = (LUMENS_PER_UMOL_S.low + LUMENS_PER_UMOL_S.high) / 2

const depth = 'core/sizing/light-at-depth.ts'
const bed = 'core/sizing/light-at-bed.ts'
const optics = 'test/reference/fresnel.ts'

export const LIGHT: ReferenceTopic = {
  title: 'Light: from the lamp to the bed',
  about:
    'Fixtures shine as Lambertian strips 80 mm wide over the 1199.2 × 437.2 mm of water of the 75 gallon tank. White light is taken to be 60 to 80 lm for each µmol/s, the middle of which is held here.',
  alsoIn: [
    'test/core/sizing/light.test.ts',
    'test/core/sizing/light-at-bed.test.ts',
    'test/core/sizing/light-level.test.ts',
    'test/reference/configuration-factors.test.ts',
    'test/reference/disc-factors.test.ts',
    'test/reference/photons.test.ts',
  ],
  values: [
    ...from(
      {
        standing: 'own',
        source: 'by hand: µmol/m²s × hours × 3600 ÷ 1 000 000, the daily light integral of ANSI/ASABE S640',
        within: { relative: 1e-6 },
        unit: 'mol/m²d',
        by: 'core/sizing/daily-light.ts',
      },
      [
        ['100 µmol/m²s over 8 h', 2.88, () => dailyLight(100, 8)],
        ['50 µmol/m²s over 10 h', 1.8, () => dailyLight(50, 10)],
        ['104.1667 µmol/m²s over 8 h', 3, () => dailyLight(104.1667, 8)],
      ],
    ),
    ...from({ standing: 'own', source: 'Beer & Lambert', within: { absolute: 1e-4 }, unit: '', by: depth }, [
      ['left at 0.45 m where 0.1 is lost a metre', 0.956, () => left(0.1)],
      ['left at 0.45 m where 0.5 is lost a metre', 0.7985, () => left(0.5)],
      ['left at 0.45 m where 1.0 is lost a metre', 0.6376, () => left(1)],
      ['left at 0.45 m where 2.0 is lost a metre', 0.4066, () => left(2)],
    ]),
    ...from(
      {
        standing: 'own',
        source: '3000 lm at 70 lm for each µmol/s, 0.9532 of it on the water, 0.97 into it',
        within: { relative: 1e-3 },
        unit: 'µmol/m²s',
        by: depth,
      },
      [
        ['at the surface', 75.58, () => lightAtDepth(worked)],
        ['at 0.43 m', 60.96, atBed],
      ],
    ),
    ...from(
      { standing: 'own', source: 'the same over 8 h', within: { relative: 1e-3 }, unit: 'mol/m²d', by: 'core/sizing/daily-light.ts' },
      [['at 0.43 m', 1.7557, () => dailyLight(atBed(), 8)]],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'Howell, A Catalog of Radiation Configuration Factors, B-3 and C-11',
        within: { absolute: 1.5e-4 },
        ...factor,
      },
      [
        ['element under the corner of a square at its side’s distance', 0.1385, () => polygonFactor(rectangleCorners(1, 1), -0.5, -0.5, 1)],
        ['opposed squares, 1 : 1', 0.1998, () => opposed(1)],
      ],
    ),
    ...from(
      { standing: 'published', source: 'Howell C-13, in a thermal library’s worked example', within: { absolute: 3e-4 }, ...factor },
      [['opposed squares, 2 : 1', 0.4153, () => opposed(2)]],
    ),
    ...from({ standing: 'own', source: 'closed form, four corners summed', within: { absolute: 1e-5 }, ...factor }, [
      ['element under the corner of a square at its side’s distance', 0.13853, () => polygonFactor(rectangleCorners(1, 1), -0.5, -0.5, 1)],
      ['element under the middle of a square of two distances', 0.55413, () => polygonFactor(rectangleCorners(2, 2), 0, 0, 1)],
    ]),
    ...from({ standing: 'own', source: 'averaged by fine sums', within: { absolute: 2e-3 }, ...factor }, [
      ['fixture of 1.15 m, 50 mm above the water', 0.9532, () => overTank(1150, 50)],
      ['fixture of 1.15 m, 150 mm above the water', 0.7582, () => overTank(1150, 150)],
      ['fixture of 1.15 m, 300 mm above the water', 0.497, () => overTank(1150, 300)],
      ['fixture of 0.60 m, 50 mm above the water', 0.9723, () => overTank(600, 50)],
      ['fixture of 0.60 m, 150 mm above the water', 0.8081, () => overTank(600, 150)],
      ['fixture of 0.60 m, 300 mm above the water', 0.5476, () => overTank(600, 300)],
    ]),
    ...from({ standing: 'own', source: 'Fresnel’s equations, by another program', within: { absolute: 1e-4 }, unit: '', by: optics }, [
      ['thrown back by water, straight down', 0.0204, () => reflected(0, 1.333)],
      ['thrown back by water, from a Lambertian lamp', 0.0664, () => reflectedDiffuse(1.333)],
      ['thrown back by the two faces of a glass lid', 0.0833, () => 1 - (1 - reflected(0, 1.52)) ** 2],
    ]),
    ...from(
      { standing: 'own', source: 'what Fresnel’s equations leave, told to two digits', within: { absolute: 5e-3 }, unit: '', by: bed },
      [
        ['enters the water at least', 0.9336, () => ENTERING.low],
        ['enters the water at most', 0.9796, () => ENTERING.high],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: 'what Fresnel’s equations leave of clean glass; a lid in use is dimmer',
        within: { absolute: 0.02 },
        unit: '',
        by: bed,
      },
      [['passes a lid', 0.9167, () => THROUGH_LID]],
    ),
    ...from(
      { standing: 'own', source: 'model of a spectrum', within: { absolute: 10 }, unit: 'lm·s/µmol', by: 'core/sizing/typical-ranges.ts' },
      [
        ['cool white', 70.6, () => usualLumens],
        ['neutral white', 74.2, () => usualLumens],
        ['warm white', 65.4, () => usualLumens],
      ],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'Thimijan & Heins, HortScience 18 (1983) 818',
        within: { absolute: 10 },
        unit: 'lm·s/µmol',
        by: 'core/sizing/typical-ranges.ts',
      },
      [['cool white fluorescent lamp', 74, () => usualLumens]],
    ),
    ...from(
      {
        standing: 'own',
        source: 'exact constants of the SI, V(λ) from memory',
        within: { relative: 1e-4 },
        unit: '',
        by: 'test/reference/photon-units.ts',
      },
      [
        ['lx for each µmol/m²s at 555 nm', 147.22, () => luxPerUmol(555)],
        ['µmol in a joule at 450 nm', 3.762, () => umolPerJoule(450)],
        ['µmol in a joule at 660 nm', 5.517, () => umolPerJoule(660)],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: 'V(λ) from memory, two digits',
        within: { absolute: 0.05 },
        unit: '',
        by: 'test/reference/photon-units.ts',
      },
      [
        ['lx for each µmol/m²s at 450 nm', 6.9, () => luxPerUmol(450)],
        ['lx for each µmol/m²s at 660 nm', 7.55, () => luxPerUmol(660)],
      ],
    ),
    ...from(
      {
        standing: 'common practice',
        source: 'marks at the substrate',
        within: { absolute: 0 },
        unit: 'µmol/m²s',
        by: 'core/sizing/light-level.ts',
      },
      [
        ['undemanding plants, at least', 15, () => PLANT_LIGHT.low.low],
        ['undemanding plants, at most', 30, () => PLANT_LIGHT.low.high],
        ['middling plants, at least', 30, () => PLANT_LIGHT.medium.low],
        ['middling plants, at most', 60, () => PLANT_LIGHT.medium.high],
        ['demanding plants, at least', 60, () => PLANT_LIGHT.high.low],
        ['demanding plants, at most', 120, () => PLANT_LIGHT.high.high],
      ],
    ),
  ],
}
