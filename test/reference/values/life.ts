import { stillTransfer, surfaceOxygen } from '../../../core/sizing/surface-oxygen.ts'
import { salinityWithout } from '../../../core/sizing/salinity-drift.ts'
import { atmospheresAt, oxygenSaturation } from '../../../core/water/dissolved-oxygen.ts'
import { oxygenTransfer, schmidtOfOxygen, stirredTransfer, transferUnderWind } from '../../../core/water/gas-transfer.ts'
import { ALKALINITY_G_PER_N, ammoniaOfFeed, NITRATE_G_PER_N, OXYGEN_G_PER_N } from '../../../core/water/nitrogen.ts'
import { salinityAfter } from '../../../core/water/salt-balance.ts'
import { pureWaterDensity } from '../../../core/water/density.ts'
import { steadyUnderChanges } from '../../../core/water/steady-change.ts'
import { waterViscosity } from '../../../core/water/viscosity.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

/** °C; EN 25814; APHA; at a salinity of 35; at 0.85 atm. */
const SATURATION = [
  [0, 14.6, 14.621, 11.446, 12.416],
  [15, 10.1, 10.084, 8.135, 8.546],
  [20, 9.09, 9.092, 7.396, 7.697],
  [25, 8.26, 8.263, 6.772, 6.985],
  [30, 7.56, 7.559, 6.237, 6.376],
] as const
const holds = { unit: 'mg/L', by: 'core/water/dissolved-oxygen.ts' }
const passes = 'core/water/gas-transfer.ts'
const nitrogen = 'core/water/nitrogen.ts'

/** A stirred surface by another's coefficient on the same small eddies of 10⁻⁴ W/kg at 20 °C, cm/h. */
const measured = (coefficient: number): number =>
  (coefficient * ((1e-4 * waterViscosity(20)) / pureWaterDensity(20)) ** 0.25 * 360_000) / Math.sqrt(schmidtOfOxygen(20, 'fresh'))

