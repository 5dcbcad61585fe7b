import { Hono } from 'hono'
import { CustomerInput } from '../../core/quote/schema.ts'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { createCustomer, eraseCustomer, findCustomer, listCustomers, updateCustomer } from '../../db/customers.ts'
import { listQuotes } from '../../db/quote-list.ts'
import { CustomerAnswer, CustomersAnswer, CustomerViewAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { ById, paging, searchText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'
import { setupViews } from '../setups/views.ts'

const tag = 'Customers'
const CustomerQuery = strict('Query', { q: searchText, ...paging(200, 500) })

export const customers = new Hono<Env>()
  .get(
    '/',
    operation('listCustomers', { summary: 'Customers by name', tag, answers: { 200: CustomersAnswer } }),
    valid('query', CustomerQuery),
    async (c) => {
      return c.json({ items: await listCustomers(c.get('db'), signedIn(c), c.req.valid('query')) }, 200)
    },
  )
  .post(
    '/',
    operation('createCustomer', { summary: 'Add a customer', tag, answers: { 201: CustomerAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', CustomerInput),
    async (c) => {
      const actor = signedIn(c)
      const created = await transact(c.get('db'), async (trx) => {
        const outcome = await createCustomer(trx, actor, c.req.valid('json'))
        if (outcome.ok) await audit(trx, { actor, action: 'customer_added', subject: { kind: 'customer', id: outcome.value.id } })
        return outcome
      })
      if (!created.ok) return refused(c, created.refusal)
      c.header('ETag', etagOf(created.value.version))
      return c.json(created.value, 201)
    },
  )
  .get(
    '/:id',
    operation('getCustomer', { summary: 'A customer with quotes and setups', tag, answers: { 200: CustomerViewAnswer }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      const customer = await findCustomer(c.get('db'), signedIn(c), id)
      if (customer === undefined) return notFound(c, 'customer')
      const quotes = await listQuotes(c.get('db'), signedIn(c), { customerId: id })
      c.header('ETag', etagOf(customer.version))
      return c.json({ customer, quotes, setups: await setupViews(c, { customerId: id }) }, 200)
    },
  )
  .put(
    '/:id',
    operation('updateCustomer', {
      summary: 'Change a customer',
      tag,
      answers: { 200: CustomerAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', CustomerInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findCustomer(trx, actor, id)
        const outcome = await updateCustomer(trx, actor, id, version, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, {
            actor,
            action: 'customer_changed',
            subject: { kind: 'customer', id },
            ...(before && { before }),
            after: outcome.value,
          })
        return outcome
      })
      if (!updated.ok) return refused(c, updated.refusal)
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
  .post(
    '/:id/erase',
    operation('eraseCustomer', {
      summary: 'Forget a person; issued quotes stay without the name',
      tag,
      answers: { 200: CustomerAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const { today } = await installToday(c)
      const erased = await transact(c.get('db'), async (trx) => {
        const outcome = await eraseCustomer(trx, actor, id, version, today)
        if (outcome.ok) await audit(trx, { actor, action: 'customer_erased', subject: { kind: 'customer', id } })
        return outcome
      })
      if (!erased.ok) return refused(c, erased.refusal)
      c.header('ETag', etagOf(erased.value.version))
      return c.json(erased.value, 200)
    },
  )
