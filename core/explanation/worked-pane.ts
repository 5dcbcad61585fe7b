import { SALINITY } from '../water/sea-salinity.ts'
import { seaWaterDensity } from '../water/density.ts'
import type { Finding } from '../sizing/finding.ts'
import { edgesOf, longestFlatMm, TRADE_STRENGTH_PA } from '../sizing/glass-pane.ts'
import { FREE_FALL, glassPlate } from '../sizing/glass-plate.ts'
import type { Situation } from '../sizing/situation.ts'
import { phrase } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { lastDigitOf, line, plain } from './worked-line.ts'

/** Of how many times the strength is there. */
const TENTH = 0.1
/** The squares of two sides stand in it: a digit more than of a product of single ones. */
const STRESS_DIGITS = 2
const PA_PER_KPA = 1e3
/** A pane that bears a hundred times its load was measured wrong, and no digits make a sum of it. Own. */
const MOST_TIMES = 100

/**
 * Pressure at the bottom, stress in the pane and how often the trade's strength covers it. The factor of the form was integrated once and is read between the
 * rows of a table.
 *
 * Units: mm and N/mm² in every reader's units, as glass is bought. Source: as `glassPlate`.
 *
 * @example workedPane(situation, glassPane)[2] // { name: 'Strength of the trade ÷ stress', value: '19.2 N/mm² ÷ 6.18 N/mm² = 3.1', from: 'reckoned' }
 */
export function workedPane({ corners, conditions, tank }: Situation, { value }: Finding): ExplainedInput[] {
  const { livestock } = conditions
  const { glassMm } = tank
  if (value === undefined || glassMm === undefined || value.value > MOST_TIMES) return []
  const depthMm = Math.max(...corners.map(({ geometry }) => geometry.insideHeightMm))
  const waterDensity = seaWaterDensity(SALINITY[livestock.water], livestock.targetC)
  const lengthMm = longestFlatMm(corners)
  const pane = {
    lengthM: lengthMm / 1000,
    depthM: depthMm / 1000,
    thicknessM: glassMm / 1000,
    topEdge: edgesOf(tank.style)[0],
    waterDensity,
  }
  const { stressPa, bottomPressurePa } = glassPlate(pane)
  const [kiloPa, stress, over] = [bottomPressurePa / PA_PER_KPA, stressPa / 1e6, depthMm / glassMm]
  const form = stressPa / (bottomPressurePa * over ** 2)
  const stressDigits = Math.max(STRESS_DIGITS, digitsFor(stress, value.value, TENTH))
  const to = (factor: number): number => digitsFor(factor, stress, lastDigitOf(stressDigits)) + 1
  const pressed = plain(kiloPa, to(kiloPa))
  const forPressure = (factor: number): number => digitsFor(factor, kiloPa, lastDigitOf(to(kiloPa)))
  const side = (mm: number, than: number) => plain(mm, digitsFor(mm, than, lastDigitOf(to(than))))
  const aspect = lengthMm / depthMm
  const weight = phrase`${plain(waterDensity / PA_PER_KPA, forPressure(waterDensity / PA_PER_KPA))} kg a litre × ${FREE_FALL} m/s² × ${plain(depthMm / 1000, forPressure(depthMm / 1000))} m`
  const bending = phrase`${plain(form, to(form))} × ${pressed} kPa × ${plain(over, to(over))} × ${plain(over, to(over))} ÷ 1000`
  const told = plain(stress, stressDigits)
  return [
    line('Pressure of the water at the bottom', phrase`${weight} = ${pressed} kPa`),
    line('Depth ÷ thickness', phrase`${side(depthMm, over)} mm ÷ ${glassMm} mm = ${plain(over, to(over))}`),
    line(
      'Factor of the form, integrated once and read between the rows of a table',
      phrase`${plain(form, to(form))}, for length ÷ depth of ${plain(aspect, 2)}`,
    ),
    line('Stress: factor × pressure × depth ÷ thickness, twice', phrase`${bending} = ${told} N/mm²`),
    line('Strength of the trade ÷ stress', phrase`${plain(TRADE_STRENGTH_PA / 1e6, 1)} N/mm² ÷ ${told} N/mm² = ${value}`),
  ]
}
