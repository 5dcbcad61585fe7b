import { phrase, quantity } from '../units/quantity.ts'
import { CAUTIONS } from './cautions.ts'
import type { Finding, Source } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'

/** A frame under the edge must lie under the tank's own frame; wider than this on either side it does not. Common practice. */
const FRAME_SLACK_MM = 20
/** Makers round lengths to the millimetre and inches to the half millimetre: less than this is no overhang. Own. */
const ROUNDING_MM = 2

const SOURCE: Source = { tag: 'common_practice', text: 'No tank overhangs its stand: glass needs bearing along every lower edge.' }

/**
 * Whether the tank stands wholly on the stand's top.
 *
 * Value: the smaller reserve of length and depth in mm, negative where the tank overhangs. Limit: none overhanging. A frame that bears only under the
 * edge must also match the tank to within 20 mm.
 */
export function standFootprint(situation: Situation): Finding | null {
  const { gear, tank } = situation
  if (!gear.stand) return null
  const { topLengthMm, topWidthMm, top } = gear.stand.spec
  const want = {
    slot: 'carry_tank',
    quantity: 1,
    minimum: { lengthMm: Math.ceil(tank.lengthMm - ROUNDING_MM), widthMm: Math.ceil(tank.widthMm - ROUNDING_MM) },
  } as const
  const tankSize = phrase`${quantity(tank.lengthMm, 'mm', 0)} by ${quantity(tank.widthMm, 'mm', 0)}`
  if (topLengthMm === undefined || topWidthMm === undefined) {
    return makeFinding('stand_footprint', {
      verdict: 'not_known',
      reason: phrase`The top of ${gear.stand.name} is not stated; the tank covers ${tankSize}.`,
      action: { text: phrase`Measure the stand's top and enter it.` },
      missing: ['length and depth of the stand’s top'],
      source: SOURCE,
      caution: CAUTIONS.load,
    })
  }
  const reserves = [topLengthMm - tank.lengthMm, topWidthMm - tank.widthMm]
  const value = quantity(Math.min(...reserves), 'mm', 0)
  const overhangs = value.value < -ROUNDING_MM
  const beside = top === 'perimeter' && Math.max(...reserves) > FRAME_SLACK_MM
  const standSize = phrase`${quantity(topLengthMm, 'mm', 0)} by ${quantity(topWidthMm, 'mm', 0)}`
  return makeFinding('stand_footprint', {
    verdict: overhangs || beside ? 'does_not_fit' : 'fits',
    value,
    limit:
      beside && !overhangs ? { kind: 'at_most', high: quantity(FRAME_SLACK_MM, 'mm', 0) } : { kind: 'at_least', low: quantity(0, 'mm', 0) },
    reason: overhangs
      ? phrase`The tank covers ${tankSize} and the stand's top only ${standSize}: the glass would overhang.`
      : beside
        ? phrase`The stand is an open frame of ${standSize} and the tank covers ${tankSize}: its edges would not lie on the frame.`
        : phrase`The tank covers ${tankSize} and the stand's top is ${standSize}: every edge is carried.`,
    action:
      overhangs || beside
        ? { text: phrase`Choose a stand whose top is at least ${tankSize}${beside ? ', with a full board' : ''}.`, want }
        : null,
    source: SOURCE,
    caution: CAUTIONS.load,
  })
}
