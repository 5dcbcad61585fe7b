import type { FilterSpec } from '../catalog/spec.ts'
import { phrase, quantity, type Phrase } from '../units/quantity.ts'
import { ammoniaOfFeed } from '../water/nitrogen.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding, namesOf } from './make-finding.ts'
import { settled } from './settled.ts'
import type { Situation } from './situation.ts'
import { exactly, type Span, sumOf, times } from './span.ts'
import { feedGrams, feedWords, stockFeed } from './stock-feed.ts'
import { MEDIA_L, MEDIA_L_PER_LPH, MEDIA_M2_PER_L } from './typical-ranges.ts'

/**
 * g ammonia-N a day that a square metre of fixed film takes up while ammonia is too low to be read, as it must be in a kept tank. Filters that are fed
 * more reach 1.0. Timmons & Ebeling, from memory.
 */
const UPTAKE_G_M2_DAY: Span = { low: 0.2, high: 0.5 }
/** Film slows in water cooler than this, and by this factor for each degree: Metcalf & Eddy, table 8-14, from memory. In warmer water nothing is added. */
const FULL_FROM_C = 20
const PER_KELVIN = 1.072

/** Film that takes up ammonia-N at a daily rate, m². @example filmForAmmonia(0.207, 0.2) // 1.035 */
export const filmForAmmonia = (gramsPerDay: number, uptake: number = UPTAKE_G_M2_DAY.low): number => gramsPerDay / uptake

/**
 * Dry feed a day whose ammonia the film on media takes up, g, from poor media to the best.
 *
 * Units:  litres of media, °C. Range: 5 to 35 °C.
 *
 * @example feedOfMedia(5, 25) // { low: 4.8, high: 42.3 }
 */
export function feedOfMedia(mediaL: number, waterC: number): Span {
  const cool = Math.min(1, PER_KELVIN ** (waterC - FULL_FROM_C))
  const perGram = ammoniaOfFeed(1)
  return {
    low: (mediaL * MEDIA_M2_PER_L.low * UPTAKE_G_M2_DAY.low * cool) / perGram,
    high: (mediaL * MEDIA_M2_PER_L.high * UPTAKE_G_M2_DAY.high * cool) / perGram,
  }
}

/** Litres of media in one filter; those of its kind and flow where none are stated. @example mediaOfOne({ type: 'sponge' }) // { low: 0.2, high: 1 } */
export function mediaOfOne({ mediaVolumeL, type: kind, ratedFlowLph }: FilterSpec): Span {
  // The chambers of a sump hold little or much: of a return pump nothing is known.
  const type = kind === undefined || kind === 'return_pump' ? 'unknown' : kind
  if (mediaVolumeL !== undefined) return exactly(mediaVolumeL)
  if (ratedFlowLph === undefined) return MEDIA_L[type]
  return times(MEDIA_L_PER_LPH[type], ratedFlowLph)
}

/** Litres of media in all filters. */
function mediaOf({ gear }: Pick<Situation, 'gear'>): Span {
  return sumOf(gear.filters.map(({ spec, quantity: count }) => times(mediaOfOne(spec), count)))
}

/** Under a litre a tenth of one, or of a gallon, would be half of it or nothing. */
const mediaWords = ({ low, high }: Span): Phrase => {
  const told = (litres: number) => (high < 1 ? quantity(litres * 1000, 'mL', 0) : quantity(litres, 'L', 1))
  return low === high ? phrase`${told(high)}` : phrase`${told(low)} to ${told(high)}`
}

/**
 * Whether the film in the filters takes up the ammonia of what the stock eats.
 *
 * Value: grams of dry feed a day that it carries with poor media. Limit: what the stock eats at most; *marginal* while the best media would do. What
 * grows on substrate and stones comes on top.
 *
 * @example filterFeed(situation)?.value // 4.8 g of feed a day, where 1 g is eaten
 */
export function filterFeed(situation: Situation): Finding | null {
  const { gear, conditions } = situation
  if (gear.filters.length === 0) return null
  const stock = stockFeed(situation)
  const media = mediaOf(situation)
  const waterC = conditions.livestock.targetC
  const carried = (litres: number) => {
    const { low, high } = feedOfMedia(litres, waterC)
    return { low: feedGrams(low), high: feedGrams(high) }
  }
  const [least, most] = [carried(media.low), carried(media.high)]
  const eaten = { low: feedGrams(stock.grams.low), high: feedGrams(stock.grams.high) }
  const judge = ({ low, high }: ReturnType<typeof carried>): Verdict =>
    low.value >= eaten.high.value ? 'fits' : high.value >= eaten.low.value ? 'marginal' : 'does_not_fit'
  const unstated = gear.filters.every(({ spec }) => spec.mediaVolumeL !== undefined) ? [] : ['volume of the media']
  const outcome = settled(judge(least), judge(most), unstated, namesOf(['film area of the media', stock.assumed]))
  return makeFinding('filter_feed', {
    ...outcome,
    value: least.low,
    limit: { kind: 'at_least', low: eaten.high },
    reason: phrase`${feedWords(stock)}. While ammonia is too low to be read, the film on ${mediaWords(media)} of media takes up that of ${least.low} to ${most.high}. What grows on substrate and stones comes on top; cool water and a new tank carry less.`,
    action: actionOf(outcome.verdict, stock.grams.high, waterC),
  })
}

function actionOf(verdict: Verdict, eatenGrams: number, waterC: number): Finding['action'] {
  if (verdict === 'fits') return null
  const enough = mediaWords(exactly(eatenGrams / feedOfMedia(1, waterC).low))
  return verdict === 'not_known'
    ? { text: phrase`Enter the volume of the filter's media; ${enough} carry it in any case.` }
    : { text: phrase`Feed less, keep fewer animals, or choose a filter with at least ${enough} of media. Test for ammonia each week.` }
}
