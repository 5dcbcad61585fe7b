import { Hono } from 'hono'
import { LivestockGroupInput } from '../../core/livestock/schema.ts'
import { strict, text } from '../../core/schema.ts'
import { audit, type AuditSubject } from '../../db/audit.ts'
import { createLivestockGroup, findLivestockGroup, listLivestockGroups, updateLivestockGroup } from '../../db/livestock-groups.ts'
import { LivestockGroupAnswer, LivestockGroupsAnswer } from '../answers/livestock.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf, unchanged } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Livestock groups'
const ByGroup = strict('Address', { id: text('Id', 1, 60) })
const subjectOf = ({ id, name }: { id: string; name: string }): AuditSubject => ({ kind: 'livestock_group', id, name })

export const livestockGroups = new Hono<Env>()
  .get(
    '/',
    operation('listLivestockGroups', {
      summary: 'Groups of animals with what they ask of the water',
      tag,
      answers: { 200: LivestockGroupsAnswer },
    }),
    async (c) => c.json({ items: await listLivestockGroups(c.get('db')) }, 200),
  )
  .post(
    '/',
    operation('createLivestockGroup', {
      summary: 'Add a group of our own',
      tag,
      answers: { 201: LivestockGroupAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('json', LivestockGroupInput),
    async (c) => {
      const actor = signedIn(c)
      const made = await transact(c.get('db'), async (trx) => {
        const outcome = await createLivestockGroup(trx, actor, `own-${crypto.randomUUID()}`, c.req.valid('json'))
        if (outcome.ok)
          await audit(trx, { actor, action: 'livestock_group_added', subject: subjectOf(outcome.value), after: outcome.value })
        return outcome
      })
      if (!made.ok) return refused(c, made.refusal, 'name')
      c.header('ETag', etagOf(made.value.version))
      return c.json(made.value, 201)
    },
  )
  .get(
    '/:id',
    operation('getLivestockGroup', { summary: 'One group', tag, answers: { 200: LivestockGroupAnswer, 304: null }, refuses: [404] }),
    valid('param', ByGroup),
    async (c) => {
      const group = await findLivestockGroup(c.get('db'), c.req.valid('param').id)
      if (group === undefined) return notFound(c, 'livestock group')
      c.header('ETag', etagOf(group.version))
      return unchanged(c, etagOf(group.version)) ? c.body(null, 304) : c.json(group, 200)
    },
  )
  .put(
    '/:id',
    operation('updateLivestockGroup', {
      summary: 'Change a group; quotes keep the figures that they were issued with',
      tag,
      answers: { 200: LivestockGroupAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ByGroup),
    valid('json', LivestockGroupInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const actor = signedIn(c)
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findLivestockGroup(trx, id)
        const outcome = await updateLivestockGroup(trx, actor, id, version, c.req.valid('json'))
        if (outcome.ok && outcome.value.version !== before?.version)
          await audit(trx, {
            actor,
            action: 'livestock_group_changed',
            subject: subjectOf(outcome.value),
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
