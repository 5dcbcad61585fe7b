import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { CAUTIONS } from './cautions.ts'
import type { Finding, Source } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { exactly, over, type Span } from './span.ts'
import { typicalStandMassKg } from './typical-ranges.ts'
import { assumedOf } from './words.ts'

/** From here on anybody should ask, whatever the floor. Common practice: 450 kg. */
export const ASK_FROM_KG = 450
/**
 * Half of the 2.0 kN that EN 1991-1-1 table 6.2 recommends as the concentrated load of a dwelling's floor (from memory), over 9.80665 m/s²: at or under half
 * of an allowance is "within" it, the rule that the joist check uses. Own.
 */
export const WITHIN_TO_KG = 102

const SOURCE: Source = {
  tag: 'common_practice',
  text: 'Screening by total mass: ask from 450 kg, and wherever the floor’s bearing is not known. 102 kg is half of EN 1991-1-1’s concentrated load of 2.0 kN (from memory), own rule.',
}

/**
 * Screening of the floor by total mass: tank filled to the rim, and stand. Its words are its own and it never says that a floor fits.
 *
 * Ground-bearing slab: "within the usual allowance", told as *marginal* since it is no approval. Any other or unknown floor: the same up to 102 kg, above
 * that "ask before you place it", told as *not known* since nobody has stated how the floor bears.
 */
export function floorLoad(situation: Situation): Finding {
  const { conditions, tankUnstated, fillDefaults, gear } = situation
  const total = floorMassKg(situation)
  const value = quantity(total.high, 'kg', 0)
  const onGround = conditions.floor === 'ground_slab'
  const within = onGround || value.value <= WITHIN_TO_KG
  const stand = gear.stand && gear.stand.spec.massKg === undefined ? ['mass of the stand'] : []
  const limitKg = value.value > ASK_FROM_KG ? ASK_FROM_KG : WITHIN_TO_KG
  return makeFinding('floor_load', {
    verdict: within ? 'marginal' : 'not_known',
    wording: within ? 'within the usual allowance' : 'ask before you place it',
    value,
    ...(onGround ? {} : { limit: { kind: 'at_most', high: quantity(limitKg, 'kg', 0) } as const }),
    reason:
      value.value > ASK_FROM_KG && !onGround
        ? phrase`${reasonOf(situation, within)} From ${quantity(ASK_FROM_KG, 'kg', 0)} on, ask whatever the floor.`
        : reasonOf(situation, within),
    action: within ? null : { text: actionOf(conditions.floor) },
    assumed: namesOf(assumedOf(conditions, ['floor']), stand, tankUnstated, fillDefaults),
    missing: within ? [] : [conditions.floor === 'timber_upper' ? 'span, spacing and direction of the joists' : 'how the floor bears'],
    source: SOURCE,
    caution: CAUTIONS.floor,
  })
}

/** Tank filled to the rim and what it stands on, kg, at the ends of what is stated. */
export function floorMassKg({ gear, corners, tank }: Situation): Span {
  const brim = over(corners, ({ mass }) => mass.brimKg)
  const stated = gear.stand?.spec.massKg
  const stand = !gear.stand ? exactly(0) : stated === undefined ? typicalStandMassKg(tank.lengthMm) : exactly(stated)
  return { low: brim.low + stand.low, high: brim.high + stand.high }
}

function reasonOf({ conditions, gear, corners }: Situation, within: boolean): Phrase {
  const brim = quantity(over(corners, ({ mass }) => mass.brimKg).high, 'kg', 0)
  const weighs = gear.stand
    ? phrase`Filled to the rim the tank weighs ${brim}, and its stand comes on top.`
    : phrase`Filled to the rim the tank weighs ${brim}.`
  if (conditions.floor === 'ground_slab') return phrase`${weighs} A concrete slab on the ground is normally not governed by this check.`
  if (within) return phrase`${weighs} That is at most what a heavy person and a chair put on a floor.`
  const floors = {
    timber_upper: phrase`On a wooden floor what counts is the joists under it: their span, their spacing, and whether the tank lies across them near a bearing wall.`,
    concrete_upper: phrase`What an upper concrete floor may carry is stated by whoever built it.`,
    unknown: phrase`Nobody has stated what the floor is.`,
  }
  return phrase`${weighs} ${floors[conditions.floor]}`
}

const actionOf = (floor: Situation['conditions']['floor']): Phrase =>
  floor === 'unknown'
    ? phrase`Say what the floor is: on the ground, wood, or an upper concrete floor. If in doubt, ask before you place it.`
    : phrase`Ask the building's owner or a licensed structural engineer before you place it.`