export const OXYGEN: ReferenceTopic = {
  title: 'Oxygen and what passes the surface',
  about: 'Saturation by Benson & Krause (1984). EN 25814 prints one decimal below 16 °C and two above, from an older fit.',
  alsoIn: ['test/core/water/dissolved-oxygen.test.ts', 'test/core/sizing/surface-oxygen.test.ts', 'test/core/sizing/oxygen-check.test.ts'],
  values: [
    ...from(
      { standing: 'published', source: 'EN 25814 (ISO 5814)', within: { absolute: 0.025 }, ...holds },
      SATURATION.map(([celsius, standard]) => [`fresh water of ${celsius} °C`, standard, () => oxygenSaturation(celsius)] as const),
    ),
    ...from(
      { standing: 'from memory', source: 'APHA, Standard Methods', within: { absolute: 1.5e-3 }, ...holds },
      SATURATION.map(([celsius, , handbook]) => [`fresh water of ${celsius} °C`, handbook, () => oxygenSaturation(celsius)] as const),
    ),
    ...from({ standing: 'own', source: 'Benson & Krause, by another program', within: { absolute: 1e-3 }, ...holds }, [
      ...SATURATION.map(([celsius, , , sea]) => [`salinity 35, ${celsius} °C`, sea, () => oxygenSaturation(celsius, 35)] as const),
      ...SATURATION.map(([celsius, , , , high]) => [`0.85 atm, ${celsius} °C`, high, () => oxygenSaturation(celsius, 0, 0.85)] as const),
    ]),
    ...from({ standing: 'from memory', source: 'ICAO standard atmosphere', within: { absolute: 5e-5 }, unit: 'atm', by: holds.by }, [
      ['pressure at 1600 m', 0.8243, () => atmospheresAt(1600)],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'Mortimer, Mitt. Int. Ver. Limnol. 22 (1981), factors of height',
        within: { relative: 0.01 },
        unit: '',
        by: holds.by,
      },
      [
        ['sea level over 1000 m', 1.13, () => oxygenSaturation(20) / oxygenSaturation(20, 0, atmospheresAt(1000))],
        ['sea level over 1500 m', 1.2, () => oxygenSaturation(20) / oxygenSaturation(20, 0, atmospheresAt(1500))],
        ['sea level over 2000 m', 1.28, () => oxygenSaturation(20) / oxygenSaturation(20, 0, atmospheresAt(2000))],
      ],
    ),
    ...from({ standing: 'from memory', source: 'Wanninkhof (1992)', within: { absolute: 0.5 }, unit: '', by: passes }, [
      ['Schmidt number of oxygen, fresh water of 20 °C', 530, () => schmidtOfOxygen(20, 'fresh')],
      ['Schmidt number of oxygen, sea water of 20 °C', 589, () => schmidtOfOxygen(20, 'salt')],
    ]),
    ...from({ standing: 'from memory', source: 'Cole & Caraco (1998)', within: { relative: 2e-3 }, unit: 'cm/h', by: passes }, [
      ['lake on a still day, k600', 2.07, () => transferUnderWind(0)],
      ['lake under a wind of 5 m/s, k600', 5.387, () => transferUnderWind(5)],
    ]),
    ...from({ standing: 'own', source: '2.07·√(600 ÷ 417.7), by hand', within: { relative: 2e-3 }, unit: 'cm/h', by: passes }, [
      ['oxygen into still water of 25 °C', 2.481, () => oxygenTransfer(2.07, 25, 'fresh')],
    ]),
    ...from({ standing: 'own', source: '0.4·(10⁻⁵·8.93·10⁻⁷)^¼ ÷ √417.7, by hand', within: { relative: 4e-3 }, unit: 'cm/h', by: passes }, [
      ['oxygen into water of 25 °C stirred by 10⁻⁵ W/kg', 12.2, () => stirredTransfer(1e-5, 25, 'fresh')],
    ]),
    ...from(
      {
        standing: 'from memory',
        source: 'measured coefficients of the same form over many waters, over ours',
        within: { absolute: 0.1 },
        unit: '',
        by: passes,
      },
      [
        ['Zappa et al. (2007), 0.419', 1, () => stirredTransfer(1e-4, 20, 'fresh') / measured(0.419)],
        ['Vachon et al. (2010), 0.43', 1, () => stirredTransfer(1e-4, 20, 'fresh') / measured(0.43)],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: '(8.263 − 5)·0.02481·0.52429·24, by hand',
        within: { relative: 2e-3 },
        unit: 'g/day',
        by: 'core/sizing/surface-oxygen.ts',
      },
      [
        [
          'oxygen into the still 75 gallon tank that holds 5 mg/L',
          1.0187,
          () =>
            surfaceOxygen({ areaM2: 0.52429, waterC: 25, water: 'fresh' }, stillTransfer({ areaM2: 0.52429, waterC: 25, water: 'fresh' })),
        ],
      ],
    ),
  ],
}

