import { between, pick, poisson, wholeBetween, type Random } from '../random.ts'
import type { MarketTruth } from './parameters.ts'
import { drawGaps, type Path, type Shops } from './shops.ts'

/** What a member typed in; whether it is so is known only here. */
export interface Report {
  product: number
  store: number
  /** Day of the simulation that it says. */
  day: number
  condition: 'shelf' | 'sale' | 'clearance' | 'used'
  priceMinor: number
  printedRegularMinor: number | null
  /** Last day of the sale as printed, in days of the simulation. */
  lastDay: number | null
  reporter: number
  /** False where it differs from what the shop asked that day. */
  right: boolean
}

export interface Stretch {
  from: number
  to: number
}

/** How often each member gets something wrong. */
const CAREFUL = 0.005
const CARELESS = 0.08
const PERSISTENT = 0.35

function errorRates({ reporting }: MarketTruth, random: Random): number[] {
  return Array.from({ length: reporting.members }, (_, index) => {
    if (index < reporting.persistentlyCareless) return PERSISTENT
    return random() < reporting.carelessShare ? CARELESS : CAREFUL
  })
}

const TAG_WITH_WAS = 0.4
const TAG_WITH_LAST_DAY = 0.3
const CLEARANCE_SHARE = 0.05
const USED_SHARE = 0.01

/** What an attentive member would write on a day. */
function seen(
  truth: MarketTruth,
  { product, store, day }: { product: number; store: number; day: number },
  path: Path,
  random: Random,
): Report {
  const { falseWasOnSale, falseWasOnShelf } = truth.reporting
  const regular = path.regular[day] as number
  const priceMinor = path.price[day] as number
  const ends = path.saleEnds[day] as number
  const inflated = (): number => Math.round(regular * between(random, 1.1, 1.4))
  const base = { product, store, day, priceMinor, reporter: 0, right: true }
  if (ends < 0) {
    const was = random() < (falseWasOnShelf[store] as number) ? inflated() : null
    return { ...base, condition: 'shelf', printedRegularMinor: was, lastDay: null }
  }
  const falseWas = random() < (falseWasOnSale[store] as number)
  return {
    ...base,
    condition: random() < CLEARANCE_SHARE ? 'clearance' : 'sale',
    printedRegularMinor: falseWas ? inflated() : random() < TAG_WITH_WAS ? regular : null,
    lastDay: random() < TAG_WITH_LAST_DAY ? ends : null,
  }
}

/** What a careless member makes of it: a slipped decimal, a wrong figure, another product's tag, the wrong button, the wrong day. */
function spoil(report: Report, shops: Shops, last: number, random: Random): Report {
  const wrong = { ...report, right: false }
  const kind = random()
  if (kind < 0.15) return { ...wrong, priceMinor: Math.max(1, Math.round(report.priceMinor * (random() < 0.5 ? 10 : 0.1))) }
  if (kind < 0.35) return { ...wrong, priceMinor: Math.max(1, Math.round(report.priceMinor * between(random, 0.7, 1.3))) }
  if (kind < 0.6) {
    const other = pick(random, shops.paths)[report.store] as Path
    return { ...wrong, priceMinor: other.price[report.day] as number }
  }
  if (kind < 0.85) return { ...wrong, condition: report.condition === 'shelf' ? 'sale' : 'shelf', printedRegularMinor: null, lastDay: null }
  return { ...wrong, day: Math.min(last, report.day + wholeBetween(random, 1, 5)), lastDay: null }
}

const usedInstead = (report: Report, random: Random): Report => ({
  ...report,
  condition: 'used',
  priceMinor: Math.max(1, Math.round(report.priceMinor * between(random, 0.3, 0.8))),
  printedRegularMinor: null,
  lastDay: null,
})

/**
 * All that members write from the first day of a stretch to its last, oldest day first. One visit in which somebody reports is followed by
 * others who report the same: on the same day, or while the price still stands in the days after.
 */
export function drawReports(truth: MarketTruth, shops: Shops, { from, to }: Stretch, random: Random): Report[] {
  const rates = errorRates(truth, random)
  const reports: Report[] = []
  const write = (product: number, store: number, day: number, path: Path): void => {
    const report = { ...seen(truth, { product, store, day }, path, random), reporter: Math.floor(rates.length * random() ** 1.5) }
    const odd = random() < USED_SHARE ? usedInstead(report, random) : report
    reports.push(random() < (rates[odd.reporter] as number) ? spoil(odd, shops, to, random) : odd)
  }
  const gaps = truth.storeIds.map(() => drawGaps(truth, random).map(({ first, last }) => ({ first: from + first, last: from + last })))
  truth.products.forEach(({ reportsRegular, reportsOnSale }, product) =>
    shops.paths[product]?.forEach((path, store) => {
      for (let day = from; day <= to; day += 1) {
        if (random() >= ((path.saleEnds[day] as number) < 0 ? reportsRegular : reportsOnSale)) continue
        if (gaps[store]?.some(({ first, last }) => day >= first && day <= last)) continue
        write(product, store, day, path)
        for (let more = poisson(random, truth.reporting.duplicates); more > 0; more -= 1) {
          const later = random() < 0.7 ? day : day + wholeBetween(random, 1, 3)
          if (later <= to && path.price[later] === path.price[day]) write(product, store, later, path)
        }
      }
    }),
  )
  return reports.sort((a, b) => a.day - b.day)
}
