import { Hono } from 'hono'
import * as z from 'zod'
import type { Store } from '../../core/catalog/store.ts'
import { StoreInput } from '../../core/catalog/schema.ts'
import { strict } from '../../core/schema.ts'
import { audit, type AuditSubject } from '../../db/audit.ts'
import { deleteStore, readStoreMentions } from '../../db/store-removal.ts'
import { createStore, findStore, listStores, updateStore } from '../../db/stores.ts'
import { StoreAnswer, StoresAnswer } from '../answers/catalog.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf, unchanged } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Stores'
const StoreQuery = strict('Query', {
  archived: z.enum(['true', 'false', 'all'], { error: 'Archived is one of: true, false, all.' }).default('all'),
})
const storeSubject = ({ id, name }: Store): AuditSubject => ({ kind: 'store', id, name })
const archivedOf = (text: 'true' | 'false' | 'all') => (text === 'all' ? 'all' : text === 'true')

export const stores = new Hono<Env>()
  .get(
    '/',
    operation('listStores', { summary: 'Stores by name', tag, answers: { 200: StoresAnswer } }),
    valid('query', StoreQuery),
    async (c) => {
      return c.json({ items: await listStores(c.get('db'), { archived: archivedOf(c.req.valid('query').archived) }) }, 200)
    },
  )
  .post(
    '/',
    operation('createStore', { summary: 'Add a store', tag, answers: { 201: StoreAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', StoreInput),
    async (c) => {
      const created = await transact(c.get('db'), async (trx) => {
        const outcome = await createStore(trx, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, { actor: signedIn(c), action: 'store_added', subject: storeSubject(outcome.value), after: outcome.value })
        return outcome
      })
      if (!created.ok) return refused(c, created.refusal, 'name')
      c.header('ETag', etagOf(created.value.version))
      return c.json(created.value, 201)
    },
  )
  .get(
    '/:id',
    operation('getStore', { summary: 'One store', tag, answers: { 200: StoreAnswer, 304: null }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const store = await findStore(c.get('db'), c.req.valid('param').id)
      if (store === undefined) return notFound(c, 'store')
      c.header('ETag', etagOf(store.version))
      return unchanged(c, etagOf(store.version)) ? c.body(null, 304) : c.json(store, 200)
    },
  )
  .put(
    '/:id',
    operation('updateStore', { summary: 'Change a store', tag, answers: { 200: StoreAnswer }, refuses: [404, 409, 410, 412, 428] }),
    valid('param', ById),
    valid('json', StoreInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findStore(trx, id)
        const outcome = await updateStore(trx, id, version, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, {
            actor: signedIn(c),
            action: 'store_changed',
            subject: storeSubject(outcome.value),
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
  .delete(
    '/:id',
    operation('deleteStore', {
      summary: 'Delete a store that nothing refers to',
      tag,
      answers: { 204: null },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const mentions = await readStoreMentions(c.get('db'), c.req.valid('param').id)
      const deleted = await transact(c.get('db'), async (trx) => {
        const outcome = await deleteStore(trx, mentions)
        if (outcome.ok)
          await audit(trx, { actor: signedIn(c), action: 'store_deleted', subject: storeSubject(outcome.value), before: outcome.value })
        return outcome
      })
      return deleted.ok ? c.body(null, 204) : refused(c, deleted.refusal)
    },
  )
