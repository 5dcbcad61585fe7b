import psychrolib from 'psychrolib'
import { beforeAll, describe, expect, it } from 'vitest'
import { HIGH_LOSS, USUAL_LOSS } from '../../core/sizing/heat-ends.ts'
import { heatLoss, vapourLossW } from '../../core/sizing/heat-loss.ts'
import { latentHeatKjKg } from '../../core/water/latent-heat.ts'
import { saturationPressurePa } from '../../core/water/vapour-pressure.ts'
import { GEOMETRY_A, TANK_A, isNear } from '../core/sizing/reference-tanks.ts'

const SEA_LEVEL_PA = 101_325
/** Gas constant of dry air, J/(kg K): ASHRAE Fundamentals ch. 1, from memory. */
const DRY_AIR = 287.042
/** Molar masses of water and dry air, one over the other: the same chapter, from memory. */
const MASS_RATIO = 0.621945

/** By hand from our own vapour pressure: kg of vapour with a kilogram of dry air, and that kilogram's share of a cubic metre. */
const humidityRatio = (celsius: number, humidity: number): number => {
  const vapourPa = humidity * saturationPressurePa(celsius)
  return (MASS_RATIO * vapourPa) / (SEA_LEVEL_PA - vapourPa)
}
const dryDensity = (celsius: number, humidity: number): number =>
  (SEA_LEVEL_PA - humidity * saturationPressurePa(celsius)) / (DRY_AIR * (celsius + 273.15))

/**
 * Shah’s form for a still surface, kg/(m² h): the larger of 35·ρ_w·(ρ_r − ρ_w)^⅓·(W_w − W_r) and 5.0e-5·(p_w − p_r), ρ in kg of dry air a cubic metre.
 * ASHRAE Transactions 2012 and SE-14-001 (2014); coefficients from memory.
 */
function shah(waterC: number, roomC: number, humidity: number): number {
  const lighter = dryDensity(roomC, humidity) - dryDensity(waterC, 1)
  const natural = 35 * dryDensity(waterC, 1) * Math.cbrt(Math.max(0, lighter)) * (humidityRatio(waterC, 1) - humidityRatio(roomC, humidity))
  return Math.max(natural, 5e-5 * (saturationPressurePa(waterC) - humidity * saturationPressurePa(roomC)))
}

/** What our balance lets evaporate from a square metre of the open tank, kg/h. */
function ours(waterC: number, roomC: number, humidity: number, activity: number): number {
  const loss = heatLoss(TANK_A, GEOMETRY_A, 'open', { ...USUAL_LOSS, humidity, activity }, roomC)
  const topM2 = (GEOMETRY_A.insideLengthMm * GEOMETRY_A.insideWidthMm) / 1e6
  return ((vapourLossW(loss, waterC) / topM2) * 3.6) / latentHeatKjKg(waterC)
}

describe('moist air behind it', () => {
  beforeAll(() => psychrolib.SetUnitSystem(psychrolib.SI))

  /** Oracle: psychrolib 1.1.1 at 101 325 Pa. */
  it.each([
    [20, 0.5],
    [25, 0.5],
    [28, 1],
    [18, 0.25],
  ])('of %s °C and %s of saturation is that of an independent psychrometric library', (celsius, humidity) => {
    const ratio = psychrolib.GetHumRatioFromRelHum(celsius, humidity, SEA_LEVEL_PA)
    isNear(humidityRatio(celsius, humidity), ratio, 1e-5)
    isNear(dryDensity(celsius, humidity), 1 / psychrolib.GetMoistAirVolume(celsius, ratio, SEA_LEVEL_PA), 1e-4)
    isNear(
      dryDensity(celsius, humidity) * (1 + humidityRatio(celsius, humidity)),
      psychrolib.GetMoistAirDensity(celsius, ratio, SEA_LEVEL_PA),
      1e-4,
    )
  })

  /** Own, by that library: 0.00988104 kg/kg at 25 °C and 50 %, 0.0200811 saturated; 1.19890 kg/m³ and a dew point of 9.272 °C at 20 °C and 50 %. */
  it('has the figures that the library gives', () => {
    isNear(humidityRatio(25, 0.5), 0.00988104, 1e-5)
    isNear(humidityRatio(25, 1), 0.0200811, 1e-5)
    isNear(dryDensity(20, 0.5) * (1 + humidityRatio(20, 0.5)), 1.1989, 1e-4)
    isNear(saturationPressurePa(9.272), 0.5 * saturationPressurePa(20), 1e-4)
  })
})

describe('a still surface by another form', () => {
  /** Published look-up row of that form: water and air of 28 °C at 50 %: difference of density 0.0219 kg/m³, 0.1360 kg/(m² h). */
  it('gives the published row', () => {
    isNear(dryDensity(28, 0.5) - dryDensity(28, 1), 0.0219, 5e-3)
    isNear(shah(28, 28, 0.5), 0.136, 5e-3)
  })

  /** Own: both forms in kg/(m² h); tolerance 5e-4. */
  it.each([
    [25, 20, 0.18074, 0.13119],
    [26, 22, 0.17859, 0.13401],
  ])('from %s °C into a room of %s °C', (waterC, roomC, byShah, byAshrae) => {
    isNear(shah(waterC, roomC, 0.5), byShah, 5e-4)
    isNear(ours(waterC, roomC, 0.5, 0.5), byAshrae, 5e-4)
  })

  it('lies between the two ends that we reckon with', () => {
    for (const [waterC, roomC] of [
      [25, 20],
      [26, 22],
      [25, 22],
      [24, 18],
    ] as const) {
      expect(shah(waterC, roomC, 0.5)).toBeGreaterThan(ours(waterC, roomC, 0.5, USUAL_LOSS.activity))
      expect(shah(waterC, roomC, 0.5)).toBeLessThan(ours(waterC, roomC, 0.5, HIGH_LOSS.activity))
    }
  })

  /** Own arithmetic: a litre a day carries off 28.18 W at 25 °C. */
  it('carries off 28.18 W with a litre a day', () => isNear((0.997 * latentHeatKjKg(25) * 1000) / 86_400, 28.18, 1e-3))
})
