import type { Kysely } from 'kysely'
import type { Store } from '../../core/catalog/store.ts'
import { addDays, type CivilDate } from '../../core/dates.ts'
import { LEAST_SAVING_MINOR, type Install } from '../../core/install.ts'
import { homeMinor, type CurrencyRate } from '../../core/pricing/currency-rate.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import { usedSeen } from '../../core/pricing/used-seen.ts'
import type { UsedSeen } from '../../core/pricing/outlook/say-advice.ts'
import { withTaxExact } from '../../core/pricing/receipt.ts'
import type { Sighting } from '../../core/pricing/sighting.ts'
import { rateIndexOf, type TaxedGoods } from '../../core/pricing/store-rates.ts'
import { WHOLE_RATE } from '../../core/money.ts'
import { listCurrencyRates } from '../../db/currency-rates.ts'
import type { Database } from '../../db/database.ts'
import { readLearned } from '../../db/learned.ts'
import { getProducts } from '../../db/products.ts'
import { listSaleTimes } from '../../db/sale-times.ts'
import { sightingsOfProducts } from '../../db/sightings.ts'
import { listStores } from '../../db/stores.ts'
import { saleWindows } from '../sale-times/windows.ts'
import { reckonOutlook, withRoom } from './outlook-thread.ts'
import type { PlainOutlook } from './outlook-worker.ts'

/** What is asked about a purchase. A line that names a store is bought there; the others at any of `storeIds`, or anywhere where that is empty. */
export interface OutlookAsk {
  lines: ReadonlyArray<{ productId: string; quantity: number; storeId: string | null }>
  storeIds: readonly string[]
  until: CivilDate
  /** What the customer holds a week's wait to be worth for all of it, minor units; 0: nothing. */
  weekWaitMinor: number
  /** Amounts with tax, as a build adds them up; else as the stores print them. */
  withTax: boolean
}

export interface LoadedOutlook extends PlainOutlook {
  learnedOn: CivilDate
  /** Names of the sale times that lines name. */
  saleTimeNames: ReadonlyMap<string, string>
  /** Newest used price at the stores of each line, in their order; undefined where none counts. */
  used: ReadonlyArray<UsedSeen | undefined>
}

/** As far back as prices count at all. */
const LOOK_BACK_DAYS = 550
/** The longest sale time may have begun so long ago and still run. */
const LONGEST_RUN_DAYS = 62
const DAYS_OF_WEEK = 7
/** A tenth is told to about a hundredth of its place. */
const DRAWS = 400
/** The same purchase on the same day is told the same. */
const SEED = 20_261_126

/**
 * What to expect of a purchase; undefined where nothing was learnt yet, and in a store's install, whose own list is what its prices are. `by` is who asks.
 * Errors: OutlookBusy.
 */
export const loadOutlook = (
  db: Kysely<Database>,
  ask: OutlookAsk,
  today: CivilDate,
  install: Install,
  by: string,
): Promise<LoadedOutlook | undefined> => withRoom(by, () => load(db, ask, today, install, by))

async function load(
  db: Kysely<Database>,
  ask: OutlookAsk,
  today: CivilDate,
  { mode, currency, leastSavingMinor = LEAST_SAVING_MINOR }: Install,
  by: string,
): Promise<LoadedOutlook | undefined> {
  const ids = [...new Set(ask.lines.map(({ productId }) => productId))]
  const learned = mode === 'store' ? undefined : await readLearned(db, ids, today)
  if (!learned) return undefined
  const [products, all, times, rates] = [
    await getProducts(db, ids),
    await listStores(db, { archived: false }),
    await listSaleTimes(db),
    await listCurrencyRates(db),
  ]
  const stores = new Map(all.map((store) => [store.id, store]))
  const seen = await sightingsOfProducts(db, ids, addDays(today, -LOOK_BACK_DAYS))
  const windows = saleWindows(times, all, addDays(today, -LONGEST_RUN_DAYS), ask.until)
  const record = { sightings: inHome(seen, stores, rates, currency), products, windows, asOf: today }
  const kindOf = new Map(products.map(({ id, kind }) => [id, kind]))
  const lines = ask.lines.map(({ productId, quantity, storeId }) => ({
    productId,
    quantity,
    storeIds: storeId === null ? (ask.storeIds.length > 0 ? ask.storeIds : [...stores.keys()]) : [storeId],
    factors: ask.withTax ? taxFactors(stores, kindOf.get(productId), productId) : {},
  }))
  const { until, weekWaitMinor } = ask
  const waitingCostPerDayMinor = weekWaitMinor / DAYS_OF_WEEK
  const job = { learned, record, lines, until, waitingCostPerDayMinor, leastSavingMinor, draws: DRAWS, seed: SEED }
  const outlook = await reckonOutlook(job, by)
  const saleTimeNames = new Map(times.map(({ id, name }) => [id, name]))
  return { ...outlook, learnedOn: learned.asOf, saleTimeNames, used: lines.map((line) => usedSeen(line, record.sightings, today)) }
}

/** What one unit with its tax is of its price, by store. */
function taxFactors(stores: ReadonlyMap<string, Store>, kind: TaxedGoods['kind'], productId: string): Record<string, number> {
  const factorAt = (store: Store): number => withTaxExact(1, store, rateIndexOf(store, { kind, productId })) / WHOLE_RATE
  return Object.fromEntries([...stores].map(([id, store]) => [id, factorAt(store)]))
}

/** Sightings in the install's currency; those of a currency without a rate, and of stores that are archived, are left out. */
function inHome(seen: readonly Sighting[], stores: ReadonlyMap<string, Store>, rates: readonly CurrencyRate[], home: string): Sighting[] {
  return seen.flatMap((one): Sighting[] => {
    const store = stores.get(one.storeId)
    if (!store) return []
    const currency = storeCurrency(store, home)
    if (currency === home) return [one]
    const rate = rates.find((each) => each.currency === currency)
    if (!rate) return []
    const convert = (minor: number): number => Math.max(1, homeMinor(minor, rate, home))
    const { printedRegularMinor } = one
    return [
      {
        ...one,
        priceMinor: convert(one.priceMinor),
        printedRegularMinor: printedRegularMinor === null ? null : convert(printedRegularMinor),
      },
    ]
  })
}
