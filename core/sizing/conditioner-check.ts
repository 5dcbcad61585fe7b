import type { ConditionerSpec } from '../catalog/spec.ts'
import { phrase, quantity } from '../units/quantity.ts'
import { CAUTIONS } from './cautions.ts'
import type { Finding, Source } from './finding.ts'
import { waterSpan } from './filter-flow.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { assumedOf } from './words.ts'

const SOURCE: Source = {
  tag: 'published',
  text: 'Dose for the water in use, not for the label. Breaking 4 mg/L of chloramine leaves 0.79 mg/L of ammonia-N (stoichiometry; 40 CFR 141.65).',
}
const ACTION = {
  text: phrase`Choose a conditioner that binds ammonia as well.`,
  want: { slot: 'treat_water', quantity: 1, minimum: {} },
} as const

/**
 * Whether the conditioner treats the first fill: enough of it, and ammonia bound where the tap water holds chloramine.
 *
 * Value: millilitres at hand. Limit: the dose for the water in use. Not asked for water without a disinfectant.
 */
export function conditionerCheck(situation: Situation): Finding | null {
  const { gear, conditions } = situation
  const { disinfectant } = conditions
  if (disinfectant === 'none') return null
  const bottles = gear.conditioners
  const defaults = namesOf(assumedOf(conditions, ['disinfectant']), situation.fillDefaults)
  const make = (verdict: Finding['verdict'], reason: Finding['reason'], more: Partial<Finding> = {}) =>
    makeFinding('conditioner_dose', { verdict, reason, assumed: defaults, source: SOURCE, caution: CAUTIONS.chemicals, ...more })
  if (bottles.length === 0) {
    if (gear.notNeeded['treat_water'] !== undefined) return null
    return make('does_not_fit', phrase`Chlorine or chloramine in tap water kills; no conditioner is chosen.`, {
      action: { ...ACTION, text: phrase`Choose a conditioner.` },
    })
  }
  const dosed = doseOf(situation, bottles)
  if (dosed === null) {
    return make('not_known', phrase`The conditioner states no dose or no content.`, {
      action: { text: phrase`Enter the dose for a litre and the content, both on the label.` },
      missing: ['dose and content of the conditioner'],
    })
  }
  const have = quantity(dosed.haveMl, 'mL', 0)
  const need = quantity(dosed.needMl, 'mL', dosed.needMl < 10 ? 1 : 0)
  const figures = { value: have, limit: { kind: 'at_least', low: need } as const }
  const dose = phrase`The first fill takes ${need} of it and there are ${have}.`
  if (have.value < need.value)
    return make('does_not_fit', dose, {
      ...figures,
      action: {
        text: phrase`Take as many packs as the dose needs.`,
        want: { slot: 'treat_water', quantity: Math.ceil(need.value / Math.max(have.value, 1)), minimum: {} },
      },
    })
  const binds = bottles.every(({ spec }) => spec.bindsAmmonia === true)
  const stated = bottles.every(({ spec }) => spec.bindsAmmonia !== undefined)
  if (binds || disinfectant === 'chlorine') return make('fits', dose, figures)
  if (disinfectant === 'chloramine')
    return stated
      ? make('does_not_fit', phrase`${dose} Breaking chloramine sets ammonia free, and this conditioner does not bind it.`, {
          ...figures,
          action: ACTION,
        })
      : make('not_known', phrase`${dose} Breaking chloramine sets ammonia free; whether this conditioner binds it is not stated.`, {
          ...figures,
          action: ACTION,
          missing: ['whether the conditioner binds ammonia'],
        })
  return make(
    'not_known',
    phrase`${dose} Whether the tap water holds chlorine or chloramine is not known; chloramine needs a conditioner that binds ammonia.`,
    {
      ...figures,
      action: { ...ACTION, text: phrase`Ask the water supplier, or choose a conditioner that binds ammonia.` },
      missing: ['disinfectant in the tap water'],
    },
  )
}

/** Dose of the first bottle's kind for all the water, and what is at hand; null where a label figure is missing. */
function doseOf(
  situation: Situation,
  bottles: ReadonlyArray<{ spec: ConditionerSpec; quantity: number }>,
): { haveMl: number; needMl: number } | null {
  let treatsL = 0
  let haveMl = 0
  for (const { spec, quantity: count } of bottles) {
    if (!spec.packVolumeMl || !spec.doseMlPerL) return null
    haveMl += spec.packVolumeMl * count
    treatsL += (spec.packVolumeMl * count) / spec.doseMlPerL
  }
  return { haveMl, needMl: (waterSpan(situation).high * haveMl) / treatsL }
}
