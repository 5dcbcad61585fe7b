import type { Product } from '../../core/catalog/product.ts'
import type { CivilDate } from '../../core/dates.ts'
import { closedStoreFacts } from '../../core/pricing/closed-store-facts.ts'
import { factsWithTax } from '../../core/pricing/facts-with-tax.ts'
import { listedPrice, type ListedPrice } from '../../core/pricing/listed-price.ts'
import type { PriceRecord } from '../../core/pricing/record.ts'
import type { PriceView } from '../../core/pricing/price-view.ts'
import { rollUpByRegion, type RolledPart } from '../../core/pricing/roll-up-by-region.ts'
import { storeCurrency } from '../../core/pricing/foreign-stores.ts'
import type { StoreFacts } from '../../core/pricing/roll-up.ts'
import { stockOf } from '../../db/price-list.ts'
import { findProduct } from '../../db/products.ts'
import { listRegions } from '../../db/regions.ts'
import { seenRecordOfProduct } from '../../db/seen-prices.ts'
import { newestRowsOfProduct, sightingRowsOfProduct } from '../../db/sightings.ts'
import { listStores, ownStore } from '../../db/stores.ts'
import type { Ctx } from '../context.ts'
import { asRead } from '../board/own-board.ts'
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
  const { install, today } = await installToday(c)
  const { views, facts, sightings: counted } = await seenRecordOfProduct(db, productId, today)
  const rolledUp = await rolledUpOf(c, product, facts, install.currency)
  const sightings = whole
    ? await sightingRowsOfProduct(db, viewer, productId)
    : await newestRowsOfProduct(db, viewer, productId, { newest: NEWEST, others: idsBehind(views, rolledUp) })
  const listed = install.mode === 'store' ? await listedOf(c, product, today) : null
  return { product, sightings, total: whole ? sightings.length : Math.max(counted, sightings.length), views, rolledUp, listed, asOf: today }
}

async function listedOf(c: Ctx, { id, name, kind }: Product, asOf: CivilDate): Promise<ListedPrice | null> {
  const [own, [item]] = [await ownStore(c.get('db')), await stockOf(c.get('db'), [id])]
  const price = own && !own.archived && item ? listedPrice({ ...item, name, kind }, own, asOf) : undefined
  return price ? asRead(c, price) : null
}

/** With the tax of each store. Amounts of another currency compare with nothing here; of a store that is closed there is what was seen, and nothing to buy. */
async function rolledUpOf(c: Ctx, { id: productId, kind }: Product, facts: readonly StoreFacts[], home: string): Promise<RolledPart[]> {
  const stores = new Map((await listStores(c.get('db'), { archived: 'all' })).map((store) => [store.id, store]))
  const comparable = facts.flatMap((ofStore) => {
    const store = stores.get(ofStore.storeId)
    if (store === undefined || storeCurrency(store, home) !== home) return []
    const taxed = factsWithTax(ofStore, store, { productId, kind })
    return store.archived ? closedStoreFacts(taxed) : taxed
  })
  return rollUpByRegion(comparable, await listRegions(c.get('db')))
}

const idsBehind = (views: readonly PriceView[], rolledUp: readonly RolledPart[]): string[] => [
  ...views.flatMap(({ regular, today, best }) => [
    ...(regular?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(today?.sightingIds ?? []).slice(0, BEHIND_A_FIGURE),
    ...(best ? [best.sightingId] : []),
  ]),
  // Whatever else a region is told of stands in a view.
  ...rolledUp.flatMap(({ new: ofNew, used }) => [
    ...(ofNew?.drift?.sightingIds ?? []),
    ...(used?.lowest?.sightingIds ?? []),
    ...(used?.best.sightingIds ?? []),
  ]),
]
