import type { AmmoniaSourceSpec } from '../catalog/spec.ts'
import type { Counted, Gear } from '../sizing/gear.ts'
import { phrase, type Phrase } from '../units/quantity.ts'
import { ammoniaSolutionMl, ammoniumChlorideG, DOSE_MG_PER_L, STRONGEST_SOLUTION } from './ammonia-dose.ts'
import { doseOf, litres } from './tank-facts.ts'

/** Below this a kitchen scale says nothing, and the salt is measured as a stock solution (common practice). */
const LEAST_WEIGHED_G = 1
/** A stock of 10 g a litre: a scale of whole grams weighs 5 g to a tenth, and half a litre is no more than a cycle of a small tank takes (own). */
export const STOCK = { grams: 5, millilitres: 500 } as const

/** The portion of ammonia for this tank, said for the hand that measures it; `reason` where the label must help out. */
export interface AmmoniaPortion {
  value: Phrase
  reason: string | null
  /** Nothing here may be dosed: ammonium chloride is got first, and the portion is of that. */
  toGet: boolean
  /** Liquids of the plan that stay closed. */
  tooStrong: string[]
  /** The portion is drawn from a stock solution that is made once. */
  stock: boolean
  /** Its strength is not stated, so it is read before the bottle is opened. */
  readLabel: boolean
}

type Source = Counted<AmmoniaSourceSpec>

/** A liquid above 10 % is not put into a customer's hand. */
const isTooStrong = ({ spec }: Source): boolean =>
  spec.form === 'ammonia_solution' && spec.strength !== undefined && spec.strength > STRONGEST_SOLUTION

/**
 * One dose to 2 mg/L as nitrogen from the first source that may be used; of pure ammonium chloride where there is none.
 *
 * Units:  litres in; grams at 1 g and above, millilitres of a stock solution below, millilitres of a liquid.
 * Errors: without a form, a strength or the water it says what to read off the label; a liquid above 10 % is refused and named in `tooStrong`.
 * Source: molar masses and densities of ammonia-dose.ts; 10 % as the strongest liquid is common practice.
 *
 * @example ammoniaPortion(gear, 237.7).value // [1.8 g, ' of ', 'Stillwell ammonium chloride']
 */
export function ammoniaPortion(gear: Gear, waterL: number | null): AmmoniaPortion {
  const sources = gear.ammoniaSources ?? []
  const tooStrong = sources.filter(isTooStrong).map(({ name }) => name)
  const source = sources.find((each) => !isTooStrong(each))
  const portion = source === undefined ? pureSalt(waterL, tooStrong) : portionOf(source, waterL)
  return { toGet: source === undefined, tooStrong, stock: false, readLabel: false, ...portion }
}

type Portion = Pick<AmmoniaPortion, 'value' | 'reason'> & Partial<AmmoniaPortion>

function pureSalt(waterL: number | null, tooStrong: string[]): Portion {
  const reason =
    tooStrong.length === 0
      ? 'Ammonia dose: no ammonia source is part of this plan. Reckoned for pure ammonium chloride.'
      : `Ammonia dose: ${tooStrong.join(', ')} is stronger than 10 %. Use ammonium chloride or a weaker solution.`
  const salt = 'pure ammonium chloride'
  if (waterL === null) return { value: phrase`${salt}, for the water you counted to ${DOSE_MG_PER_L} mg/L: ask how much`, reason }
  return { ...saltPortion(ammoniumChlorideG(waterL, DOSE_MG_PER_L, 1), salt), reason }
}

function portionOf({ name, spec: { form, strength } }: Source, waterL: number | null): Portion {
  if (waterL === null) return byLabel(name, 'the water in the tank is not known', phrase`the water you counted`, strength === undefined)
  if (form === undefined) return byLabel(name, 'the product does not say what it is made of', phrase`${litres(waterL)}`, true)
  if (strength === undefined) return byLabel(name, 'its strength is not stated', phrase`${litres(waterL)}`, form === 'ammonia_solution')
  if (form === 'ammonium_chloride') return { ...saltPortion(ammoniumChlorideG(waterL, DOSE_MG_PER_L, strength), name), reason: null }
  return { value: phrase`${doseOf(ammoniaSolutionMl(waterL, DOSE_MG_PER_L, strength), 'mL')} of ${name}`, reason: null }
}

/** Salt on a scale, or where a scale is too coarse as millilitres of a stock. */
function saltPortion(grams: number, name: string): Pick<AmmoniaPortion, 'value' | 'stock'> {
  if (grams >= LEAST_WEIGHED_G) return { value: phrase`${doseOf(grams, 'g')} of ${name}`, stock: false }
  const millilitres = doseOf((grams * STOCK.millilitres) / STOCK.grams, 'mL')
  return {
    value: phrase`${millilitres} of a stock of ${STOCK.grams} g of ${name} in ${STOCK.millilitres} mL of water (${doseOf(grams, 'g')} is in it)`,
    stock: true,
  }
}

function byLabel(name: string, why: string, water: Phrase, readLabel: boolean): Portion {
  return {
    value: phrase`by the label of ${name}, for ${water} to ${DOSE_MG_PER_L} mg/L`,
    reason: `Ammonia dose: ${why}. Read it off the label of ${name}.`,
    readLabel,
  }
}
