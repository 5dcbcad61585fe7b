import { equilibriumC } from '../../../core/sizing/equilibrium.ts'
import { heatCapacity } from '../../../core/sizing/heat-capacity.ts'
import { HIGH_LOSS, USUAL_LOSS, type HeatEnd } from '../../../core/sizing/heat-ends.ts'
import { evaporationLPerDay, heatLoss, lossW, vapourLossW, type HeatLoss } from '../../../core/sizing/heat-loss.ts'
import { bottomTransmission, sideTransmission, topTransmission } from '../../../core/sizing/heat-transmission.ts'
import { tankMass } from '../../../core/sizing/tank-mass.ts'
import { hoursBetween } from '../../../core/sizing/warm-up.ts'
import { latentHeatKjKg } from '../../../core/water/latent-heat.ts'
import { GEOMETRY_A, GEOMETRY_B, MASS_A, TANK_A, TANK_B } from '../../core/sizing/reference-tanks.ts'
import { from, type ReferenceTopic } from './reference-value.ts'

type Top = 'open' | 'glass'
const inRoom = (cover: Top, roomC: number, end: HeatEnd = USUAL_LOSS) => heatLoss(TANK_A, GEOMETRY_A, cover, end, roomC)
const topM2 = (GEOMETRY_A.insideLengthMm * GEOMETRY_A.insideWidthMm) / 1e6
const sayTop = (cover: Top): string => (cover === 'open' ? 'open' : 'under a lid')

/** kg/(m² h) from an open square metre. */
const evaporated = (waterC: number, roomC: number): number =>
  ((vapourLossW(inRoom('open', roomC), waterC) / topM2) * 3.6) / latentHeatKjKg(waterC)

const through = 'core/sizing/heat-transmission.ts'
const balance = 'core/sizing/heat-loss.ts'
const own = { standing: 'own' as const, source: 'computed apart from this code' }

/** Side, bottom, top dry, evaporation, all, and litres a day. */
const BALANCES = [
  ['open', 25, 20, 59.08, 8.75, 26.21, 46.66, 140.7, 1.651],
  ['glass', 25, 20, 59.08, 8.75, 25.21, 7, 100.04, 0.248],
  ['open', 25, 18, 82.71, 12.25, 36.7, 49.86, 181.53, 1.764],
  ['glass', 25, 18, 82.71, 12.25, 35.29, 7.48, 137.73, 0.265],
  ['open', 26, 22, 47.26, 7, 20.97, 47.61, 122.85, 1.686],
  ['glass', 25, 22, 35.45, 5.25, 15.12, 6.46, 62.29, 0.229],
] as const

