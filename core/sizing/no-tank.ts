import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Check, Finding } from './finding.ts'
import type { Gear } from './gear.ts'
import { makeFinding } from './make-finding.ts'
import type { SituationRefusal } from './situation.ts'

/** Checks that every build is asked and that cannot be made without a tank. */
const NEED_A_TANK: readonly Check[] = [
  'heater_holds',
  'stand_load',
  'floor_load',
  'smallest_volume',
  'filter_flow',
  'conditioner_dose',
  'empty_lift',
]

/** Those that also take the part they judge. */
const checksOf = (gear: Gear): Check[] => [
  ...(gear.heaters.length > 0 ? (['heater_stuck'] as const) : []),
  ...(gear.stand ? (['stand_footprint'] as const) : []),
  ...NEED_A_TANK,
]

function wordsOf(refusal: SituationRefusal): { reason: Phrase; action?: Phrase; missing: string } {
  const mm = (value: number) => quantity(value, 'mm', 0)
  switch (refusal.code) {
    case 'no_tank':
      return { reason: phrase`No tank is chosen.`, action: phrase`Choose a tank.`, missing: 'length, depth and height of the tank' }
    case 'not_round':
      return {
        reason: phrase`A cylinder or a quarter round is as deep as it is long, and this tank is not.`,
        missing: 'length and depth that are the same',
      }
    case 'bow_too_deep':
      return {
        reason: phrase`The bow of the front is deeper than a tank of this length and depth can have: at most ${mm(refusal.mostMm)}.`,
        missing: 'bow of the front that leaves its ends',
      }
    case 'ends_too_deep':
      return {
        reason: phrase`The ends are as deep as the tank's backs are long: at most ${mm(refusal.mostMm)} leaves a front to cut.`,
        missing: 'depth of the ends that leaves a front',
      }
    case 'no_inside':
      return {
        reason: phrase`The tank's panels are so thick that no ${refusal.side} is left inside.`,
        missing: 'thickness of glass and bottom that leaves room inside',
      }
    case 'no_water':
      return {
        reason: phrase`Filled to ${mm(refusal.waterBelowRimMm)} below the rim, a tank of ${mm(refusal.insideHeightMm)} inside height holds no water.`,
        missing: 'water level below the rim that leaves water in the tank',
      }
    case 'substrate_too_deep':
      return {
        reason: phrase`A bed of ${mm(refusal.substrateDepthMm)} reaches the surface of ${mm(refusal.waterDepthMm)} of water.`,
        missing: 'substrate depth that leaves water above it',
      }
  }
}

/** The findings of a build whose tank is missing or contradicts its fill: not known, and what to enter. */
export function withoutTank(refusal: SituationRefusal, gear: Gear): Finding[] {
  const { reason, action, missing } = wordsOf(refusal)
  return checksOf(gear).map((check) =>
    makeFinding(check, {
      verdict: 'not_known',
      reason,
      action: { text: action ?? phrase`Enter a ${missing}.` },
      missing: [missing],
      source: 'no_tank',
    }),
  )
}
