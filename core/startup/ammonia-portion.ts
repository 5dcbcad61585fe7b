import type { Gear } from '../sizing/gear.ts'
import { phrase, type Phrase } from '../units/quantity.ts'
import { ammoniaSolutionMl, ammoniumChlorideG, DOSE_MG_PER_L, STRONGEST_SOLUTION } from './ammonia-dose.ts'
import { doseOf, litres } from './tank-facts.ts'

/** The portion of ammonia for this tank, said for the hand that measures it; `reason` where it could not be worked out. */
export interface AmmoniaPortion {
  value: Phrase
  reason: string | null
  /** True where the liquid must not be used at all. */
  tooStrong: boolean
}

/**
 * One dose to 2 mg/L as nitrogen from the source that was bought.
 *
 * Errors: without a source, a form, a strength or the water it says what to read off the label; above 10 % it refuses the liquid.
 *
 * @example ammoniaPortion(gear, 237.7).value // [1.8 g, ' of Stillwell ammonium chloride']
 */
export function ammoniaPortion(gear: Gear, waterL: number | null): AmmoniaPortion {
  const source = gear.ammoniaSources?.[0]
  if (source === undefined) {
    const pure =
      waterL === null
        ? phrase``
        : phrase`; of pure ammonium chloride it would be ${doseOf(ammoniumChlorideG(waterL, DOSE_MG_PER_L, 1), 'g')}`
    return {
      value: phrase`no ammonia source in this plan${pure}`,
      reason: 'Ammonia dose: no ammonia source is part of this plan.',
      tooStrong: false,
    }
  }
  const { form, strength } = source.spec
  if (waterL === null) return byLabel(source.name, 'the water in the tank is not known', phrase`the litres you counted`)
  if (form === undefined) return byLabel(source.name, 'the product does not say what it is made of', phrase`${litres(waterL)}`)
  if (form === 'ammonium_chloride') {
    if (strength === undefined) return byLabel(source.name, 'its strength is not stated', phrase`${litres(waterL)}`)
    return {
      value: phrase`${doseOf(ammoniumChlorideG(waterL, DOSE_MG_PER_L, strength), 'g')} of ${source.name}`,
      reason: null,
      tooStrong: false,
    }
  }
  if (strength === undefined) return byLabel(source.name, 'its strength is not stated', phrase`${litres(waterL)}`)
  if (strength > STRONGEST_SOLUTION) {
    return {
      value: phrase`none of ${source.name}: it is stronger than 10 %`,
      reason: `Ammonia dose: ${source.name} is stronger than 10 %. Use ammonium chloride or a weaker solution.`,
      tooStrong: true,
    }
  }
  return {
    value: phrase`${doseOf(ammoniaSolutionMl(waterL, DOSE_MG_PER_L, strength), 'mL')} of ${source.name}`,
    reason: null,
    tooStrong: false,
  }
}

function byLabel(name: string, why: string, water: Phrase): AmmoniaPortion {
  return {
    value: phrase`by the label of ${name}, for ${water} to ${DOSE_MG_PER_L} mg/L`,
    reason: `Ammonia dose: ${why}. Read it off the label of ${name}.`,
    tooStrong: false,
  }
}
