import { phrase, quantity } from '../units/quantity.ts'
import { FINDING_CAUTIONS } from './finding-cautions.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'

/** Common practice. */
export const LIFT_KG_PER_PERSON = 25
/** Two people are found in any household. Common practice. */
const USUAL_HELPERS = 2

/** People who lift a mass at 25 kg each. @example liftPeople(57.3) // 3 */
export const liftPeople = (massKg: number): number => Math.max(1, Math.ceil(massKg / LIFT_KG_PER_PERSON))

/** How many people carry the empty tank. Value: kg. Limit: what two lift; more is *marginal*, never worse: help can be had. */
export function emptyLift(situation: Situation): Finding {
  const { corners, tank, tankUnstated } = situation
  const empty = over(corners, ({ mass }) => Math.round(mass.emptyKg * 10) / 10)
  const value = quantity(empty.high, 'kg', 1)
  const limit = quantity(USUAL_HELPERS * LIFT_KG_PER_PERSON, 'kg', 0)
  const judge = (kg: number) => (kg <= limit.value ? 'fits' : 'marginal')
  const people = liftPeople(empty.high)
  const outcome = settled(judge(empty.high), judge(empty.low), tank.emptyMassKg === undefined ? tankUnstated : [], [])
  const who = people === 1 ? phrase`one person` : phrase`${people} people`
  return makeFinding('empty_lift', {
    ...outcome,
    value,
    limit: { kind: 'at_most', high: limit },
    reason: phrase`Empty, the tank weighs ${outcome.verdict === 'not_known' ? 'up to ' : ''}${value}: ${who} at ${quantity(LIFT_KG_PER_PERSON, 'kg', 0)} each.`,
    action: outcome.verdict === 'fits' ? null : { text: phrase`Have ${who} and gloves ready, and suction lifters for bare glass.` },
    source: { tag: 'common_practice', text: 'Panels by EN 572-1 density; 25 kg a person is common practice.' },
    caution: FINDING_CAUTIONS.lift,
  })
}
