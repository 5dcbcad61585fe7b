import type { Kind } from '../../core/catalog/kinds.ts'
import type { CivilDate } from '../../core/dates.ts'
import { atLeast } from '../../core/people/roles.ts'
import { listedPrice, withoutCount, type ListedPrice } from '../../core/pricing/listed-price.ts'
import { listStock } from '../../db/price-list.ts'
import { findRegion } from '../../db/regions.ts'
import { ownStore } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'

interface Asked {
  kind?: Kind | undefined
  storeId?: string | undefined
  regionId?: string | undefined
  q?: string | undefined
  limit: number
  offset: number
}

/** The board of a place that is a store: what its own list asks on a day, by name. Prices seen elsewhere are left out; without a store of its own there is nothing. */
export async function ownBoard(
  c: Ctx,
  { kind, storeId, regionId, q, limit, offset }: Asked,
  asOf: CivilDate,
): Promise<{ rows: []; listed: ListedPrice[]; total: number }> {
  const db = c.get('db')
  const own = await ownStore(db)
  const region = regionId === undefined ? undefined : await findRegion(db, regionId)
  const isElsewhere =
    (storeId !== undefined && storeId !== own?.id) || (regionId !== undefined && !region?.storeIds.includes(own?.id ?? ''))
  if (!own || own.archived || isElsewhere) return { rows: [], listed: [], total: 0 }
  const { items, total } = await listStock(db, { kind, q, pricedOn: asOf, limit, offset })
  const listed = items.flatMap((item) => listedPrice(item, own, asOf) ?? [])
  return { rows: [], listed: listed.map((price) => asRead(c, price)), total }
}

/** How many there are is told to whoever reads the price list itself. */
export const asRead = (c: Ctx, price: ListedPrice): ListedPrice => (atLeast(signedIn(c).role, 'advisor') ? price : withoutCount(price))
