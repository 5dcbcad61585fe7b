import { createHash, createHmac } from 'node:crypto'
import { addDays, civilDateAt } from '../../core/dates.ts'
import { OPEN_PRICE_DAYS, openPriceFeed, type OpenPrice } from '../../core/other-clubs/open-prices.ts'
import { getInstall } from '../../db/install.ts'
import { ownOpenPrices, publishesPrices, type OwnPrice } from '../../db/open-prices.ts'
import type { Ctx } from '../context.ts'

/** What was told a moment ago is told again: whoever asks every second costs one reading in ten minutes. */
const KEPT_MS = 10 * 60_000

interface Told {
  madeAt: number
  day: string
  etag: string
  text: string
}
const kept = new WeakMap<object, Promise<Told>>()

/** 128 bits of a keyed hash: the same price has the same one for ever, and nobody learns from it when it was posted, as a row's own id would tell. */
const keyedId = (key: Uint8Array, what: 'price' | 'store', id: string): string =>
  createHmac('sha256', key).update(`open ${what}|${id}`).digest().subarray(0, 16).toString('base64url')

/** The feed as it is sent, or null while this club tells nothing. */
export async function openPrices(c: Ctx): Promise<Told | null> {
  const { clock } = c.get('deps')
  const db = c.get('db')
  if (!(await publishesPrices(db))) return null
  const before = await kept.get(db)?.catch(() => undefined)
  if (before && clock() >= before.madeAt && clock() - before.madeAt < KEPT_MS) return before
  const making = make(c)
  kept.set(db, making)
  return making
}

/** What was made before the manager said otherwise is not told any more. */
export const forgetOpenPrices = (c: Ctx): void => void kept.delete(c.get('db'))

async function make(c: Ctx): Promise<Told> {
  const { clock, linkKey } = c.get('deps')
  const db = c.get('db')
  const install = await getInstall(db)
  const day = civilDateAt(clock(), install.timeZone)
  const own = await ownOpenPrices(db, addDays(day, -OPEN_PRICE_DAYS))
  const prices = own.map((price) => openPriceOf(linkKey, price)).toSorted(byDayThenId)
  const text = JSON.stringify(openPriceFeed(install.name, day, prices))
  return { madeAt: clock(), day, etag: `"${createHash('sha256').update(text).digest('base64url')}"`, text }
}

function openPriceOf(key: Uint8Array, { id, storeId, store, ...price }: OwnPrice): OpenPrice {
  return { ...price, originId: keyedId(key, 'price', id), store: { key: keyedId(key, 'store', storeId), ...store } }
}

/** In the order of the ids that say nothing: that of posting would tell who goes shopping together. */
const byDayThenId = (a: OpenPrice, b: OpenPrice): number => b.seenOn.localeCompare(a.seenOn) || (a.originId < b.originId ? -1 : 1)
