import { addDays } from '../dates.ts'
import { sayMoney } from '../money.ts'
import { doubtLeeway } from './doubt-leeway.ts'
import { effectiveCondition } from './effective-condition.ts'
import { regularPrice } from './regular-price.ts'
import { median, robustDeviation } from './robust-deviation.ts'
import { isAccepted, type Doubt, type SeenPrice, type Sighting } from './sighting.ts'
import { trust } from './trust.ts'

/** Design rule 8, for a newcomer: `doubtLeeway` widens and narrows them. A sale or clearance outside these shares of the regular price is not believed alone. */
export const LEAST_SALE_SHARE = 0.3
export const MOST_SALE_SHARE = 1
/** A shelf price further than this many robust deviations from its own last year is not believed alone. */
export const MOST_DEVIATIONS = 3.5
/** Within this share of ten times or a tenth, a decimal has slipped. */
export const SLIP_TOLERANCE = 0.02
/** Fewer shelf reports have no spread to judge by: one honest change of price would look like many deviations. */
const LEAST_RECORD = 3
/** With so few, a price is believed alone up to twice or half of what was seen: beyond it, another size or a slip is likelier than a change. Own. */
const FEW_REPORTS_FACTOR = 2
/** Stores differ in a price by less than this; where a store has no price yet, beyond it a slip or another size is likelier. Own. */
const ELSEWHERE_FACTOR = 2
/** A price this close to the accepted shelf price agrees with it, though the year before was lived at another price. */
const AGREES_SHARE = 0.02

/** Shares and deviations are rounded before they meet a limit: logarithms differ in the last bit between engines, and 490/500 − 1 is not −0.02. */
const sixDigits = (value: number): number => Math.round(value * 1e6) / 1e6

/** What was seen, before the server takes it. */
export type DoubtCandidate = Pick<Sighting, 'productId' | 'storeId' | 'condition' | 'priceMinor' | 'printedRegularMinor' | 'seenOn'>

export interface DoubtContext {
  /** ISO 4217, of the store's prices: what the amounts of candidate and record are in. */
  currency: string
  /** The install's currency: beside it another is told by its code. */
  home?: string
  /** Accepted prices of other products at this store on the candidate's day: what else the tag may have belonged to. */
  othersThatDay: ReadonlyArray<{ name: string; priceMinor: number }>
  /** Trust of whoever reports, between 0 and 1, by the last snapshot; a newcomer's where nothing is known. */
  trust?: number
}

type Says = Pick<DoubtContext, 'currency' | 'home'>
type Judged = Says & { leeway: number }
const say = (minor: number, { currency, home = currency }: Says): string => sayMoney(minor, currency, { home })

/**
 * Whether a sighting must wait for a second member, with the likely cause in words; null where it counts at once (design rule 8).
 *
 * `record` are the sightings of the same product, at any store whose prices are in the same currency, the candidate not among them; those not accepted, of other days' future and
 * older than a year are left out here. The class that a shelf price is held against is the shelf prices of the same store; where that store
 * has no regular price and no shelf price yet, any new price is held against what the product usually costs elsewhere.
 * How far off is too far hangs on the reporter's trust, within bounds; a slipped decimal, a sale above the regular price and a price that agrees with the record are the same for all.
 *
 * Units: minor units as the store prints them.
 *
 * @example doubtOf({ …, condition: 'shelf', priceMinor: 195000 }, record, context) // slipped_decimal: "Ten times the regular price of $195.00 here. …"
 */
export function doubtOf(candidate: DoubtCandidate, record: readonly SeenPrice[], context: DoubtContext): Doubt | null {
  const since = addDays(candidate.seenOn, -365)
  const year = record.filter((sighting) => isAccepted(sighting) && sighting.seenOn >= since && sighting.seenOn <= candidate.seenOn)
  const here = year.filter(({ storeId }) => storeId === candidate.storeId)
  const regular = regularPrice(here, candidate.seenOn)?.priceMinor
  const slip = slippedDecimal(candidate, regular, here, year, context)
  if (slip) return slip
  const leeway = doubtLeeway(context.trust ?? trust(0, 0))
  const doubt =
    candidate.condition === 'used'
      ? null
      : effectiveCondition(candidate) === 'shelf'
        ? farShelf(candidate, regular, here, { ...context, leeway })
        : oddSale(candidate, regular, { ...context, leeway })
  if (doubt === null && candidate.condition !== 'used' && regular === undefined) {
    const far = farFromElsewhere(candidate, year, { ...context, leeway })
    return far && (otherProduct(candidate, context) ?? far)
  }
  return doubt && (otherProduct(candidate, context) ?? doubt)
}

