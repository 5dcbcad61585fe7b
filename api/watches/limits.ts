import type { Kysely } from 'kysely'
import type { CivilDate } from '../../core/dates.ts'
import type { Watch } from '../../core/pricing/watches/watch.ts'
import type { Database } from '../../db/database.ts'
import type { InstallRow } from '../../db/install.ts'
import { storesOfRegions } from '../../db/watch-matching.ts'
import { loadOutlook } from '../outlook/load-outlook.ts'

/** What the outlook is asked for in the name of nobody. */
const ASKED_BY = 'watches'

/** Tells the most that is to be paid for a product by a watch: its amount, or the price to buy at today. Null where nothing is known of that yet. */
export type LimitOf = (watch: Watch, productId: string) => Promise<number | null>

/**
 * Each price to buy at is worked out once for all who watch a product by the same day at the same stores: those of the watch's region, of them the ones that it names.
 */
export function limits(db: Kysely<Database>, install: InstallRow, today: CivilDate): LimitOf {
  const known = new Map<string, Promise<number | null>>()
  return async (watch, productId) => {
    if (watch.limitMinor !== null) return watch.limitMinor
    const { byDay } = watch
    if (byDay === null || byDay < today) return null
    const storeIds = await placesOf(db, watch)
    if (storeIds === null) return null
    const key = [productId, byDay, ...storeIds].join(' ')
    const limit = known.get(key) ?? priceToBuyAt(db, install, today, { productId, storeIds, until: byDay })
    known.set(key, limit)
    return limit
  }
}

/** Ids of the stores that a watch is of; empty: any, null: none, where nothing can be bought. */
async function placesOf(db: Kysely<Database>, { regionId, storeIds }: Watch): Promise<string[] | null> {
  if (regionId === null) return storeIds.toSorted()
  const inRegion = (await storesOfRegions(db, [regionId])).get(regionId) ?? new Set<string>()
  const both = storeIds.length === 0 ? [...inRegion] : storeIds.filter((id) => inRegion.has(id))
  return both.length === 0 ? null : both.toSorted()
}

async function priceToBuyAt(
  db: Kysely<Database>,
  install: InstallRow,
  today: CivilDate,
  { productId, storeIds, until }: { productId: string; storeIds: string[]; until: CivilDate },
): Promise<number | null> {
  const ask = {
    lines: [{ productId, quantity: 1, storeId: null }],
    storeIds,
    until,
    waitingCostPerDayMinor: 0,
    weekWaitMinor: 0,
    withTax: true,
  }
  const outlook = await loadOutlook(db, ask, today, install, ASKED_BY)
  const [line] = outlook?.lines ?? []
  return line && Number.isFinite(line.priceToBuyAtMinor) && Number.isFinite(line.payTodayMinor) ? Math.round(line.priceToBuyAtMinor) : null
}
