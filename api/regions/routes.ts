import { Hono } from 'hono'
import { RegionInput } from '../../core/catalog/schema.ts'
import { audit } from '../../db/audit.ts'
import { createRegion, deleteRegion, findRegion, listRegions, namesOfStores, updateRegion } from '../../db/regions.ts'
import { watchesOfRegion } from '../../db/watches.ts'
import { RegionAnswer, RegionsAnswer, RegionWatchesAnswer } from '../answers/catalog.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Stores'
const subject = ({ id, name }: { id: string; name: string }) => ({ kind: 'region', id, name }) as const

/** Sets of stores that the manager groups. */
export const regions = new Hono<Env>()
  .get('/', operation('listRegions', { summary: 'Regions by name', tag, answers: { 200: RegionsAnswer } }), async (c) =>
    c.json({ items: await listRegions(c.get('db')) }, 200),
  )
  .post(
    '/',
    operation('createRegion', { summary: 'Group stores as a region', tag, answers: { 201: RegionAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', RegionInput),
    async (c) => {
      const created = await transact(c.get('db'), async (trx) => {
        const outcome = await createRegion(trx, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, {
            actor: signedIn(c),
            action: 'region_added',
            subject: subject(outcome.value),
            after: { stores: await namesOfStores(trx, outcome.value.storeIds) },
          })
        return outcome
      })
      if (!created.ok) return refused(c, created.refusal, 'name')
      c.header('ETag', etagOf(created.value.version))
      return c.json(created.value, 201)
    },
  )
  .put(
    '/:id',
    operation('updateRegion', { summary: 'Change a region', tag, answers: { 200: RegionAnswer }, refuses: [404, 409, 410, 412, 428] }),
    valid('param', ById),
    valid('json', RegionInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findRegion(trx, id)
        const outcome = await updateRegion(trx, id, version, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, {
            actor: signedIn(c),
            action: 'region_changed',
            subject: subject(outcome.value),
            before: { name: before?.name, stores: await namesOfStores(trx, before?.storeIds ?? []) },
            after: { name: outcome.value.name, stores: await namesOfStores(trx, outcome.value.storeIds) },
          })
        return outcome
      })
      if (!updated.ok) return refused(c, updated.refusal)
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
  .get(
    '/:id/watches',
    operation('countRegionWatches', {
      summary: 'How many running watches go by a region: they end with it',
      tag,
      answers: { 200: RegionWatchesAnswer },
      refuses: [404],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      if (!(await findRegion(c.get('db'), id))) return notFound(c, 'region')
      return c.json({ watches: await watchesOfRegion(c.get('db'), id) }, 200)
    },
  )
  .delete(
    '/:id',
    operation('deleteRegion', {
      summary: 'Take a region out; its stores stay',
      tag,
      answers: { 204: null },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      const deleted = await transact(c.get('db'), async (trx) => {
        const before = await findRegion(trx, id)
        const outcome = await deleteRegion(trx, id)
        if (outcome.ok && before) await audit(trx, { actor: signedIn(c), action: 'region_deleted', subject: subject(before) })
        return outcome
      })
      return deleted.ok ? c.body(null, 204) : refused(c, deleted.refusal)
    },
  )
