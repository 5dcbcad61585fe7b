import type { Finding } from '../sizing/finding.ts'
import type { Situation } from '../sizing/situation.ts'
import { standingsOf, worstStanding } from '../sizing/tipping.ts'
import { fine, phrase, stated } from '../units/quantity.ts'
import type { ExplainedInput } from './explanation.ts'
import { digitsFor } from './worked-digits.ts'
import { exact, lastDigitOf, line, plain } from './worked-line.ts'

/** A weight is told to its tenth: a newton is a tenth of a kilogram's. */
const DIGITS = 1

const side = (mm: number) => fine(stated(mm, 'mm', 1))

/**
 * The weight in use × what the lever is of the height of the push, and the force that this weighs.
 *
 * Units: the reader's; lever over height has none. Source: as `tipForceN`.
 *
 * @example workedTipping(situation, tipping)[0] // { name: 'Pull at the rim, as a weight', value: '364.5 kg × 0.1767 = 64.4 kg; rounded, 64 kg of pull (632 N)', from: 'reckoned' }
 */
export function workedTipping(situation: Situation, { value }: Finding): ExplainedInput[] {
  const { stand } = situation.gear
  if (!stand || value === undefined) return []
  const { runningKg, leverMm, pushMm, rimMm } = worstStanding(standingsOf(situation, stand.spec))
  const share = leverMm / pushMm
  const pull = runningKg * share
  const to = (factor: number): number => digitsFor(factor, pull, lastDigitOf(DIGITS))
  const name = pushMm < rimMm ? 'Pull as high as anybody reaches, as a weight' : 'Pull at the rim, as a weight'
  const weight = phrase`${exact(runningKg, 'kg', to(runningKg))} × ${plain(share, to(share))} = ${exact(pull, 'kg', DIGITS)}`
  return [
    line('Nearest edge of the base ÷ height of the push', phrase`${side(leverMm)} ÷ ${side(pushMm)}`),
    line(name, phrase`${weight}; rounded, ${value}`),
  ]
}
