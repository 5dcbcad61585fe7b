import { Hono } from 'hono'
import { list, rowId, strict } from '../../core/schema.ts'
import { PriceViewsAnswer } from '../answers/pricing.ts'
import type { Env } from '../context.ts'
import { installToday } from '../day.ts'
import { findRegion } from '../../db/regions.ts'
import { operation } from '../http/operation.ts'
import { invalid } from '../http/problem.ts'
import { valid } from '../http/valid.ts'
import { loadPrices } from './load.ts'

/** Four builds of sixty lines, all different. */
const MOST_PRODUCTS = 240
const PriceViewsBody = strict('Request', {
  productIds: list('Products', rowId('Product'), 0, MOST_PRODUCTS),
  /** Only prices at stores of this region. */
  regionId: rowId('Region').optional(),
})

export const priceViewRoutes = new Hono<Env>().post(
  '/',
  operation('getPriceViews', { summary: 'What some products cost, store by store', tag: 'Prices', answers: { 200: PriceViewsAnswer } }),
  valid('json', PriceViewsBody),
  async (c) => {
    const { install, today } = await installToday(c)
    const { productIds, regionId } = c.req.valid('json')
    const { prices, products } = await loadPrices(c, productIds, today, install.mode)
    const region = regionId === undefined ? undefined : await findRegion(c.get('db'), regionId)
    if (regionId !== undefined && !region) return invalid(c, 'regionId', 'There is no such region.')
    return c.json(
      { prices: region ? prices.filter(({ storeId }) => region.storeIds.includes(storeId)) : prices, products, asOf: today },
      200,
    )
  },
)
