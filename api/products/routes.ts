import { Hono } from 'hono'
import * as z from 'zod'
import type { Product } from '../../core/catalog/product.ts'
import { KindSchema, ProductInput } from '../../core/catalog/schema.ts'
import { parseSpecFilter } from '../../core/catalog/spec-filter.ts'
import { strict } from '../../core/schema.ts'
import { audit, type AuditSubject } from '../../db/audit.ts'
import { pictureHashes } from '../../db/pictures.ts'
import { createProduct, findProduct, listProducts, updateProduct } from '../../db/products.ts'
import { ProductAnswer, ProductsAnswer } from '../answers/catalog.ts'
import { PriceRecordAnswer } from '../answers/pricing.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById, paging, searchText, yesNoText } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { invalid, notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf, unchanged } from '../http/versions.ts'
import { transact } from '../transact.ts'
import { groupFault, kitFault } from './input.ts'
import { priceRecord } from './record.ts'

const tag = 'Products'
const ProductQuery = strict('Query', {
  kind: KindSchema.optional(),
  q: searchText,
  archived: yesNoText('Archived').default(false),
  spec: z
    .string({ error: 'What is stated stands once.' })
    .max(500, { error: 'What is asked of the spec has at most 500 characters.' })
    .default('')
    .meta({ description: 'Bounds and words of what the maker states, like powerW:100..,adjustable:yes; units of storage' }),
  ...paging(50, 500),
})
const RecordQuery = strict('Query', {
  whole: yesNoText('Whole').default(false).meta({ description: 'True for every sighting, however many there are' }),
})
const productSubject = ({ id, name }: Product): AuditSubject => ({ kind: 'product', id, name })

export const products = new Hono<Env>()
  .get(
    '/',
    operation('listProducts', { summary: 'Products by name', tag, answers: { 200: ProductsAnswer } }),
    valid('query', ProductQuery),
    async (c) => {
      const { spec, ...asked } = c.req.valid('query')
      const tests = parseSpecFilter(asked.kind, spec)
      if (!tests.ok) return invalid(c, 'spec', tests.refusal.words)
      const { items, total } = await listProducts(c.get('db'), { ...asked, spec: tests.value })
      const pictures = await pictureHashes(c.get('db'), items.map(({ id }) => id)) // prettier-ignore
      return c.json({ items, total, pictures }, 200)
    },
  )
  .post(
    '/',
    operation('createProduct', { summary: 'Add a product', tag, answers: { 201: ProductAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', ProductInput),
    async (c) => {
      const fields = c.req.valid('json')
      const fault = (await kitFault(c, null, fields)) ?? (await groupFault(c, fields))
      if (fault !== null) return fault
      const created = await transact(c.get('db'), async (trx) => {
        const outcome = await createProduct(trx, fields)
        if (outcome.ok)
          await audit(trx, { actor: signedIn(c), action: 'product_added', subject: productSubject(outcome.value), after: outcome.value })
        return outcome
      })
      if (!created.ok) return refused(c, created.refusal, 'name')
      c.header('ETag', etagOf(created.value.version))
      return c.json(created.value, 201)
    },
  )
  .get(
    '/:id',
    operation('getProduct', { summary: 'One product', tag, answers: { 200: ProductAnswer, 304: null }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const product = await findProduct(c.get('db'), c.req.valid('param').id)
      if (product === undefined) return notFound(c, 'product')
      c.header('ETag', etagOf(product.version))
      return unchanged(c, etagOf(product.version)) ? c.body(null, 304) : c.json(product, 200)
    },
  )
  .put(
    '/:id',
    operation('updateProduct', { summary: 'Change a product', tag, answers: { 200: ProductAnswer }, refuses: [404, 409, 410, 412, 428] }),
    valid('param', ById),
    valid('json', ProductInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const fields = c.req.valid('json')
      const fault = (await kitFault(c, id, fields)) ?? (await groupFault(c, fields))
      if (fault !== null) return fault
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findProduct(trx, id)
        const outcome = await updateProduct(trx, id, version, fields)
        if (outcome.ok)
          await audit(trx, {
            actor: signedIn(c),
            action: 'product_changed',
            subject: productSubject(outcome.value),
            ...(before && { before }),
            after: outcome.value,
          })
        return outcome
      })
      if (!updated.ok) return refused(c, updated.refusal, 'name')
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
  .get(
    '/:id/record',
    operation('getPriceRecord', {
      summary: 'Sightings of a product and what they say: the newest and those behind the figures, or the whole record',
      tag,
      answers: { 200: PriceRecordAnswer },
      refuses: [404],
    }),
    valid('param', ById),
    valid('query', RecordQuery),
    async (c) => {
      const record = await priceRecord(c, c.req.valid('param').id, c.req.valid('query').whole)
      return record === undefined ? notFound(c, 'product') : c.json(record, 200)
    },
  )
