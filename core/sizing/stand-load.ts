import { asJudged, phrase, quantity, stated, type Phrase } from '../units/quantity.ts'
import type { Action, Finding } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { judgeAtLeast } from './verdict.ts'

/** Share in reserve for what glass and water miss: rim, lid, light, decor, hands on the edge. Common practice: a tenth. */
export const STAND_RESERVE = 0.1

/**
 * Whether the stand's stated load carries the tank filled to the rim.
 *
 * Value: stated load in kg. Limit: the brim-full mass; *fits* from a tenth above it. Without a stated load the mass it must carry is told instead.
 *
 * @example standLoad(situation).margin // 93 kg: a stand rated for 450 kg under 357 kg, filled to the rim
 */
export function standLoad(situation: Situation): Finding {
  const { gear, corners, tankUnstated, loadDefaults } = situation
  const brim = over(corners, ({ mass }) => Math.round(mass.brimKg))
  const carry = quantity(brim.high, 'kg', 0)
  const limit = { kind: 'at_least', low: carry } as const
  const rated = gear.stand?.spec.ratedLoadKg
  if (rated === undefined) return notStated(situation, carry.value)
  const value = stated(rated, 'kg', 0)
  const outcome = settled(
    judgeAtLeast(asJudged(value), brim.high, brim.high * STAND_RESERVE),
    judgeAtLeast(asJudged(value), brim.low, brim.low * STAND_RESERVE),
    tankUnstated,
    loadDefaults,
  )
  return makeFinding('stand_load', {
    ...outcome,
    value,
    limit,
    reason: phrase`${filledTo(situation)} the tank weighs ${carry}; the stand is stated for ${value}. Decor, lid and light come on top.`,
    action: outcome.verdict === 'fits' ? null : standAction(carry.value),
    caution: 'load',
  })
}

/** What is in the tank that is weighed: a bed counts though nobody has chosen its substrate yet. */
function filledTo({ gear, corners }: Situation): Phrase {
  if (gear.substrates.length > 0) return phrase`Filled to the rim, with its substrate,`
  const depth = quantity(corners[0]?.laden.substrateDepthMm ?? 0, 'mm', 0)
  return depth.value > 0
    ? phrase`Filled to the rim, with a bed of ${depth} though no substrate is chosen yet,`
    : phrase`Filled to the rim, without substrate,`
}

function notStated(situation: Situation, carryKg: number): Finding {
  const { gear, loadDefaults, tankUnstated } = situation
  const carry = quantity(carryKg, 'kg', 0)
  const weighs = phrase`${filledTo(situation)} the tank weighs ${carry}.`
  const reason = gear.stand
    ? phrase`No load is stated for ${gear.stand.name}. ${weighs}`
    : gear.notNeeded['carry_tank'] === undefined
      ? phrase`No stand is chosen. ${weighs}`
      : phrase`It will stand on something whose load nobody has stated. ${weighs}`
  return makeFinding('stand_load', {
    verdict: 'not_known',
    limit: { kind: 'at_least', low: carry },
    reason,
    action: gear.stand
      ? {
          ...standAction(carryKg),
          text: phrase`Enter the load its maker states, or choose a stand stated for at least ${rounded(carryKg)}.`,
        }
      : standAction(carryKg),
    assumed: [...tankUnstated, ...loadDefaults],
    missing: ['stated load of the stand'],
    caution: 'load',
  })
}

const rounded = (carryKg: number) => quantity(Math.ceil(carryKg * (1 + STAND_RESERVE)), 'kg', 0)

function standAction(carryKg: number): Action {
  const load = rounded(carryKg)
  return {
    text: phrase`Choose a stand stated for at least ${load}.`,
    want: { slot: 'carry_tank', quantity: 1, minimum: { ratedLoadKg: load.value } },
  }
}
