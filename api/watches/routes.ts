import { Hono } from 'hono'
import { addDays } from '../../core/dates.ts'
import { MOST_AHEAD_DAYS } from '../../core/pricing/outlook-view.ts'
import { WatchInput, WatchTermsInput } from '../../core/pricing/watches/schema.ts'
import { MOST_WATCHES, type WatchTerms } from '../../core/pricing/watches/watch.ts'
import { createWatch, endWatch, findWatch, listWatches, updateWatch } from '../../db/watches.ts'
import { WatchAnswer, WatchesAnswer } from '../answers/watches.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { invalid, notFound } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf, unchanged } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'Watches'

/** Why a day cannot be waited for; null where it can, or none is named. */
async function dayFault(c: Ctx, { byDay }: WatchTerms) {
  if (byDay === null) return null
  const { today } = await installToday(c)
  const last = addDays(today, MOST_AHEAD_DAYS)
  if (byDay < today) return invalid(c, 'byDay', `The day ${byDay} is past. Choose ${today} or later.`)
  return byDay > last ? invalid(c, 'byDay', `The day ${byDay} is more than a year ahead. Choose ${last} or earlier.`) : null
}

/** Everybody's own: nobody sees what another waits for. */
export const watches = new Hono<Env>()
  .get(
    '/',
    operation('listWatches', {
      summary: 'Your own watches that run, and those whose region was taken out',
      tag,
      answers: { 200: WatchesAnswer },
    }),
    async (c) => c.json({ items: await listWatches(c.get('db'), signedIn(c)), most: MOST_WATCHES }, 200),
  )
  .post(
    '/',
    operation('createWatch', {
      summary: 'Watch a product or a requirement; the same id again is the same watch',
      tag,
      answers: { 200: WatchAnswer, 201: WatchAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('json', WatchInput),
    async (c) => {
      const watch = c.req.valid('json')
      const fault = await dayFault(c, watch)
      if (fault !== null) return fault
      const { install } = await installToday(c)
      const created = await transact(c.get('db'), (trx) => createWatch(trx, signedIn(c), watch, install.currency))
      if (!created.ok) return refused(c, created.refusal)
      c.header('ETag', etagOf(created.value.watch.version))
      return created.value.repeated ? c.json(created.value.watch, 200) : c.json(created.value.watch, 201)
    },
  )
  .get(
    '/:id',
    operation('getWatch', { summary: 'One of your own watches', tag, answers: { 200: WatchAnswer, 304: null }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const watch = await findWatch(c.get('db'), signedIn(c), c.req.valid('param').id)
      if (watch === undefined) return notFound(c, 'watch')
      c.header('ETag', etagOf(watch.version))
      return unchanged(c, etagOf(watch.version)) ? c.body(null, 304) : c.json(watch, 200)
    },
  )
  .put(
    '/:id',
    operation('updateWatch', {
      summary: 'Change the price, the day or the places of a watch',
      tag,
      answers: { 200: WatchAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', WatchTermsInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const terms = c.req.valid('json')
      const fault = await dayFault(c, terms)
      if (fault !== null) return fault
      const { install } = await installToday(c)
      const updated = await transact(c.get('db'), (trx) =>
        updateWatch(trx, signedIn(c), c.req.valid('param').id, version, terms, install.currency),
      )
      if (!updated.ok) return refused(c, updated.refusal)
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
  .delete(
    '/:id',
    operation('endWatch', {
      summary: 'End a watch, or take one off the list whose region was taken out; what it told stays',
      tag,
      answers: { 204: null },
      refuses: [404],
    }),
    valid('param', ById),
    async (c) => {
      const ended = await endWatch(c.get('db'), signedIn(c), c.req.valid('param').id)
      return ended.ok ? c.body(null, 204) : refused(c, ended.refusal)
    },
  )
