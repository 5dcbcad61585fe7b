import { addDays, type CivilDate } from '../../core/dates.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import { CATALOG, isExtra } from './catalog.ts'
import { PEOPLE, type DemoPerson } from './club.ts'
import { doubtAndVotes, type DemoVote } from './doubts.ts'
import type { ProductEntry } from './product-entry.ts'
import { SHOWN } from './shown.ts'
import { phoneIdAt, seeded, type Seeded } from './seeded.ts'
import { saleTimesOf, trueDays, type TrueDay } from './shelf-prices.ts'
import { STORES, type DemoStore } from './stores.ts'

export interface DemoRecord {
  sightings: Sighting[]
  votes: DemoVote[]
}

const DAYS = 548
/** A day's chance that someone reports a price, own: people report because there is a sale. */
const REPORTED_ON_SHELF = 0.012
const REPORTED_ON_SALE = 0.09
/** Of the tags with a sale on them, this share prints the regular price, and this one the last day. */
const PRINTS_REGULAR = 0.65
const PRINTS_LAST_DAY = 0.6
/** Stores that carry more than this have what is shown in the quotes. */
const WIDE_RANGE = 0.4
/** A store has about half as much of what a tank may have besides. */
const EXTRAS_CARRIED = 0.5
/** Under the 60 days for which a price counts as current. */
const LATEST_WITHIN_DAYS = 45

/** A year and a half of the club's reports, the last of them from the day before `today`: nothing is seen in the future. */
export function demoRecord(seed: number, today: CivilDate): DemoRecord {
  const basic = recordOf(
    CATALOG.filter((entry) => !isExtra(entry)),
    seeded(seed),
    today,
  )
  const extras = recordOf(CATALOG.filter(isExtra), seeded(seed + 1), today)
  const inOrder = (a: Sighting, b: Sighting) => a.receivedAt.localeCompare(b.receivedAt) || a.id.localeCompare(b.id)
  return { sightings: [...basic.sightings, ...extras.sightings].sort(inOrder), votes: [...basic.votes, ...extras.votes] }
}

function recordOf(entries: readonly ProductEntry[], random: Seeded, today: CivilDate): DemoRecord {
  const [from, to] = [addDays(today, -DAYS), addDays(today, -1)]
  const calendar = Array.from({ length: DAYS }, (_, index) => addDays(from, index))
  const sightings: Sighting[] = []
  for (const shop of STORES) {
    const sales = saleTimesOf(shop, from, to, random)
    for (const entry of entries) {
      const { product, aboutMinor, at } = entry
      if (at !== undefined && at !== shop.store.name) continue
      const shown = SHOWN.has(product.name) && shop.carries >= WIDE_RANGE
      if (!random.chance(isExtra(entry) ? shop.carries * EXTRAS_CARRIED : shop.carries) && !shown) continue
      const days = trueDays(aboutMinor, shop, sales, calendar, random)
      sightings.push(...reportsOf(product.id, shop, days, random))
      if (shown) sightings.push(latest(product.id, shop, days, to, random))
    }
    if (shop.sellsUsed && !entries.some(isExtra)) sightings.push(...usedGoods(shop, to, random))
  }
  sightings.sort((a, b) => a.receivedAt.localeCompare(b.receivedAt) || a.id.localeCompare(b.id))
  return doubtAndVotes(sightings, to, random)
}

function reportsOf(productId: string, shop: DemoStore, days: Map<CivilDate, TrueDay>, random: Seeded): Sighting[] {
  const reports: Sighting[] = []
  for (const [day, truth] of days) {
    if (!random.chance(truth.condition === 'shelf' ? REPORTED_ON_SHELF : REPORTED_ON_SALE)) continue
    reports.push(report(productId, shop, day, truth, random))
  }
  return reports
}

/** Products of the quotes that are shown were looked at within the last weeks, tag and all, so that their tiers are whole. */
function latest(productId: string, shop: DemoStore, days: Map<CivilDate, TrueDay>, to: CivilDate, random: Seeded): Sighting {
  const day = addDays(to, -random.whole(0, LATEST_WITHIN_DAYS))
  const truth = days.get(day)
  if (!truth) throw new Error(`${day} is outside the scenario.`)
  return report(productId, shop, day, truth, random, 1)
}

function report(
  productId: string,
  shop: DemoStore,
  seenOn: CivilDate,
  truth: TrueDay,
  random: Seeded,
  printsRegular = PRINTS_REGULAR,
): Sighting {
  const offered = truth.condition !== 'shelf'
  return sightingOf(productId, shop, seenOn, random, {
    condition: truth.condition,
    priceMinor: truth.priceMinor,
    printedRegularMinor: offered && random.chance(printsRegular) ? truth.regularMinor : null,
    lastDay: offered && random.chance(PRINTS_LAST_DAY) ? truth.lastDay : null,
    evidence: shop.store.kind === 'online' ? 'page' : random.chance(0.25) ? 'receipt' : 'tag',
  })
}

type Seen = Pick<Sighting, 'condition' | 'priceMinor' | 'printedRegularMinor' | 'lastDay' | 'evidence'> & { note?: string }

/** Between noon and ten in the evening UTC of the day it was seen, which is the same day in the valley. */
function sightingOf(productId: string, shop: DemoStore, seenOn: CivilDate, random: Seeded, seen: Seen): Sighting {
  const receivedMs = Date.parse(`${seenOn}T12:00:00Z`) + random.whole(0, 10 * 3600 - 1) * 1000
  return {
    id: phoneIdAt(receivedMs, random),
    productId,
    storeId: shop.store.id,
    note: null,
    seenOn,
    ...seen,
    reporterId: reporter(random).id,
    receivedAt: new Date(receivedMs).toISOString(),
    doubt: null,
    withdrawn: false,
    confirmations: 0,
    disputes: 0,
  }
}

function reporter(random: Seeded): DemoPerson {
  const all = PEOPLE.reduce((sum, person) => sum + person.share, 0)
  let left = random.next() * all
  for (const person of PEOPLE) if ((left -= person.share) < 0) return person
  return random.pick(PEOPLE)
}

/** Second-hand goods, each one of its kind, at about half of what they cost new. */
function usedGoods(shop: DemoStore, to: CivilDate, random: Seeded): Sighting[] {
  const goods: Array<[name: string, daysAgo: number, note: string]> = [
    ['Wendlemere 40 breeder', 12, 'Scratch at the left end, holds water'],
    ['Wendlemere 75', 47, 'With its old lid'],
    ['Thornby Frame 36', 12, 'Some rust at one foot'],
    ['Pellick C-1000', 85, 'Two years old, new seal'],
    ['Halden Row 36', 160, 'One end dimmer'],
    ['Osmere Clear 60', 230, 'Seams clean'],
  ]
  return goods.flatMap(([name, daysAgo, note]) => {
    const found = CATALOG.find(({ product }) => product.name === name)
    if (!found) return []
    const priceMinor = Math.round((found.aboutMinor * (0.4 + 0.2 * random.next())) / 500) * 500
    const seen: Seen = { condition: 'used', priceMinor, printedRegularMinor: null, lastDay: null, evidence: 'tag', note }
    return [sightingOf(found.product.id, shop, addDays(to, -daysAgo), random, seen)]
  })
}
