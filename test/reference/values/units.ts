import { LIVE_LOAD_PA } from '../../../core/sizing/joist-floor.ts'
import {
  G_PER_OUNCE,
  KG_PER_POUND,
  L_PER_IMPERIAL_GALLON,
  L_PER_US_GALLON,
  ML_PER_US_FLUID_OUNCE,
  MM_PER_FOOT,
  MM_PER_INCH,
} from '../../../core/units/factors.ts'
import { pureWaterDensity, seaWaterDensity } from '../../../core/water/density.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

const by = 'core/units/factors.ts'
const poundsAGallon = (kgPerM3: number): number => (kgPerM3 / 1000) * (L_PER_US_GALLON / KG_PER_POUND)

export const UNITS: ReferenceTopic = {
  title: 'Units',
  about: 'Lengths, volumes and masses are kept in metric units; these factors bring in what people write, and tell it again.',
  alsoIn: ['test/core/units/say-and-parse.test.ts'],
  values: [
    ...from(
      { standing: 'from memory', source: 'NIST SP 811 (2008) app. B; NIST Handbook 44 app. C', within: { relative: 1e-12 }, unit: '', by },
      [
        ['millimetres in an inch', 25.4, () => MM_PER_INCH],
        ['millimetres in a foot', 304.8, () => MM_PER_FOOT],
        ['litres in a US gallon, 231 cubic inches', 3.785411784, () => L_PER_US_GALLON],
        ['litres in a US gallon, by its inches', 3.785411784, () => (231 * MM_PER_INCH ** 3) / 1e6],
        ['litres in an imperial gallon', 4.54609, () => L_PER_IMPERIAL_GALLON],
        ['imperial gallon over US gallon', 1.200949925504855, () => L_PER_IMPERIAL_GALLON / L_PER_US_GALLON],
        ['litres in a cubic foot', 28.316846592, () => MM_PER_FOOT ** 3 / 1e6],
        ['kilograms in a pound', 0.45359237, () => KG_PER_POUND],
        ['grams in an ounce', 28.349523125, () => G_PER_OUNCE],
        ['millilitres in a US fluid ounce', 29.5735295625, () => ML_PER_US_FLUID_OUNCE],
      ],
    ),
    ...from({ standing: 'own', source: 'arithmetic on the exact factors', within: { relative: 1e-9 }, unit: '', by }, [
      ['litres in 75 US gallons', 283.9058838, () => 75 * L_PER_US_GALLON],
      ['m³/s that a US gallon an hour is', 1.051503273e-6, () => L_PER_US_GALLON / 3_600_000],
    ]),
    ...from({ standing: 'own', source: 'arithmetic on the exact factors', within: { relative: 1e-5 }, unit: '', by }, [
      ['W/L that a watt a US gallon is', 0.264172, () => 1 / L_PER_US_GALLON],
      ['pounds in a US gallon of water of 25 °C (Kell)', 8.3207, () => poundsAGallon(pureWaterDensity(25))],
      ['pounds in 75 US gallons of it', 624.06, () => 75 * poundsAGallon(pureWaterDensity(25))],
      ['pounds in a US gallon of sea water of 25 °C', 8.5402, () => poundsAGallon(seaWaterDensity(35, 25))],
    ]),
    ...from(
      {
        standing: 'published',
        source: 'IRC table R301.5, 30 and 40 lbf/ft²',
        within: { relative: 1e-4 },
        unit: 'kPa',
        by: 'core/sizing/joist-floor.ts',
      },
      [
        ['live load of a sleeping room', 1.4364, () => LIVE_LOAD_PA.bedroom / 1000],
        ['live load of any other room', 1.9152, () => LIVE_LOAD_PA.other / 1000],
      ],
    ),
  ],
}
