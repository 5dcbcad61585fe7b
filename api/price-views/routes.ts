import { Hono } from 'hono'
import { list, rowId, strict } from '../../core/schema.ts'
import { PriceViewsAnswer } from '../answers/pricing.ts'
import type { Env } from '../context.ts'
import { installToday } from '../day.ts'
import { operation } from '../http/operation.ts'
import { valid } from '../http/valid.ts'
import { loadPrices } from './load.ts'

/** Four builds of sixty lines, all different. */
const MOST_PRODUCTS = 240
const PriceViewsBody = strict('Request', { productIds: list('Products', rowId('Product'), 0, MOST_PRODUCTS) })

export const priceViewRoutes = new Hono<Env>().post(
  '/',
  operation('getPriceViews', { summary: 'What some products cost, store by store', tag: 'Prices', answers: { 200: PriceViewsAnswer } }),
  valid('json', PriceViewsBody),
  async (c) => {
    const { today } = await installToday(c)
    return c.json({ ...(await loadPrices(c, c.req.valid('json').productIds, today)), asOf: today }, 200)
  },
)
