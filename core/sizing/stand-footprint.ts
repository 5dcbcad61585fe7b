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
 * Value: the stand's length or depth, whichever is worse, in mm. Limit: at least the tank's; for a frame, which bears only under the edge, also at most
 * 20 mm more. A tank that overhangs by less than the rounding of makers does not.
 *
 * @example standFootprint(situation)?.value // 1220 mm of stand, where a frame is 1219 to 1239 mm for this tank
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
  const sides = [sideOf(topLengthMm, tank.lengthMm), sideOf(topWidthMm, tank.widthMm)] as const
  const worst = sides.reduce((a, b) => (marginTo(b.reserveMm, most) < marginTo(a.reserveMm, most) ? b : a))
  const overhangs = sides.some(({ reserveMm }) => reserveMm < 0)
  const beside = sides.some(({ reserveMm }) => reserveMm > most)
  const standSize = phrase`${quantity(topLengthMm, 'mm', 0)} by ${quantity(topWidthMm, 'mm', 0)}`
  return makeFinding('stand_footprint', {
    verdict: overhangs || beside ? 'does_not_fit' : 'fits',
    value: worst.stand,
    limit:
      top === 'perimeter'
        ? { kind: 'between', low: worst.least, high: quantity(worst.least.value + FRAME_SLACK_MM, 'mm', 0) }
        : { kind: 'at_least', low: worst.least },
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

/** One side of the stand, what the tank asks of it, and what it has to spare, all in whole millimetres. */
function sideOf(standMm: number, tankMm: number) {
  const [stand, tank] = [quantity(standMm, 'mm', 0), quantity(tankMm, 'mm', 0)]
  const rounding = standMm < tankMm && Math.round(tankMm - standMm) <= ROUNDING_MM
  const least: Quantity = rounding ? stand : tank
  return { stand, least, reserveMm: stand.value - least.value }
}

const marginTo = (reserveMm: number, mostMm: number): number => Math.min(reserveMm, mostMm - reserveMm)
