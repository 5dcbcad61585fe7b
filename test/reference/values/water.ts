import { specificGravity } from '../../../core/units/specific-gravity.ts'
import { pureWaterDensity, seaWaterDensity } from '../../../core/water/density.ts'
import { latentHeatKjKg } from '../../../core/water/latent-heat.ts'
import { saturationPressurePa } from '../../../core/water/vapour-pressure.ts'
import { waterViscosity } from '../../../core/water/viscosity.ts'
import { from, type Origin, type ReferenceTopic } from './reference-value.ts'

const density: Omit<Origin, 'standing' | 'source' | 'within'> = { unit: 'kg/m³', by: 'core/water/density.ts' }
const vapour: Omit<Origin, 'standing' | 'source' | 'within'> = { unit: 'Pa', by: 'core/water/vapour-pressure.ts' }

export const WATER: ReferenceTopic = {
  title: 'Water: density, viscosity, vapour',
  about:
    'Pure water by Kell (1975), sea water by UNESCO EOS-80 at one atmosphere; temperatures on the scale of 1968, which at 25 °C moves a density by 0.002 kg/m³.',
  alsoIn: ['test/core/water/density.test.ts', 'test/core/water/vapour-pressure.test.ts', 'test/reference/vapour-formulas.test.ts'],
  values: [
    ...from(
      {
        standing: 'published',
        source: 'Fofonoff & Millard, UNESCO Technical Papers in Marine Science 44 (1983) p. 19',
        within: { absolute: 1e-5 },
        ...density,
      },
      [
        ['fresh water of 5 °C', 999.96675, () => seaWaterDensity(0, 5)],
        ['fresh water of 25 °C', 997.04796, () => seaWaterDensity(0, 25)],
        ['sea water of salinity 35 and 25 °C', 1023.34306, () => seaWaterDensity(35, 25)],
      ],
    ),
    ...from({ standing: 'own', source: 'EOS-80 by another program', within: { absolute: 1e-3 }, ...density }, [
      ['sea water of salinity 35 and 24 °C', 1023.6431, () => seaWaterDensity(35, 24)],
      ['sea water of salinity 35 and 26 °C', 1023.0353, () => seaWaterDensity(35, 26)],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'CRC Handbook, standard density of water (Kell lies 0.003 low)',
        within: { absolute: 0.006 },
        ...density,
      },
      (
        [
          [0, 999.8426],
          [4, 999.975],
          [10, 999.7026],
          [20, 998.2071],
          [25, 997.0479],
          [30, 995.6502],
          [40, 992.2187],
        ] as const
      ).map(([celsius, value]) => [`pure water of ${celsius} °C`, value, () => pureWaterDensity(celsius)] as const),
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'Tanaka et al., Metrologia 38 (2001) 301, the form the CIPM recommends',
        within: { absolute: 0.003 },
        ...density,
      },
      [
        ['pure water of 20 °C, by another formula', 998.2067, () => pureWaterDensity(20)],
        ['pure water of 25 °C, by another formula', 997.047, () => pureWaterDensity(25)],
      ],
    ),
    ...from(
      { standing: 'own', source: 'Kell, J. Chem. Eng. Data 20 (1975) 97, by another program', within: { absolute: 1e-4 }, ...density },
      (
        [
          [0, 999.8395],
          [4, 999.972],
          [10, 999.6996],
          [20, 998.2041],
          [25, 997.0449],
          [40, 992.2158],
        ] as const
      ).map(([celsius, value]) => [`Kell’s equation at ${celsius} °C`, value, () => pureWaterDensity(celsius)] as const),
    ),
    ...from(
      { standing: 'own', source: '1023.34306 over 997.04796', within: { absolute: 1e-4 }, unit: '', by: 'core/units/specific-gravity.ts' },
      [['specific gravity of salinity 35, both waters at 25 °C', 1.0264, () => specificGravity(35)]],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'CRC Handbook, viscosity of water',
        within: { relative: 3e-3 },
        unit: 'mPa s',
        by: 'core/water/viscosity.ts',
      },
      [
        ['water of 20 °C', 1.0016, () => waterViscosity(20) * 1000],
        ['water of 25 °C', 0.89, () => waterViscosity(25) * 1000],
        ['water of 30 °C', 0.7972, () => waterViscosity(30) * 1000],
      ],
    ),
    ...from(
      { standing: 'own', source: 'Hyland & Wexler (1983) as ASHRAE prints it, by another program', within: { relative: 1e-5 }, ...vapour },
      (
        [
          [5, 872.49],
          [20, 2338.8],
          [25, 3169.22],
          [30, 4246.03],
          [40, 7383.46],
        ] as const
      ).map(([celsius, value]) => [`saturation pressure at ${celsius} °C`, value, () => saturationPressurePa(celsius)] as const),
    ),
    ...from({ standing: 'from memory', source: 'CRC Handbook, vapour pressure of water', within: { relative: 3e-3 }, ...vapour }, [
      ['saturation pressure at 20 °C', 2338.8, () => saturationPressurePa(20)],
      ['saturation pressure at 25 °C', 3169, () => saturationPressurePa(25)],
      ['saturation pressure at 30 °C', 4245.5, () => saturationPressurePa(30)],
    ]),
    ...from({ standing: 'from memory', source: 'FAO Irrigation and Drainage Paper 56, table 2.3', within: { relative: 1e-3 }, ...vapour }, [
      ['saturation pressure at 20 °C', 2338, () => saturationPressurePa(20)],
      ['saturation pressure at 25 °C', 3168, () => saturationPressurePa(25)],
      ['saturation pressure at 30 °C', 4243, () => saturationPressurePa(30)],
    ]),
    ...from({ standing: 'from memory', source: 'Tests of a general psychrometric library', within: { relative: 3e-4 }, ...vapour }, [
      ['saturation pressure at 25 °C', 3169.7, () => saturationPressurePa(25)],
      ['saturation pressure at 50 °C', 12_351.3, () => saturationPressurePa(50)],
    ]),
    ...from({ standing: 'from memory', source: 'IAPWS-95 steam tables', within: { relative: 2e-3 }, ...vapour }, [
      ['saturation pressure at 25 °C', 3169.9, () => saturationPressurePa(25)],
      ['saturation pressure at 100 °C', 101_420, () => saturationPressurePa(100)],
    ]),
    ...from(
      { standing: 'from memory', source: 'Steam tables', within: { relative: 2e-4 }, unit: 'kJ/kg', by: 'core/water/latent-heat.ts' },
      [
        ['heat of evaporation at 20 °C', 2453.5, () => latentHeatKjKg(20)],
        ['heat of evaporation at 25 °C', 2441.7, () => latentHeatKjKg(25)],
        ['heat of evaporation at 30 °C', 2429.8, () => latentHeatKjKg(30)],
      ],
    ),
    ...from(
      { standing: 'from memory', source: 'FAO-56, annex 3', within: { relative: 1e-5 }, unit: 'kJ/kg', by: 'core/water/latent-heat.ts' },
      [
        ['heat of evaporation at 20 °C', 2453.78, () => latentHeatKjKg(20)],
        ['heat of evaporation at 25 °C', 2441.97, () => latentHeatKjKg(25)],
        ['heat of evaporation at 30 °C', 2430.17, () => latentHeatKjKg(30)],
      ],
    ),
  ],
}