export const NITROGEN: ReferenceTopic = {
  title: 'Nitrogen of feed, and salt that stays',
  about: 'Feed of 45 % protein unless a row says otherwise; weights as nitrogen. Atomic weights of IUPAC.',
  alsoIn: [
    'test/core/water/nitrogen.test.ts',
    'test/core/sizing/nitrogen-balance.properties.test.ts',
    'test/core/sizing/filter-feed.test.ts',
    'test/core/water/salt-balance.test.ts',
    'test/core/sizing/salinity-drift.test.ts',
  ],
  values: [
    ...from(
      {
        standing: 'from memory',
        source: 'Timmons & Ebeling, Recirculating Aquaculture: 0.092 of the protein',
        within: { relative: 1e-4 },
        unit: 'g',
        by: nitrogen,
      },
      [
        ['ammonia-N of 5 g of feed', 0.207, () => ammoniaOfFeed(5)],
        ['ammonia-N of 1 kg of feed of 35 % protein', 32.2, () => ammoniaOfFeed(1000, 0.35)],
      ],
    ),
    ...from({ standing: 'from memory', source: '0.16 · 0.80 · 0.80 · 0.90', within: { relative: 2e-3 }, unit: 'g', by: nitrogen }, [
      ['ammonia-N of 1 g of protein', 0.09216, () => ammoniaOfFeed(1, 1)],
    ]),
    ...from({ standing: 'own', source: '0.207 g in 237.7 L', within: { relative: 1e-4 }, unit: 'mg/L', by: nitrogen }, [
      ['ammonia-N of 5 g of feed in the 75 gallon tank', 0.8708, () => (ammoniaOfFeed(5) * 1000) / 237.7132],
    ]),
    ...from(
      {
        standing: 'published',
        source: '3.43 + 1.14 g of oxygen for a gram of nitrogen',
        within: { relative: 1e-9 },
        unit: 'g/g',
        by: nitrogen,
      },
      [['oxygen for nitrogen', 4.57, () => OXYGEN_G_PER_N]],
    ),
    ...from(
      { standing: 'own', source: 'atomic weights, NH₄⁺ + 2 O₂ → NO₃⁻ + H₂O + 2 H⁺', within: { relative: 1e-3 }, unit: 'g/g', by: nitrogen },
      [
        ['oxygen for nitrogen', 4.5689, () => OXYGEN_G_PER_N],
        ['alkalinity as CaCO₃ for nitrogen', 7.1455, () => ALKALINITY_G_PER_N],
        ['nitrate for nitrogen', 4.4268, () => NITRATE_G_PER_N],
      ],
    ),
    ...from({ standing: 'own', source: 'arithmetic on the factors', within: { relative: 1e-3 }, unit: '', by: nitrogen }, [
      ['oxygen for 0.207 g of nitrogen, g', 0.946, () => 0.207 * OXYGEN_G_PER_N],
      ['alkalinity that 20 mg/L of nitrogen cost, mg/L as CaCO₃', 142.9, () => 20 * ALKALINITY_G_PER_N],
    ]),
    ...from(
      {
        standing: 'own',
        source: 'mass balance: 0.8708 mg/L a day, a quarter changed each week',
        within: { relative: 1e-4 },
        unit: 'mg/L',
        by: 'core/water/steady-change.ts',
      },
      [
        ['before a change', 24.382, () => steadyUnderChanges(0.8708 * 7, 0.25).peak],
        ['after a change', 18.287, () => steadyUnderChanges(0.8708 * 7, 0.25).trough],
      ],
    ),
    ...from(
      {
        standing: 'from memory',
        source: 'Knudsen’s relations: the Mediterranean (Pickard & Emery, Descriptive Physical Oceanography), the Baltic (Knudsen 1900)',
        within: { relative: 2e-3 },
        unit: 'g/kg',
        by: 'core/water/salt-balance.ts',
      },
      [
        ['out of the Mediterranean: 1.75 in at 36.3, 0.07 lost to the air', 37.8, () => salinityAfter(36.3, 1.75, -0.07)],
        ['out of the Baltic: as much fresh water as flows in at 17.4', 8.7, () => salinityAfter(17.4, 470, 470)],
      ],
    ),
    ...from(
      {
        standing: 'own',
        source: '35 ÷ 2 by hand: salt is kept where water is added by weight',
        within: { relative: 1e-12 },
        unit: 'g/kg',
        by: 'core/water/salt-balance.ts',
      },
      [['standard sea water with its weight of fresh water', 17.5, () => salinityAfter(35, 1, 1)]],
    ),
    ...from(
      { standing: 'own', source: '35·160 ÷ 158.4, by hand', within: { relative: 2e-3 }, unit: 'g/kg', by: 'core/sizing/salinity-drift.ts' },
      [['160 kg of sea water that lose 1.6 L', 35.354, () => salinityWithout(160, 1.6, 1)]],
    ),
  ],
}
