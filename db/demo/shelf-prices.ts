import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Condition } from '../../core/pricing/sighting.ts'
import { COMMON_SALE_TIMES, windowsBetween } from './sale-times.ts'
import type { Seeded } from './seeded.ts'
import type { DemoStore } from './stores.ts'

/** What one product costs at one store on a day, as the scenario has it: members see some of it. */
export interface TrueDay {
  regularMinor: number
  priceMinor: number
  condition: Exclude<Condition, 'used'>
  lastDay: CivilDate | null
}

/** Chances and sizes of the scenario, own, chosen to look like a store's year: a price moves about once a year, mostly up by some per cent. */
const CHANGES_A_YEAR = 1
const SHARE_OF_RISES = 0.85
const STORE_RUNS_SALE_TIME = 0.75
const PRODUCT_TAKES_PART = 0.3
const OWN_SALES_A_YEAR = 0.5
const CLEARANCE_SHARE = 0.04
/** Off the regular price; ten and twenty are the usual stickers. */
const DEPTHS = [0.1, 0.1, 0.15, 0.2, 0.2, 0.2, 0.25, 0.3] as const
const CLEARANCE_DEPTH = 0.4
const CLEARANCE_DAYS = 25

interface Offer {
  first: CivilDate
  last: CivilDate
  depth: number
  condition: 'sale' | 'clearance'
}

/** Sale times that a store runs, drawn once for all of its products. */
export function saleTimesOf(shop: DemoStore, from: CivilDate, to: CivilDate, seed: Seeded): Array<{ first: CivilDate; last: CivilDate }> {
  const common = COMMON_SALE_TIMES.flatMap((time) => windowsBetween(time, from, to)).filter(() => seed.chance(STORE_RUNS_SALE_TIME))
  return [...common, ...windowsBetween(shop.anniversary, from, to)]
}

/** What happens on each of some days in a row. The chance of a day's change is that of a year spread over its days. */
export function trueDays(
  aboutMinor: number,
  shop: DemoStore,
  storeSales: Array<{ first: CivilDate; last: CivilDate }>,
  calendar: readonly CivilDate[],
  seed: Seeded,
): Map<CivilDate, TrueDay> {
  const offers = offersOf(storeSales, calendar, seed)
  const days = new Map<CivilDate, TrueDay>()
  // The level wobbles from product to product by a few per cent, as no store is dearer throughout.
  let regularMinor = sticker(aboutMinor * 0.95 * shop.level * (0.97 + 0.06 * seed.next()))
  for (const day of calendar) {
    const offer = offers.find(({ first, last }) => first <= day && day <= last)
    if (!offer && seed.chance(CHANGES_A_YEAR / 365)) regularMinor = moved(regularMinor, seed)
    days.set(day, {
      regularMinor,
      priceMinor: offer ? sticker(regularMinor * (1 - offer.depth)) : regularMinor,
      condition: offer?.condition ?? 'shelf',
      lastDay: offer?.last ?? null,
    })
  }
  return days
}

function offersOf(storeSales: Array<{ first: CivilDate; last: CivilDate }>, calendar: readonly CivilDate[], seed: Seeded): Offer[] {
  const offers: Offer[] = storeSales
    .filter(() => seed.chance(PRODUCT_TAKES_PART))
    .map((window) => ({ ...window, depth: seed.pick(DEPTHS), condition: 'sale' }))
  for (const day of calendar) {
    if (!seed.chance(OWN_SALES_A_YEAR / 365)) continue
    offers.push({ first: day, last: addDays(day, seed.whole(5, 13)), depth: seed.pick(DEPTHS), condition: 'sale' })
  }
  if (seed.chance(CLEARANCE_SHARE)) {
    const first = calendar.at(-seed.whole(5, 20)) ?? ''
    offers.unshift({ first, last: addDays(first, CLEARANCE_DAYS), depth: CLEARANCE_DEPTH, condition: 'clearance' })
  }
  return offers
}

function moved(regularMinor: number, seed: Seeded): number {
  const step = 0.02 + 0.03 * seed.next()
  const next = sticker(regularMinor * (seed.chance(SHARE_OF_RISES) ? 1 + step : 1 - step))
  return next === regularMinor ? regularMinor + 50 : next
}

/** As stores write prices: whole amounts less a cent, by halves under ten. @example sticker(4327) // 4299 */
function sticker(minor: number): number {
  const step = minor < 1000 ? 50 : 100
  return Math.max(step, Math.round(minor / step) * step) - 1
}
