import type { PriceRecord } from '../../core/pricing/record.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { newestFirst } from '../../core/pricing/board.ts'
import { findProduct } from '../../db/products.ts'
import { countSightings, seenPricesOfProducts } from '../../db/seen-prices.ts'
import { sightingRowsById, sightingRowsOfProduct } from '../../db/sightings.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'

/** More than most products ever get; a phone scrolls through a dozen. The rest comes on asking. */
const NEWEST = 60
/** A week's sale that twenty members report is led to by its first few. */
const BEHIND_A_FIGURE = 3

/**
 * All that a product page shows; undefined for an unknown product. Of a long record the newest sightings and those behind the figures, unless the `whole` is asked for.
 */
export async function priceRecord(c: Ctx, productId: string, whole: boolean): Promise<PriceRecord | undefined> {
  const [db, viewer] = [c.get('db'), signedIn(c)]
  const product = await findProduct(db, productId)
  if (product === undefined) return undefined
  const { today } = await installToday(c)
  const views = await seenPricesOfProducts(db, [productId], today)
  const newest = await sightingRowsOfProduct(db, viewer, productId, whole ? undefined : NEWEST)
  if (whole || newest.length < NEWEST) return { product, sightings: newest, total: newest.length, views, asOf: today }
  const listed = new Set(newest.map(({ id }) => id))
  const behind = await sightingRowsById(
    db,
    viewer,
    idsBehind(views).filter((id) => !listed.has(id)),
  )
  const total = Math.max(await countSightings(db, productId), listed.size + behind.length)
  return { product, sightings: [...newest, ...behind].sort(newestFirst), total, views, asOf: today }
}

const idsBehind = (views: readonly PriceView[]): string[] =>
  views.flatMap(({ regular, today, best }) => [
    ...(regular?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(today?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(best ? [best.sightingId] : []),
  ])
