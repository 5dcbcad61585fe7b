import { Hono } from 'hono'
import { StockItemInput } from '../../core/pricing/schema.ts'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { findStock, listStock, saveStock } from '../../db/price-list.ts'
import { StockAnswer, StockListAnswer } from '../answers/pricing.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { ById, paging, searchText, yesNoText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Price list'
const StockQuery = strict('Query', { q: searchText, listed: yesNoText('Listed').optional(), ...paging(100, 500) })

/** The own store's prices, numbers and stock. In store mode every quote is made of them. */
export const priceList = new Hono<Env>()
  .get(
    '/',
    operation('listPriceList', { summary: 'Products with their own price, number and stock', tag, answers: { 200: StockListAnswer } }),
    valid('query', StockQuery),
    async (c) => {
      const { today } = await installToday(c)
      return c.json({ ...(await listStock(c.get('db'), c.req.valid('query'))), today }, 200)
    },
  )
  .get(
    '/:id',
    operation('getPriceListEntry', { summary: 'One product of the price list', tag, answers: { 200: StockAnswer }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const row = await findStock(c.get('db'), c.req.valid('param').id)
      if (row === undefined) return notFound(c, 'product')
      c.header('ETag', etagOf(row.version))
      return c.json(row, 200)
    },
  )
  .put(
    '/:id',
    operation('savePriceListEntry', {
      summary: 'Set own prices, number and stock of a product',
      tag,
      answers: { 200: StockAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', StockItemInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const saved = await transact(c.get('db'), async (trx) => {
        const before = await findStock(trx, id)
        const outcome = await saveStock(trx, version, { productId: id, ...c.req.valid('json') })
        if (outcome.ok) {
          const subject = { kind: 'product', id, name: outcome.value.name } as const
          await audit(trx, { actor: signedIn(c), action: 'product_changed', subject, ...(before && { before }), after: outcome.value })
        }
        return outcome
      })
      if (!saved.ok) return refused(c, saved.refusal)
      c.header('ETag', etagOf(saved.value.version))
      return c.json(saved.value, 200)
    },
  )
