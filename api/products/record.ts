import type { PriceRecord } from '../../core/pricing/record.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { findProduct } from '../../db/products.ts'
import { seenRecordOfProduct } from '../../db/seen-prices.ts'
import { newestRowsOfProduct, sightingRowsOfProduct } from '../../db/sightings.ts'
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
  const { views, sightings: counted } = await seenRecordOfProduct(db, productId, today)
  const sightings = whole
    ? await sightingRowsOfProduct(db, viewer, productId)
    : await newestRowsOfProduct(db, viewer, productId, { newest: NEWEST, others: idsBehind(views) })
  return { product, sightings, total: whole ? sightings.length : Math.max(counted, sightings.length), views, asOf: today }
}

const idsBehind = (views: readonly PriceView[]): string[] =>
  views.flatMap(({ regular, today, best }) => [
    ...(regular?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(today?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(best ? [best.sightingId] : []),
  ])
