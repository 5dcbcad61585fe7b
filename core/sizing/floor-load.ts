import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { joistsOf, type OnJoists } from './joist-floor.ts'
import { joistFinding } from './joist-finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { over } from './span.ts'
import { footprintM2 } from './tank-forms.ts'
import { typicalStandMassKg } from './typical-ranges.ts'
import { assumedOf } from './words.ts'

/** Above this anybody should ask, whatever the floor, a slab on the ground included. Common practice: 450 kg. */
export const ASK_ABOVE_KG = 450
/**
 * Up to here a tank takes at most half of what a plain wooden floor allows for everything in a room, which counts as "within" it. Own rule, from statics:
 *
 * A patch of a × b along and across joists of span l and spacing s puts `P = (1 − b/(4s))·m·g` on the joist under its middle, and at mid-span bends it by
 * `M = (P·l/4)·(1 − a/(2l))`. The allowance is `M_q = q·s·l²/8`; a full tank never leaves, so 0.90 of it counts (NDS table 2.3.2). For 65 kg on
 * 0.6 × 0.3 m, the least footprint that tanks of this mass commonly have, l 12 ft, s 16 in, and q 30 psf of a bedroom (IRC table R301.5):
 * `M / (0.90·M_q)` is 0.50; under a living room's 40 psf it is 0.37. At a support the shear comes to 0.50 of the bedroom's allowance as well.
 */
export const WITHIN_TO_KG = 65

/**
 * Screening of the floor by total mass: tank filled to the rim, and stand. Its words are its own and it never says that a floor fits.
 *
 * Ground-bearing slab: "within the usual allowance" up to 450 kg, told as *marginal* since it is no approval. Any other or unknown floor: the same up to
 * 65 kg. Above that "ask before you place it", told as *not known* since nobody has stated how the floor bears. A timber floor whose joists somebody
 * measured is held against what they bear (`joistFinding`).
 *
 * @example floorLoad(situation).wording // 'ask before you place it': 385 kg on a timber floor
 */
export function floorLoad(situation: Situation): Finding {
  const { conditions, tankUnstated, loadDefaults } = situation
  const totalKg = floorMassKg(situation)
  const joists = conditions.floor === 'timber_upper' ? joistsOf(conditions) : null
  if (joists !== null) {
    const assumed = namesOf(standUnstated(situation), tankUnstated, loadDefaults)
    return joistFinding(standOn(situation, totalKg), joists, { weighs: weighsOf(situation), assumed, askAboveKg: ASK_ABOVE_KG })
  }
  const value = quantity(totalKg, 'kg', 0)
  const heavy = value.value > ASK_ABOVE_KG
  const allowedKg = heavy || conditions.floor === 'ground_slab' ? ASK_ABOVE_KG : WITHIN_TO_KG
  const within = value.value <= allowedKg
  return makeFinding('floor_load', {
    verdict: within ? 'marginal' : 'not_known',
    wording: within ? 'within the usual allowance' : 'ask before you place it',
    value,
    // What one joist bears under a nano tank is no limit to hold a whole tank against: without joists there is none to tell.
    ...(within || heavy ? { limit: { kind: 'at_most' as const, high: quantity(allowedKg, 'kg', 0) } } : {}),
    reason: heavy
      ? phrase`${reasonOf(situation, within)} Above ${quantity(ASK_ABOVE_KG, 'kg', 0)}, ask whatever the floor.`
      : reasonOf(situation, within),
    action: within ? null : { text: actionOf(conditions.floor) },
    assumed: namesOf(assumedOf(conditions, ['floor']), standUnstated(situation), tankUnstated, loadDefaults),
    missing: within ? [] : [MISSING[conditions.floor]],
    caution: 'floor',
  })
}

const standUnstated = ({ gear, sump }: Situation): string[] => [
  ...(gear.stand && gear.stand.spec.massKg === undefined ? ['mass of the stand'] : []),
  ...(sump?.unstated ?? []),
]

/**
 * The stand's top is about its base; without one the tank's own bottom stands on something of its size. A plan that is no rectangle stands as one of its area
 * and its proportions, which weighs on fewer joists than the box around it.
 */
export function standOn({ gear, tank }: Situation, massKg: number): OnJoists {
  const { topLengthMm = tank.lengthMm, topWidthMm = tank.widthMm, base, shape } = gear.stand?.spec ?? {}
  const plan = gear.stand?.spec.topLengthMm === undefined ? tank.shape : shape
  const share = (plan ?? 'rectangular') === 'rectangular' ? 1 : Math.sqrt((footprintM2(tank).low * 1e6) / (tank.lengthMm * tank.widthMm))
  return { massKg, lengthMm: topLengthMm * share, widthMm: topWidthMm * share, base }
}

/** What would settle it. */
const MISSING: Record<Situation['conditions']['floor'], string> = {
  ground_slab: 'thickness of the slab and what lies under it',
  timber_upper: 'span and spacing of the joists',
  concrete_upper: 'how the floor bears',
  unknown: 'how the floor bears',
}

/** Tank and sump filled to the rim and what they stand on, kg: the heaviest that the stated figures allow. */
export function floorMassKg({ gear, corners, tank, sump }: Situation): number {
  const brimKg = over(corners, ({ mass }) => mass.brimKg).high + (sump?.fullKg ?? 0)
  return gear.stand ? brimKg + (gear.stand.spec.massKg ?? typicalStandMassKg(tank.lengthMm).high) : brimKg
}

/** With its stand, where it has one: that is what is held against the floor. */
function weighsOf(situation: Situation): Phrase {
  const { gear, corners, sump } = situation
  const brim = quantity(over(corners, ({ mass }) => mass.brimKg).high + (sump?.fullKg ?? 0), 'kg', 0)
  const stand = gear.stand ? phrase`, with its stand ${quantity(floorMassKg(situation), 'kg', 0)}` : phrase``
  return phrase`Filled to the rim the tank${sump ? ' with its sump' : ''} weighs ${brim}${stand}.`
}

function reasonOf(situation: Situation, within: boolean): Phrase {
  const { conditions } = situation
  const weighs = weighsOf(situation)
  if (conditions.floor === 'ground_slab') return phrase`${weighs} A concrete slab on the ground is normally not governed by this check.`
  if (within) return phrase`${weighs} That is no more than one grown person puts on a floor.`
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