export const HEAT: ReferenceTopic = {
  title: 'Heat: what a tank loses',
  about:
    'The 75 gallon tank at 50 % humidity, ASHRAE F 0.5, a lid that lets 0.15 of the vapour out, unless a row says otherwise. The code reckons with ranges about these.',
  alsoIn: [
    'test/core/sizing/heat-loss.test.ts',
    'test/core/sizing/heat-transmission.test.ts',
    'test/reference/still-evaporation.test.ts',
    'test/reference/still-convection.test.ts',
  ],
  values: [
    ...from(
      {
        standing: 'own',
        source: 'ISO 6946 (0.13, 0.10 and 0.17 m²K/W; the last two from memory), EN 572-1, EN ISO 10456, by hand',
        within: { relative: 1e-4 },
        unit: 'W/m²K',
        by: through,
      },
      [
        ['side of 10 mm glass', 7.1429, () => sideTransmission('glass', 10, false)],
        ['side of 6 mm glass', 7.3529, () => sideTransmission('glass', 6, false)],
        ['side of 10 mm acrylic', 5.5556, () => sideTransmission('acrylic', 10, false)],
        ['side of 6 mm acrylic', 6.25, () => sideTransmission('acrylic', 6, false)],
        ['bottom of 10 mm glass on an 18 mm board', 3.1401, () => bottomTransmission('glass', 10)],
        ['open surface, without its vapour', 10, () => topTransmission('open')],
        ['lid of 4 mm glass', 9.6154, () => topTransmission('glass')],
      ],
    ),
    ...from({ ...own, within: { relative: 3e-4 }, unit: 'W/K', by: balance }, [
      ['sides', 11.816, () => inRoom('open', 20).sideWPerK],
      ['bottom', 1.75, () => inRoom('open', 20).bottomWPerK],
      ['open top', 5.243, () => inRoom('open', 20).topWPerK],
      ['lid', 5.041, () => inRoom('glass', 20).topWPerK],
    ]),
    ...from(
      { ...own, within: { relative: 1e-3 }, unit: 'W', by: balance },
      BALANCES.flatMap(([cover, waterC, roomC, side, bottom, top, vapour, total]) => {
        const at = `${sayTop(cover)}, water ${waterC} °C, room ${roomC} °C`
        const loss = inRoom(cover, roomC)
        return [
          [`sides, ${at}`, side, () => loss.sideWPerK * (waterC - roomC)],
          [`bottom, ${at}`, bottom, () => loss.bottomWPerK * (waterC - roomC)],
          [`top, ${at}`, top, () => loss.topWPerK * (waterC - roomC)],
          [`vapour, ${at}`, vapour, () => vapourLossW(loss, waterC)],
          [`in all, ${at}`, total, () => lossW(loss, waterC)],
        ] as const
      }),
    ),
    ...from(
      { ...own, within: { relative: 2e-3 }, unit: 'L/day', by: balance },
      BALANCES.map(
        ([cover, waterC, roomC, , , , , , litres]) =>
          [`evaporation, ${sayTop(cover)}, ${waterC}/${roomC} °C`, litres, () => evaporationLPerDay(inRoom(cover, roomC), waterC)] as const,
      ),
    ),
    ...from(
      {
        ...own,
        source: 'ASHRAE HVAC Applications, natatoriums, F 0.5, by another program',
        within: { relative: 5e-4 },
        unit: 'kg/m²h',
        by: balance,
      },
      [
        ['open surface, 25/20 °C', 0.13119, () => evaporated(25, 20)],
        ['open surface, 26/22 °C', 0.13401, () => evaporated(26, 22)],
        ['open surface, 25/22 °C', 0.12116, () => evaporated(25, 22)],
      ],
    ),
    ...from(
      {
        ...own,
        source: 'ASHRAE HVAC Applications, natatoriums, F 0.5, by another program',
        within: { relative: 5e-4 },
        unit: 'W/m²',
        by: balance,
      },
      [
        ['open surface, 25/20 °C', 88.99, () => vapourLossW(inRoom('open', 20), 25) / topM2],
        ['open surface, 26/22 °C', 90.81, () => vapourLossW(inRoom('open', 22), 26) / topM2],
        ['open surface, 25/22 °C', 82.18, () => vapourLossW(inRoom('open', 22), 25) / topM2],
      ],
    ),
    ...from({ ...own, within: { relative: 1e-3 }, unit: 'W/m²', by: balance }, [
      ['open surface in a room as warm as the water, 25/25 °C', 70.5, () => lossW(inRoom('open', 25), 25) / topM2],
    ]),
    ...from(
      {
        standing: 'published',
        source: 'ASHRAE Transactions 104 (1998) pt 1A: a quiet pool gives off 74 % of what the form has at F 1',
        within: { absolute: 0 },
        unit: '',
        by: 'core/sizing/heat-ends.ts',
      },
      [['F at the high end of the losses', 0.74, () => HIGH_LOSS.activity]],
    ),
    ...from(
      { ...own, source: '25 % humidity, F 0.74, every side free, by another program', within: { relative: 3e-3 }, unit: 'W', by: balance },
      [['open, 25/18 °C, at the high end', 223, () => lossW(inRoom('open', 18, HIGH_LOSS), 25)]],
    ),
    ...from({ ...own, within: { relative: 1e-3 }, unit: 'W', by: 'core/water/latent-heat.ts' }, [
      ['a litre a day of 25 °C', 28.18, () => (0.99704 * latentHeatKjKg(25) * 1000) / 86_400],
    ]),
  ],
}

const C = heatCapacity(MASS_A, 'glass')
const dry = (roomC: number): HeatLoss => ({ ...inRoom('glass', roomC), vapourWPerPa: 0 })
const small = heatLoss(TANK_B, GEOMETRY_B, 'glass', USUAL_LOSS, 22)
const smallC = heatCapacity(tankMass({ shape: TANK_B, geometry: GEOMETRY_B, grain: 'quartz', water: 'fresh', waterC: 25 }), 'glass')

/** Where water ends that has cooled for so many hours: halved by the hours that the code names. */
function cooledTo(loss: HeatLoss, hours: number): number {
  let [low, high] = [18.001, 25]
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if ((hoursBetween(loss, C, 0, 25, middle) ?? Infinity) > hours) low = middle
    else high = middle
  }
  return high
}

/** The coldest room in which so much heat holds 25 °C. */
function coldestRoomC(cover: Top, watts: number): number {
  let [low, high] = [-10, 25]
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2
    if (lossW(inRoom(cover, middle), 25) > watts) low = middle
    else high = middle
  }
  return high
}

const STUCK = [
  [150, 20, 27.59, 25.4],
  [300, 20, 35.27, 31.62],
  [150, 22, 29.53, 27.15],
  [300, 22, 37.18, 33.26],
  [150, 24, 31.47, 28.89],
] as const
const settles = 'core/sizing/equilibrium.ts'
const warms = 'core/sizing/warm-up.ts'

