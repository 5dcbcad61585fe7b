import { phrase, quantity } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'

/** A lid may be this much shorter than the tank: it lies inside the rim or on clips. Common practice. */
const LID_SLACK_MM = 40

/**
 * Whether a lid is there where the animals need one, and whether it closes the top.
 *
 * Value: by how much the lid differs from the tank along length or depth, whichever is more, in mm; negative where it stands over. Limit: 40 either way.
 */
export function lidCheck({ gear, conditions, tank }: Situation): Finding | null {
  const { lidNeeded, name, source } = conditions.livestock
  const base = { source: { tag: 'common_practice', text: source } as const }
  const size = phrase`${quantity(tank.lengthMm, 'mm', 0)} by ${quantity(tank.widthMm, 'mm', 0)}`
  const want = {
    slot: 'cover',
    quantity: 1,
    minimum: { lengthMm: Math.ceil(tank.lengthMm - LID_SLACK_MM), widthMm: Math.ceil(tank.widthMm - LID_SLACK_MM) },
  } as const
  if (!gear.lid) {
    if (!lidNeeded) return null
    return makeFinding('lid', {
      ...base,
      verdict: 'does_not_fit',
      reason: phrase`Animals of this group (${name}) leave an open tank; no lid is chosen.`,
      action: { text: phrase`Add a lid for ${size}.`, want },
    })
  }
  const { lengthMm, widthMm } = gear.lid.spec
  if (lengthMm === undefined || widthMm === undefined) {
    return makeFinding('lid', {
      ...base,
      verdict: 'not_known',
      reason: phrase`The size of ${gear.lid.name} is not stated; the tank is ${size}.`,
      action: { text: phrase`Enter the lid's length and depth.` },
      missing: ['size of the lid'],
    })
  }
  const gaps = [quantity(tank.lengthMm - lengthMm, 'mm', 0), quantity(tank.widthMm - widthMm, 'mm', 0)] as const
  const value = Math.abs(gaps[1].value) > Math.abs(gaps[0].value) ? gaps[1] : gaps[0]
  const closes = Math.abs(value.value) <= LID_SLACK_MM
  return makeFinding('lid', {
    ...base,
    verdict: closes ? 'fits' : 'does_not_fit',
    value,
    limit: { kind: 'between', low: quantity(-LID_SLACK_MM, 'mm', 0), high: quantity(LID_SLACK_MM, 'mm', 0) },
    reason: closes
      ? phrase`The lid closes the top of ${size}.`
      : phrase`The lid is ${quantity(lengthMm, 'mm', 0)} by ${quantity(widthMm, 'mm', 0)} and the tank ${size}.`,
    action: closes ? null : { text: phrase`Choose a lid for ${size}.`, want },
  })
}
