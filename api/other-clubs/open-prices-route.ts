import { Hono } from 'hono'
import type { Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { unchanged } from '../http/versions.ts'
import { openPrices } from './open-prices.ts'

export const OPEN_PRICES_PATH = '/api/open-prices'
const TYPE = 'application/ld+json'
/** Asked for again each time, so that "no longer" holds at once. */
const CACHED = 'no-cache'

/** The prices of this club for other clubs, where its manager said so. */
export const openPricesRoute = new Hono<Env>().get(
  '/',
  operation('showOpenPrices', {
    summary: 'Prices that members saw, for other clubs: schema.org offers without names of members',
    tag: 'Other clubs',
    answers: { 200: TYPE, 304: null },
    refuses: [404],
  }),
  async (c) => {
    const told = await openPrices(c)
    if (told === null) return notFound(c, 'feed of prices')
    c.header('ETag', told.etag)
    c.header('Cache-Control', CACHED)
    if (unchanged(c, told.etag)) return c.body(null, 304)
    c.header('Content-Type', TYPE)
    return c.body(told.text, 200)
  },
)
