import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'

/** What each of several people carries. Common practice. */
export const LIFT_KG_PER_PERSON = 25
/** From this mass on nobody lifts a tank alone. Common practice; below the 25 kg each, since glass has no handles. */
export const TWO_FROM_KG = 20
/** From this length on neither: the far end swings and strikes. Common practice. */
export const TWO_FROM_MM = 900
/** Two people are found in any household. Common practice. */
const USUAL_HELPERS = 2

/**
 * People who lift an empty tank: two from 20 kg or from 900 mm of length on, beyond that 25 kg each.
 *
 * Units:  kg and mm in, a whole number of people out. Source: common practice.
 *
 * @example liftPeople(57.3, 1219) // 3
 * @example liftPeople(18, 914) // 2: long rather than heavy
 */
export function liftPeople(massKg: number, lengthMm: number): number {
  const least = massKg >= TWO_FROM_KG || lengthMm >= TWO_FROM_MM ? 2 : 1
  return Math.max(least, Math.ceil(massKg / LIFT_KG_PER_PERSON))
}

/**
 * How many people carry the empty tank. Value: kg. Limit: what two lift; more is *marginal*, never worse: help can be had.
 *
 * @example emptyLift(situation).verdict // 'marginal': 57.3 kg empty is for more than two people
 */
export function emptyLift(situation: Situation): Finding {
  const { corners, tank, tankUnstated } = situation
  const empty = over(corners, ({ mass }) => Math.round(mass.emptyKg * 10) / 10)
  const value = quantity(empty.high, 'kg', 1)
  const limit = quantity(USUAL_HELPERS * LIFT_KG_PER_PERSON, 'kg', 0)
  const judge = (kg: number) => (kg <= limit.value ? 'fits' : 'marginal')
  const people = liftPeople(empty.high, tank.lengthMm)
  const outcome = settled(judge(empty.high), judge(empty.low), tank.emptyMassKg === undefined ? tankUnstated : [], [])
  return makeFinding('empty_lift', {
    ...outcome,
    value,
    limit: { kind: 'at_most', high: limit },
    reason: phrase`Empty, the tank weighs ${outcome.verdict === 'not_known' ? 'up to ' : ''}${value} and is ${quantity(tank.lengthMm, 'mm', 0)} long. ${liftWords(people)}`,
    action:
      outcome.verdict === 'fits' ? null : { text: phrase`Have ${people} people and gloves ready, and suction lifters for bare glass.` },
    caution: 'lift',
  })
}

function liftWords(people: number): Phrase {
  if (people === 1) return phrase`One person can lift it.`
  if (people === 2) return phrase`Two people lift it, one at each end.`
  return phrase`It takes ${people} people, at ${quantity(LIFT_KG_PER_PERSON, 'kg', 0)} each.`
}
