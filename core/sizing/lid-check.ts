import { shapeWords } from '../catalog/tank-shape.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { groupSource } from './livestock-marks.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'

/** A lid may be this much shorter than the tank: it lies inside the rim or on clips. Common practice. */
const LID_SLACK_MM = 40

/**
 * Whether a lid is there where the animals need one, and whether it closes the top. No value: the sizes of lid and tank are told, and what is off.
 *
 * @example lidCheck(situation)?.verdict // 'fits': the lid closes the top of the tank
 */
export function lidCheck({ gear, conditions, tank }: Situation): Finding | null {
  const { lidNeeded, name } = conditions.livestock
  const base = { source: { tag: 'common_practice', text: groupSource(conditions.livestock) } as const }
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
  const off = [Math.round(lengthMm - tank.lengthMm), Math.round(widthMm - tank.widthMm)] as const
  const closes = off.every((mm) => Math.abs(mm) <= LID_SLACK_MM)
  const lid = phrase`${quantity(lengthMm, 'mm', 0)} by ${quantity(widthMm, 'mm', 0)}`
  const ofShape = closes ? offShape(gear.lid, tank) : null
  if (ofShape) return makeFinding('lid', { ...base, ...ofShape })
  return makeFinding('lid', {
    ...base,
    verdict: closes ? 'fits' : 'does_not_fit',
    reason: closes
      ? phrase`The lid, ${lid}, closes the top of the tank, ${size}.`
      : phrase`The lid is ${lid} and the tank ${size}: ${offWords(...off)}.`,
    action: closes ? null : { text: phrase`Choose a lid for ${size}.`, want },
  })
}

/** What a lid of the right size may still get wrong by its shape; null where nothing. A tank that is no rectangle wants to know. */
function offShape(
  lid: NonNullable<Situation['gear']['lid']>,
  tank: Situation['tank'],
): Pick<Finding, 'verdict' | 'reason' | 'action' | 'missing'> | null {
  const [cut, top] = [lid.spec.shape, tank.shape ?? 'rectangular']
  if (cut === top || (cut === undefined && top === 'rectangular')) return null
  if (cut === undefined)
    return {
      verdict: 'not_known',
      reason: phrase`The tank's top is no rectangle (${shapeWords(top)}); what shape ${lid.name} has is not stated.`,
      action: { text: phrase`Enter the lid's shape.` },
      missing: ['shape of the lid'],
    }
  return {
    verdict: 'does_not_fit',
    reason: phrase`The lid is made for another top (${shapeWords(cut) || 'rectangular'}) than the tank's (${shapeWords(top) || 'rectangular'}).`,
    action: { text: phrase`Choose a lid of the tank's own shape.` },
    missing: [],
  }
}

/** What is off, from mm: "12 cm too long". Of length and depth the one that is off by more. */
function offWords(longMm: number, deepMm: number): Phrase {
  const deep = Math.abs(deepMm) > Math.abs(longMm)
  const mm = deep ? deepMm : longMm
  const [over, under] = deep ? ['too deep', 'not deep enough'] : ['too long', 'too short']
  return mm > 0 ? phrase`${quantity(mm, 'mm', 0)} ${over}` : phrase`${quantity(-mm, 'mm', 0)} ${under}`
}
