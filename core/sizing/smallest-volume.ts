import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { groupSource } from './livestock-marks.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over, type Span } from './span.ts'
import { plansOf } from './tank-forms.ts'
import { judgeAtLeast } from './verdict.ts'

/** A tenth under the group's smallest volume is *marginal*: labels and outside boxes differ by as much. Own. */
const VOLUME_BAND = 0.1

/** What the lesser of the two is; a label beyond all that the outside may hold is a mistake. */
function whatCounts(labelL: number, outsideL: Span): Phrase {
  if (labelL <= outsideL.low) return phrase`label`
  return labelL > outsideL.high && labelL < Infinity
    ? phrase`outside, which cannot hold the ${quantity(labelL, 'L', 1)} of its label`
    : phrase`outside`
}

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
  const outside = over(corners, ({ geometry }) => geometry.outsideVolumeL)
  const atMost = (litres: number) => quantity(Math.min(labelVolumeL, litres), 'L', 1).value
  const [low, high] = [atMost(outside.low), atMost(outside.high)]
  const value = quantity(low, 'L', 1)
  const limit = quantity(smallestVolumeL, 'L', 0)
  const band = smallestVolumeL * VOLUME_BAND
  const judge = (litres: number) => judgeAtLeast(litres, limit.value - band, band)
  const outcome = settled(judge(low), judge(high), plansOf(tank).unstated, [])
  return makeFinding('smallest_volume', {
    ...outcome,
    value,
    limit: { kind: 'at_least', low: limit },
    reason: phrase`The tank is ${value} by its ${whatCounts(labelVolumeL, outside)}; for this group (${name}) the trade's smallest is labelled ${limit}.`,
    action: outcome.verdict === 'fits' ? null : { text: phrase`Choose a tank of at least ${limit}, or animals for a smaller one.` },
    source: { tag: 'common_practice', text: groupSource(conditions.livestock) },
  })
}
