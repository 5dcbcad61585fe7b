import { shapeWords } from '../catalog/tank-shape.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { groupSource } from './livestock-marks.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'

/** A lid may be this much smaller than the tank: it lies inside the rim or on clips. Common practice. */
const LID_SLACK_MM = 40
/** On a frame, or in one, nothing larger than the tank's outside lies flat; by so much labels round: a quarter of an inch. Own. */
const OVER_FRAME_MM = 6

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
  const lid = phrase`${quantity(lengthMm, 'mm', 0)} by ${quantity(widthMm, 'mm', 0)}`
  const closesTo = (over: number) => off.every((mm) => mm >= -LID_SLACK_MM && mm <= over)
  if (tank.style === undefined && closesTo(LID_SLACK_MM) && !closesTo(OVER_FRAME_MM)) return ofNoStyle(base, size, lid)
  const overMm = tank.style === 'rimmed' ? OVER_FRAME_MM : LID_SLACK_MM
  const closes = closesTo(overMm)
  const ofShape = closes ? offShape(gear.lid, tank) : null
  if (ofShape) return makeFinding('lid', { ...base, ...ofShape })
  return makeFinding('lid', {
    ...base,
    verdict: closes ? 'fits' : 'does_not_fit',
    reason: closes
      ? phrase`The lid, ${lid}, closes the top of the tank, ${size}.`
      : phrase`The lid is ${lid} and the tank ${size}: ${offWords(off, overMm)}.`,
    action: closes ? null : { text: phrase`Choose a lid for ${size}.`, want },
  })
}

/** A lid larger than the tank lies on bare panes and not on a frame. */
const ofNoStyle = (base: Pick<Finding, 'source'>, size: Phrase, lid: Phrase): Finding =>
  makeFinding('lid', {
    ...base,
    verdict: 'not_known',
    reason: phrase`The lid, ${lid}, is larger than the tank, ${size}: it lies on bare panes, and on no rim; nobody has stated which the tank has.`,
    action: { text: phrase`Say whether the tank has a rim.` },
    missing: ['style of the tank: rimmed or rimless'],
  })

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

/** What is off, from mm: "12 cm too long". Of length and depth the one that is further beyond what a lid may be larger (`overMm`) or smaller by. */
function offWords([longMm, deepMm]: readonly [number, number], overMm: number): Phrase {
  const beyond = (mm: number) => Math.max(mm - overMm, -mm - LID_SLACK_MM)
  const deep = beyond(deepMm) > beyond(longMm)
  const mm = deep ? deepMm : longMm
  const [over, under] = deep ? ['too deep', 'not deep enough'] : ['too long', 'too short']
  return mm > 0 ? phrase`${quantity(mm, 'mm', 0)} ${over}` : phrase`${quantity(-mm, 'mm', 0)} ${under}`
}
