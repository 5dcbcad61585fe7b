import { phrase, quantity } from '../units/quantity.ts'
import type { Finding, Verdict } from './finding.ts'
import { makeFinding } from './make-finding.ts'
import type { Situation } from './situation.ts'
import { MEDIA_M2_PER_L } from './typical-ranges.ts'

/** Share of protein in dry feed. Common practice: 45 %. */
const PROTEIN = 0.45
/** g ammonia-N for each g of protein: Timmons & Ebeling, Recirculating Aquaculture (0.16 × 0.80 × 0.80 × 0.90, from memory). */
const AMMONIA_PER_PROTEIN = 0.092
/** g ammonia-N a day that a square metre of fixed film takes up at the low ammonia of a kept tank; the floor of 0.2 to 1.0 (from memory). */
const UPTAKE_G_M2_DAY = 0.2

/** Ammonia-N of a day's feed, g. @example ammoniaOfFeed(5) // 0.2070 */
export const ammoniaOfFeed = (feedGrams: number, protein: number = PROTEIN): number => feedGrams * protein * AMMONIA_PER_PROTEIN

/** Film that takes it up, m². @example filmForAmmonia(0.207) // 1.035 */
export const filmForAmmonia = (gramsPerDay: number): number => gramsPerDay / UPTAKE_G_M2_DAY

/**
 * Whether the filter's media hold enough film for the group's feeding. Only where the media's volume is stated.
 *
 * Value: litres of media, millilitres where the need is less than one. Limit: what the film needs with the least area a litre; *marginal* while that of the best media would do.
 *
 * @example filterFeed(situation)?.limit // at least 1.0 L of media for 1 g of feed a day
 */
export function filterFeed({ gear, conditions }: Situation): Finding | null {
  if (gear.filters.length === 0 || gear.filters.some(({ spec }) => spec.mediaVolumeL === undefined)) return null
  const feed = conditions.livestock.feedGramsPerDay
  const film = filmForAmmonia(ammoniaOfFeed(feed))
  const safeL = film / MEDIA_M2_PER_L.low
  // Under a litre a tenth of one, or of a gallon, would be half of it or nothing.
  const told = (litres: number) => (safeL < 1 ? quantity(litres * 1000, 'mL', 0) : quantity(litres, 'L', 1))
  const value = told(gear.filters.reduce((sum, { spec, quantity: n }) => sum + n * (spec.mediaVolumeL ?? 0), 0))
  const safe = told(safeL)
  const least = told(film / MEDIA_M2_PER_L.high)
  const verdict: Verdict = value.value >= safe.value ? 'fits' : value.value >= least.value ? 'marginal' : 'does_not_fit'
  return makeFinding('filter_feed', {
    verdict,
    value,
    limit: { kind: 'at_least', low: safe },
    reason: phrase`A usual stock eats ${quantity(feed, 'g', feed < 1 ? 2 : 1)} of dry feed a day. The film that takes up its ammonia needs ${least} to ${safe} of media; there are ${value}.`,
    action: verdict === 'fits' ? null : { text: phrase`Feed less, keep fewer animals, or choose a filter with at least ${safe} of media.` },
    assumed: ['film area of the media', 'feed a day of the group'],
    source: {
      tag: 'from_memory',
      text: 'Timmons & Ebeling, Recirculating Aquaculture, for the ammonia that feed makes and the film that takes it up; how much film media offer is common practice.',
    },
  })
}
