import type { CivilDate } from '../dates.ts'
import type { PriceView } from './price-view.ts'
import { priceViewOf } from './price-views.ts'
import { median } from './robust-deviation.ts'
import type { Sighting } from './sighting.ts'

/** A price that another club told of one of our products at one of our stores. */
export interface OtherClubPrice extends Pick<
  Sighting,
  'productId' | 'storeId' | 'condition' | 'priceMinor' | 'printedRegularMinor' | 'seenOn' | 'lastDay'
> {
  clubId: string
  clubName: string
  originId: string
}

/**
 * What our own record says, and where it says nothing of today what other clubs saw. A price of another club weighs less than any of our own:
 * it stands in only for a product and store that our members have not priced in 180 days, only while it is current (60 days), bears the
 * club's name, tells of a day after ours found it gone, counts as one report however many clubs tell it, and is never among the best seen, which rest on sightings that can be opened.
 *
 * Units: minor units as each store prints them; civil days. The order of the prices does not matter.
 */
export function withOtherClubs(own: readonly PriceView[], told: readonly OtherClubPrice[], asOf: CivilDate): PriceView[] {
  const keyOf = ({ productId, storeId }: Pick<PriceView, 'productId' | 'storeId'>): string => `${productId} ${storeId}`
  const views = new Map(own.map((view) => [keyOf(view), view]))
  for (const [key, ofPair] of Map.groupBy(told, keyOf)) {
    const known = views.get(key)
    if (known?.today !== undefined) continue
    const { goneOn } = known ?? {}
    const since = goneOn === undefined ? ofPair : ofPair.filter(({ seenOn }) => seenOn > goneOn)
    const told = viewFrom(since, asOf)
    if (told) views.set(key, { ...told, ...(known?.best && { best: known.best }) })
  }
  return [...views].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, view]) => view)
}

/** Beside what the product costs at any store of ours, less than this share or more than this many times is another thing or a slip. */
const [LEAST_SHARE, MOST_TIMES] = [0.3, 2]

/**
 * Whether a price of another club may be true beside what our own members saw of the product anywhere, regular, today or best in a year; true where they saw
 * nothing. Beside the rules for a member's sighting, which ask a second member: here nobody is asked.
 *
 * Units: minor units of one currency for all.
 *
 * @example isLikely(1, [849]) // false
 */
export function isLikely(priceMinor: number, ownMinor: readonly number[]): boolean {
  if (ownMinor.length === 0) return true
  const usual = median(ownMinor)
  return priceMinor >= LEAST_SHARE * usual && priceMinor <= MOST_TIMES * usual
}

function viewFrom(ofPair: readonly OtherClubPrice[], asOf: CivilDate): PriceView | undefined {
  const view = priceViewOf(ofPair.map(asSighting), asOf)
  if (view?.today?.age !== 'current') return undefined
  const { productId, storeId, regular, today } = view
  const behind = ofPair.find((price) => today.sightingIds.includes(idOf(price)))
  return {
    productId,
    storeId,
    ...(regular && { regular: { ...regular, sightingIds: [] } }),
    today: { ...today, reporters: 1, sightingIds: [] },
    otherClub: behind?.clubName ?? '',
  }
}

const idOf = ({ clubId, originId }: OtherClubPrice): string => `${clubId} ${originId}`

/** Everyone of a club is one reporter. */
const asSighting = (price: OtherClubPrice): Sighting => ({
  id: idOf(price),
  productId: price.productId,
  storeId: price.storeId,
  condition: price.condition,
  priceMinor: price.priceMinor,
  printedRegularMinor: price.printedRegularMinor,
  seenOn: price.seenOn,
  lastDay: price.lastDay,
  evidence: 'none',
  note: null,
  reporterId: price.clubId,
  receivedAt: `${price.seenOn}T12:00:00.000Z`,
  doubt: null,
  withdrawn: false,
  confirmations: 0,
  disputes: 0,
})