function slippedDecimal(
  candidate: DoubtCandidate,
  regular: number | undefined,
  here: readonly SeenPrice[],
  year: readonly SeenPrice[],
  says: Says,
): Doubt | null {
  const sameClass = here
    .filter((sighting) => effectiveCondition(sighting) === effectiveCondition(candidate))
    .map(({ priceMinor }) => priceMinor)
  const anywhere = year.filter(({ condition }) => condition !== 'used').map(({ priceMinor }) => priceMinor)
  const references: Array<[number | undefined, string]> = [
    [regular, 'the regular price of'],
    [candidate.printedRegularMinor ?? undefined, 'the regular price on the tag,'],
    [sameClass.length > 0 ? median(sameClass) : undefined, 'the usual price of'],
    [regular === undefined && anywhere.length > 0 ? median(anywhere) : undefined, 'the usual price elsewhere,'],
  ]
  for (const [price, what] of references) {
    if (price === undefined) continue
    const said = `${what} ${say(Math.round(price), says)}`
    if (isNear(candidate.priceMinor, price * 10)) return { code: 'slipped_decimal', words: `About ten times ${said}. A slipped decimal?` }
    if (isNear(candidate.priceMinor, price / 10)) return { code: 'slipped_decimal', words: `About a tenth of ${said}. A slipped decimal?` }
  }
  return null
}
const isNear = (price: number, target: number): boolean => sixDigits(Math.abs(price / target - 1)) <= SLIP_TOLERANCE

function farShelf(
  { priceMinor }: DoubtCandidate,
  regular: number | undefined,
  here: readonly SeenPrice[],
  { leeway, ...says }: Judged,
): Doubt | null {
  const shelf = here.filter((sighting) => effectiveCondition(sighting) === 'shelf').map((sighting) => sighting.priceMinor)
  if (shelf.length === 0 || (regular !== undefined && sixDigits(Math.abs(priceMinor / regular - 1)) <= AGREES_SHARE)) return null
  if (!isFar(priceMinor, shelf, leeway)) return null
  const usual = Math.round(median(shelf))
  const hint = priceMinor < usual ? ' A sale, or another size?' : ' A new price, or another size?'
  return {
    code: 'far_from_record',
    words: `${sayHowFar(priceMinor, usual)} the shelf prices seen here in the last year, about ${say(usual, says)}.${hint}`,
  }
}

/** In figures: where a record hardly moves, a price that nobody would call far off waits already. @example sayHowFar(10800, 10000) // '8 % above' */
const sayHowFar = (priceMinor: number, usual: number): string =>
  `${Math.round(Math.abs(sixDigits(priceMinor / usual - 1)) * 100)} % ${priceMinor > usual ? 'above' : 'below'}`

function isFar(priceMinor: number, shelf: readonly number[], leeway: number): boolean {
  if (shelf.length >= LEAST_RECORD) return sixDigits(robustDeviation(priceMinor, shelf)) > sixDigits(MOST_DEVIATIONS * leeway)
  const factor = priceMinor / median(shelf)
  return sixDigits(Math.max(factor, 1 / factor)) > sixDigits(FEW_REPORTS_FACTOR ** leeway)
}

/** Least share of the regular price that is believed alone: as a logarithm, further off for whoever is trusted. */
const leastShare = (leeway: number): number => sixDigits(LEAST_SALE_SHARE ** leeway)

function oddSale(
  { priceMinor, printedRegularMinor }: DoubtCandidate,
  known: number | undefined,
  { leeway, ...says }: Judged,
): Doubt | null {
  const regular = known ?? printedRegularMinor ?? undefined
  if (regular === undefined) return null
  const share = sixDigits(priceMinor / regular)
  const said = say(regular, says)
  const least = leastShare(leeway)
  if (share < least) {
    const percent = Math.round(least * 100)
    return { code: 'too_deep', words: `Less than ${percent} % of the regular price of ${said}. A price of a part, or of another size?` }
  }
  if (share > MOST_SALE_SHARE) return { code: 'above_regular', words: `A sale above the regular price of ${said}. A new regular price?` }
  return null
}

/** A first price here, against the middle of the regular prices that the other stores have now. A sale may be as deep as anywhere. */
function farFromElsewhere(candidate: DoubtCandidate, year: readonly SeenPrice[], { leeway, ...says }: Judged): Doubt | null {
  const byStore = Map.groupBy(year, ({ storeId }) => storeId)
  const here = byStore.get(candidate.storeId) ?? []
  if (here.some((sighting) => effectiveCondition(sighting) === 'shelf')) return null
  const elsewhere = [...byStore.values()].flatMap((ofStore) => regularPrice(ofStore, candidate.seenOn)?.priceMinor ?? [])
  if (elsewhere.length === 0) return null
  const usual = median(elsewhere)
  const most = sixDigits(ELSEWHERE_FACTOR ** leeway)
  const least = effectiveCondition(candidate) === 'shelf' ? sixDigits(1 / most) : leastShare(leeway)
  const share = sixDigits(candidate.priceMinor / usual)
  if (share >= least && share <= most) return null
  const words = `${sayHowFar(candidate.priceMinor, usual)} the usual price elsewhere, ${say(Math.round(usual), says)}. A slipped decimal, or another size?`
  return { code: 'far_from_record', words }
}

function otherProduct({ priceMinor }: DoubtCandidate, { othersThatDay, ...says }: DoubtContext): Doubt | null {
  const other = othersThatDay.find((seen) => seen.priceMinor === priceMinor)
  return other
    ? { code: 'other_product', words: `${say(priceMinor, says)} is the price of ${other.name} seen here that day. Its tag?` }
    : null
}
