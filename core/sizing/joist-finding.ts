import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { onJoists, type Joists, type JoistVerdict, type OnJoists } from './joist-floor.ts'
import { makeFinding, namesOf } from './make-finding.ts'

/** Up to half of a joist's allowance the rest of the room has the other half. Own, no standard. */
export const WITHIN_SHARE = 0.5
/** Beyond all of it nothing is left for people. Own, no standard. */
export const ENGINEER_SHARE = 1

const share = (ratio: number) => quantity(ratio * 100, 'percent', 0)

/**
 * The floor's own words for measured joists: "within the usual allowance" up to half of what one joist was designed for, "ask before you place it" up to
 * all of it, or with any mass above `askAboveKg`, and beyond it "do not place it before an engineer has looked".
 *
 * Value: the worst joist's load in per cent of its allowance. Limit: 50 %. It is never called fitting.
 */
export function joistFinding(
  on: OnJoists,
  joists: Joists,
  context: { weighs: Phrase; assumed: readonly string[]; askAboveKg: number },
): Finding {
  const worst = onJoists(on, joists)
  const value = share(worst.ratio)
  const beyond = value.value > ENGINEER_SHARE * 100
  const within = value.value <= WITHIN_SHARE * 100 && on.massKg <= context.askAboveKg
  const unstated = [
    ...(joists.joistLie === undefined ? ['how the tank lies on the joists'] : []),
    ...(joists.floorUse === undefined ? ['use of the room'] : []),
    ...(on.base === undefined ? ['how the stand meets the floor'] : []),
  ]
  return makeFinding('floor_load', {
    verdict: beyond ? 'does_not_fit' : 'marginal',
    wording: beyond ? 'do not place it before an engineer has looked' : within ? 'within the usual allowance' : 'ask before you place it',
    value,
    limit: { kind: 'at_most', high: share(WITHIN_SHARE) },
    reason: phrase`${context.weighs} ${reasonOf(joists, worst)}`,
    action: within ? null : { text: actionOf(on, joists, beyond) },
    assumed: namesOf(context.assumed, unstated),
    source: 'joists',
    caution: 'floor',
  })
}

function reasonOf(joists: Joists, { ratio, governs, sag }: JoistVerdict): Phrase {
  const [span, spacing] = [quantity(joists.joistSpanMm, 'mm', 0), quantity(joists.joistSpacingMm, 'mm', 0)]
  const how = governs === 'bending' ? 'in bending' : 'in shear at its end'
  const room = joists.floorUse === 'other' ? 'a living room' : 'a bedroom'
  const low = sag > 1 ? ' It would sag further than the floor was designed to, and wood goes on sagging.' : ''
  return phrase`Of all that ${room}'s floor allows on one joist ${span} long, ${spacing} from the next, it would take ${share(ratio)} ${how}.${low}`
}

/** Against the wall that carries the joists it is nearly always least: told where that is within the allowance and it does not lie so yet. */
function actionOf(on: OnJoists, joists: Joists, beyond: boolean): Phrase {
  const ask = beyond
    ? phrase`Have a licensed structural engineer look at the floor before the tank is placed.`
    : phrase`Ask the building's owner or a licensed structural engineer before you place it.`
  const atWall = onJoists(on, { ...joists, joistLie: 'bearing_wall' }).ratio
  if (joists.joistLie === 'bearing_wall' || atWall > WITHIN_SHARE) return ask
  return phrase`${ask} With its back against the wall that carries the joists it would take ${share(atWall)}.`
}
