import type { ConditionerSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import type { Finding } from './finding.ts'
import { waterSpan } from './filter-flow.ts'
import { makeFinding, namesOf, type FindingParts } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { disinfectantIn } from './tap-water.ts'
import { assumedOf } from './words.ts'

const ACTION = {
  text: phrase`Choose a conditioner that binds ammonia as well.`,
  want: { slot: 'treat_water', quantity: 1, minimum: {} },
} as const

type Bottle = { spec: ConditionerSpec; quantity: number }
type Make = (verdict: Finding['verdict'], reason: Finding['reason'], more?: Partial<FindingParts>) => Finding

/**
 * Whether the conditioner treats the first fill: enough of it, and ammonia bound where the tap water holds chloramine.
 *
 * Value: millilitres at hand. Limit: the dose for the most water that the stated figures allow. Not asked for water without a disinfectant, as a reverse-osmosis unit makes it.
 *
 * @example conditionerCheck(situation)?.margin // 469 mL: a bottle of 500 mL, of which 31 mL treat this tank once
 */
export function conditionerCheck(situation: Situation): Finding | null {
  const { gear, conditions, fillDefaults, waterUnstated } = situation
  if (disinfectantIn(situation) === 'none') return null
  const assumed = namesOf(assumedOf(conditions, ['disinfectant']), fillDefaults, waterUnstated)
  const make: Make = (verdict, reason, more = {}) =>
    makeFinding('conditioner_dose', { verdict, reason, assumed, caution: 'chemicals', ...more })
  if (gear.conditioners.length === 0) {
    if (gear.notNeeded['treat_water'] !== undefined) return null
    return make('does_not_fit', phrase`Chlorine or chloramine in tap water kills; no conditioner is chosen.`, {
      action: { ...ACTION, text: phrase`Choose a conditioner.` },
    })
  }
  const dosed = doseOf(situation, gear.conditioners)
  if (dosed === null) {
    return make('not_known', phrase`The conditioner states no dose or no content.`, {
      action: { text: phrase`Enter the dose for a litre and the content, both on the label.` },
      missing: ['dose and content of the conditioner'],
    })
  }
  const told = (ml: number) => quantity(ml, 'mL', ml < 10 ? 1 : 0)
  const [have, need] = [told(dosed.haveMl), told(dosed.needMl)]
  const figures = { value: have, limit: { kind: 'at_least', low: need } as const }
  const dose = phrase`The first fill takes ${need} of it; there are ${have}.`
  // The figures are those of the dose: where it is the binding that decides, they would tell of a reserve that helps nobody.
  if (have.value >= need.value)
    return bindingOf(situation, dose, (verdict, reason, more) => make(verdict, reason, { ...(verdict === 'fits' ? figures : {}), ...more }))
  const packs = Math.ceil(need.value / dosed.packMl)
  return make('does_not_fit', dose, {
    ...figures,
    action: { text: phrase`Take ${packs} packs in all.`, want: { slot: 'treat_water', quantity: packs, minimum: {} } },
  })
}

/** With enough of it at hand: whether it binds what chloramine sets free. */
function bindingOf({ gear, conditions }: Situation, dose: Phrase, make: Make): Finding {
  const binds = gear.conditioners.every(({ spec }) => spec.bindsAmmonia === true)
  if (binds || conditions.disinfectant === 'chlorine') return make('fits', dose)
  if (conditions.disinfectant === 'unknown')
    return make(
      'not_known',
      phrase`${dose} Whether the tap water holds chlorine or chloramine is not known; chloramine needs a conditioner that binds ammonia.`,
      {
        action: { ...ACTION, text: phrase`Ask the water supplier, or choose a conditioner that binds ammonia.` },
        missing: ['disinfectant in the tap water'],
      },
    )
  const stated = gear.conditioners.every(({ spec }) => spec.bindsAmmonia !== undefined)
  if (stated)
    return make('does_not_fit', phrase`${dose} Breaking chloramine sets ammonia free, and this conditioner does not bind it.`, {
      action: ACTION,
    })
  return make('not_known', phrase`${dose} Breaking chloramine sets ammonia free; whether this conditioner binds it is not stated.`, {
    action: ACTION,
    missing: ['whether the conditioner binds ammonia'],
  })
}

/** Content at hand and of a mean pack, and the dose for all the water, mL; null where a label figure is missing. */
function doseOf(situation: Situation, bottles: readonly Bottle[]): { haveMl: number; packMl: number; needMl: number } | null {
  let [treatsL, haveMl, packs] = [0, 0, 0]
  for (const { spec, quantity: count } of bottles) {
    if (!spec.packVolumeMl || !spec.doseMlPerL) return null
    haveMl += spec.packVolumeMl * count
    treatsL += (spec.packVolumeMl * count) / spec.doseMlPerL
    packs += count
  }
  return { haveMl, packMl: haveMl / packs, needMl: (waterSpan(situation).high * haveMl) / treatsL }
}
