import { phrase, quantity } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { groupSource } from './livestock-marks.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { plansOf } from './tank-forms.ts'
import { judgeAtLeast } from './verdict.ts'

/** A tenth under the group's smallest volume is *marginal*: labels and outside boxes differ by as much. Own. */
const VOLUME_BAND = 0.1

/**
 * Whether the tank is large enough for the animals.
 *
 * Value: litres on the label, which is how the trade names its smallest tanks, and never more than the outside holds; without a label those of the outside. Limit: the group's
 * smallest volume.
 *
 * @example smallestVolume(situation).margin // 243.3 L: 297.3 L outside, where the group asks for 54 L
 */
export function smallestVolume({ conditions, corners, tank }: Situation): Finding {
  const { smallestVolumeL, name } = conditions.livestock
  const { labelVolumeL = Infinity } = tank
  const { low, high } = over(corners, ({ geometry }) => quantity(Math.min(labelVolumeL, geometry.outsideVolumeL), 'L', 1).value)
  const value = quantity(low, 'L', 1)
  const limit = quantity(smallestVolumeL, 'L', 0)
  const band = smallestVolumeL * VOLUME_BAND
  const judge = (litres: number) => judgeAtLeast(litres, limit.value - band, band)
  const outcome = settled(judge(low), judge(high), plansOf(tank).unstated, [])
  return makeFinding('smallest_volume', {
    ...outcome,
    value,
    limit: { kind: 'at_least', low: limit },
    reason: phrase`The tank is ${value} by its ${labelVolumeL < Infinity ? 'label' : 'outside'}; for this group (${name}) the trade's smallest is labelled ${limit}.`,
    action: outcome.verdict === 'fits' ? null : { text: phrase`Choose a tank of at least ${limit}, or animals for a smaller one.` },
    source: { tag: 'common_practice', text: groupSource(conditions.livestock) },
  })
}