export const HEAT_IN_TIME: ReferenceTopic = {
  title: 'Heat: where it settles and how long it takes',
  about: 'The 75 gallon tank at the same usual losses; the small tank is 60 × 30 × 36 cm of 6 mm glass with 324 mm of water under a lid.',
  alsoIn: ['test/core/sizing/equilibrium.test.ts', 'test/core/sizing/warm-up.test.ts', 'test/core/sizing/rule-of-thumb-rooms.test.ts'],
  values: [
    ...from(
      {
        ...own,
        source: 'masses rounded to a tenth, handbook heats',
        within: { relative: 1e-4 },
        unit: 'J/K',
        by: 'core/sizing/heat-capacity.ts',
      },
      [['heat capacity', 1_073_386, () => C]],
    ),
    ...from({ ...own, source: 'halving along the curve of evaporation', within: { absolute: 0.02 }, unit: '°C', by: settles }, [
      ...STUCK.flatMap(([watts, roomC, lidC, openC]) => [
        [`${watts} W stuck on, room ${roomC} °C, under a lid`, lidC, () => equilibriumC(inRoom('glass', roomC), watts)] as const,
        [`${watts} W stuck on, room ${roomC} °C, open`, openC, () => equilibriumC(inRoom('open', roomC), watts)] as const,
      ]),
      ['one of two 150 W failed, room 18 °C, under a lid', 25.64, () => equilibriumC(inRoom('glass', 18), 150)],
      ['one of two 150 W failed, room 18 °C, open', 23.63, () => equilibriumC(inRoom('open', 18), 150)],
      ['small tank, 25 W, room 22 °C', 25.47, () => equilibriumC(small, 25)],
      ['small tank, 50 W, room 22 °C', 29.14, () => equilibriumC(small, 50)],
      ['small tank, 100 W, room 22 °C', 36.41, () => equilibriumC(small, 100)],
      ['225 W (3 W a gallon) hold 25 °C, under a lid, down to', 13.36, () => coldestRoomC('glass', 225)],
      ['300 W (4 W a gallon) hold 25 °C, under a lid, down to', 9.36, () => coldestRoomC('glass', 300)],
      ['375 W (5 W a gallon) hold 25 °C, under a lid, down to', 5.36, () => coldestRoomC('glass', 375)],
      ['225 W hold 25 °C, open, down to', 15.85, () => coldestRoomC('open', 225)],
      ['300 W hold 25 °C, open, down to', 12.11, () => coldestRoomC('open', 300)],
      ['375 W hold 25 °C, open, down to', 8.31, () => coldestRoomC('open', 375)],
    ]),
    ...from({ ...own, source: 'integrated along the curve of evaporation', within: { relative: 5e-3 }, unit: 'h', by: warms }, [
      ['25 to 32 °C, 300 W, room 20 °C, under a lid', 17.45, () => hoursBetween(inRoom('glass', 20), C, 300, 25, 32)],
      ['25 to 32 °C, 300 W, room 22 °C, under a lid', 13, () => hoursBetween(inRoom('glass', 22), C, 300, 25, 32)],
      ['25 to 32 °C, 300 W, room 22 °C, open', 22.54, () => hoursBetween(inRoom('open', 22), C, 300, 25, 32)],
      ['25 to 32 °C, small tank, 100 W, room 22 °C', 9.17, () => hoursBetween(small, smallC, 100, 25, 32)],
    ]),
    ...from({ ...own, source: 'closed form of a straight loss of 18.6078 W/K', within: { relative: 1e-4 }, unit: 'h', by: warms }, [
      ['time constant', 16.0235, () => C / dry(18).dryWPerK / 3600],
      ['18 to 25 °C, 300 W, room 18 °C, no vapour', 9.1251, () => hoursBetween(dry(18), C, 300, 18, 25)],
      ['25 to 21 °C, no heat, room 18 °C, no vapour', 13.577, () => hoursBetween(dry(18), C, 0, 25, 21)],
      ['18 to 25 °C, 300 W, no loss', 6.957, () => (C * 7) / 300 / 3600],
    ]),
    ...from({ ...own, source: 'closed form of a straight loss of 18.6078 W/K', within: { relative: 1e-4 }, unit: '°C', by: warms }, [
      ['no heat for 12 h, room 18 °C, no vapour', 21.31, () => cooledTo(dry(18), 12)],
    ]),
    ...from({ ...own, source: 'ODE solver, tolerance 1e-10', within: { relative: 2e-3 }, unit: 'h', by: warms }, [
      ['18 to 25 °C, 300 W, room 18 °C, under a lid', 9.37, () => hoursBetween(inRoom('glass', 18), C, 300, 18, 25)],
      ['18 to 25 °C, 300 W, room 18 °C, open', 11.159, () => hoursBetween(inRoom('open', 18), C, 300, 18, 25)],
    ]),
    ...from({ ...own, source: 'ODE solver, tolerance 1e-10', within: { relative: 2e-3 }, unit: '°C', by: warms }, [
      ['no heat for 12 h, room 18 °C, under a lid', 21.14, () => cooledTo(inRoom('glass', 18), 12)],
      ['no heat for 24 h, room 18 °C, under a lid', 19.355, () => cooledTo(inRoom('glass', 18), 24)],
    ]),
  ],
}
