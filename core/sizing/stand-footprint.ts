import { phrase, quantity, type Quantity } from '../units/quantity.ts'
import { FINDING_CAUTIONS } from './finding-cautions.ts'
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
 * Value: the reserve of length or depth, whichever is worse, in mm; negative where the tank overhangs, by less than the rounding of makers counted as 0.
 * Limit: none overhanging; for a frame, which bears only under the edge, also at most 20 mm.
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
      caution: FINDING_CAUTIONS.load,
    })
  }
  const most = top === 'perimeter' ? FRAME_SLACK_MM : Infinity
  const reserves = [reserveOf(topLengthMm, tank.lengthMm), reserveOf(topWidthMm, tank.widthMm)] as const
  const value = reserves.reduce((worst, each) => (marginTo(each.value, most) < marginTo(worst.value, most) ? each : worst))
  const overhangs = reserves.some((each) => each.value < 0)
  const beside = reserves.some((each) => each.value > most)
  const none = quantity(0, 'mm', 0)
  const standSize = phrase`${quantity(topLengthMm, 'mm', 0)} by ${quantity(topWidthMm, 'mm', 0)}`
  return makeFinding('stand_footprint', {
    verdict: overhangs || beside ? 'does_not_fit' : 'fits',
    value,
    limit: top === 'perimeter' ? { kind: 'between', low: none, high: quantity(FRAME_SLACK_MM, 'mm', 0) } : { kind: 'at_least', low: none },
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
    caution: FINDING_CAUTIONS.load,
  })
}

/** Whole millimetres of the stand beyond the tank on one axis. */
function reserveOf(standMm: number, tankMm: number): Quantity {
  const reserve = quantity(standMm - tankMm, 'mm', 0)
  return reserve.value < 0 && reserve.value >= -ROUNDING_MM ? quantity(0, 'mm', 0) : reserve
}

const marginTo = (reserveMm: number, mostMm: number): number => Math.min(reserveMm, mostMm - reserveMm)
