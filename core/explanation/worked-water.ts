import type { Finding } from '../sizing/finding.ts'
import { deliveryOf } from '../sizing/filter-delivery.ts'
import { evaporationLPerDay } from '../sizing/heat-loss.ts'
import { heatingOf } from '../sizing/heating.ts'
import { BUBBLES_W, returnPowerW, warmestOf } from '../sizing/oxygen-check.ts'
import { appliancesOf } from '../sizing/appliances.ts'
import type { Situation } from '../sizing/situation.ts'
import { over } from '../sizing/span.ts'
import { LEAST_OXYGEN_MG_L, oxygenOfFeed, stirredBy, surfaceOxygen } from '../sizing/surface-oxygen.ts'
import { KG_PER_POUND } from '../units/factors.ts'
import { phrase, quantity } from '../units/quantity.ts'
import { atmospheresAt, oxygenSaturation } from '../water/dissolved-oxygen.ts'
import { SALINITY } from '../water/sea-salinity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, lastDigitOf, line, plain } from './worked-line.ts'

/** Of what is told, a tenth of a per cent. */
const PER_MILLE = 0.001
const HOURS = 24

/**
 * What evaporates in a day at most over the water that is left: the rise of the salinity.
 *
 * Units: the reader's. Source: as `salinityDrift`; a litre that evaporates is a kilogram.
 *
 * @example workedDrift(situation, drift)[1] // { name: 'Rise in a day', value: '2.000 kg ÷ 198.0 kg = 1.0 %', from: 'reckoned' }
 */
export function workedDrift(situation: Situation, { value }: Finding): ExplainedInput[] {
  const { corners, sump, conditions } = situation
  const waterKg = over(corners, ({ mass }) => mass.waterKg + (sump?.runningKg ?? 0)).low
  const lostKg = Math.max(0, over(heatingOf(situation).cold, ({ loss }) => evaporationLPerDay(loss, conditions.livestock.targetC)).high)
  const leftKg = waterKg - lostKg
  const rise = lostKg / leftKg
  if (value === undefined || lostKg === 0 || !(leftKg > lostKg)) return []
  const told = (kg: number) => exact(kg, 'kg', Math.max(1, digitsFor(kg / KG_PER_POUND, rise, PER_MILLE)))
  return [
    line('Left after a day + what evaporated', phrase`${told(leftKg)} + ${told(lostKg)} = ${exact(waterKg, 'kg', 1)}`),
    line('Rise in a day', phrase`${told(lostKg)} ÷ ${told(leftKg)} = ${value}`),
  ]
}

/**
 * Oxygen through the surface in a day while the return points away from it, and the feed that this carries.
 *
 * Units: m², m/h and g for everybody: they multiply. Source: as `oxygenCheck`; the speed comes of a power law and is told as it came out.
 *
 * @example workedOxygen(situation, oxygen)[2] // { name: 'Feed that this carries', value: '0.89 g ÷ 0.689 g for each gram = 1.3 g', from: 'reckoned' }
 */
export function workedOxygen(situation: Situation, { value }: Finding): ExplainedInput[] {
  const { corners, conditions, gear } = situation
  const { altitudeM = 0, livestock } = conditions
  const waterC = warmestOf(situation)
  const bubblesW = appliancesOf(gear).some(({ kind }) => kind === 'air_pump') ? BUBBLES_W : 0
  const powerW = returnPowerW(deliveryOf(situation)).low + bubblesW
  const [least] = corners
    .map(({ geometry, mass }) => {
      const surface = { areaM2: geometry.insidePlanMm2 / 1e6, waterC, water: livestock.water, altitudeM }
      const cmPerHour = stirredBy(surface, powerW, mass.waterKg).low
      return { areaM2: surface.areaM2, cmPerHour, grams: surfaceOxygen(surface, cmPerHour) }
    })
    .toSorted((a, b) => a.grams - b.grams)
  const held = oxygenSaturation(waterC, SALINITY[livestock.water], atmospheresAt(altitudeM))
  const lacking = held - LEAST_OXYGEN_MG_L
  if (value === undefined || least === undefined || lacking <= 0 || value.value <= 0) return []
  const need = oxygenOfFeed().high
  const { areaM2, cmPerHour, grams } = least
  const gramDigits = Math.max(2, digitsFor(grams, grams / need, lastDigitOf(value.digits)))
  const to = (factor: number): number => digitsFor(factor, grams, lastDigitOf(gramDigits))
  const speed = cmPerHour / 100
  const passed = plain(grams, gramDigits)
  const product = phrase`${plain(areaM2, to(areaM2))} m² × ${plain(speed, to(speed))} m/h × ${plain(lacking, to(lacking))} g/m³ × ${HOURS} h`
  const eaten = plain(need, digitsFor(need, grams / need, lastDigitOf(value.digits)))
  return [
    line(
      'Needed at least + what may still pass in',
      phrase`${LEAST_OXYGEN_MG_L} mg/L + ${quantity(lacking, 'mg/L', 2)} = ${quantity(held, 'mg/L', 2)}`,
    ),
    line('Oxygen in a day: surface × speed × what may pass in', phrase`${product} = ${passed} g`),
    line('Feed that this carries', phrase`${passed} g ÷ ${eaten} g for each gram = ${value}`),
  ]
}
