import { Hono } from 'hono'
import * as z from 'zod'
import { yearOf } from '../../core/dates.ts'
import { SaleTimeInput } from '../../core/pricing/schema.ts'
import { refuse } from '../../core/result.ts'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { createSaleTime, deleteSaleTime, findSaleTime, updateSaleTime } from '../../db/sale-times.ts'
import { listStores } from '../../db/stores.ts'
import { HolidaysAnswer, SaleCalendarAnswer, SaleRunsAnswer, SaleTimeAnswer } from '../answers/sale-times.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'
import { comingRuns, saleCalendar, storesOf } from './calendar.ts'
import { saleTimeFault } from './first-days.ts'
import { holidayNames } from './holidays.ts'

const tag = 'Sale times'
const subject = { kind: 'install' } as const
const HolidayQuery = strict('Query', {
  country: z
    .string({ error: 'Country is missing.' })
    .regex(/^[A-Z]{2}$/, { error: 'Country is two capital letters of ISO 3166, like US.' }),
  subdivision: z.string().trim().max(60, { error: 'Subdivision has at most 60 characters.' }).optional(),
})

/** Why the calendar cannot follow what was sent; null where it can. */
async function calendarFault(c: Ctx, fields: SaleTimeInput) {
  const { today } = await installToday(c)
  const places = storesOf(fields, await listStores(c.get('db'), { archived: false }))
  const fault = saleTimeFault(fields, places, today)
  return fault && { code: 'invalid' as const, ...fault }
}

/** When sales are known to happen, and what the record says of them. */
export const saleTimes = new Hono<Env>()
  .get(
    '/',
    operation('getSaleCalendar', { summary: 'Sale times of the coming year with their record', tag, answers: { 200: SaleCalendarAnswer } }),
    async (c) => {
      const { today } = await installToday(c)
      return c.json({ asOf: today, rows: await saleCalendar(c.get('db'), today) }, 200)
    },
  )
  .get(
    '/holidays',
    operation('listHolidays', { summary: 'Holidays that a place keeps', tag, answers: { 200: HolidaysAnswer } }),
    valid('query', HolidayQuery),
    async (c) => {
      const { today } = await installToday(c)
      const { country, subdivision = null } = c.req.valid('query')
      return c.json({ names: holidayNames({ country, subdivision }, yearOf(today)) }, 200)
    },
  )
  .post(
    '/runs',
    operation('previewSaleTime', { summary: 'The next runs of a sale time that is being entered', tag, answers: { 200: SaleRunsAnswer } }),
    valid('json', SaleTimeInput),
    async (c) => {
      const fields = c.req.valid('json')
      const fault = await calendarFault(c, fields)
      if (fault) return refused(c, fault)
      const { today } = await installToday(c)
      return c.json({ runs: comingRuns(fields, await listStores(c.get('db'), { archived: false }), today) }, 200)
    },
  )
  .post(
    '/',
    operation('createSaleTime', { summary: 'Add a sale time', tag, answers: { 201: SaleTimeAnswer }, refuses: [404, 409, 410, 412] }),
    valid('json', SaleTimeInput),
    async (c) => {
      const fields = c.req.valid('json')
      const fault = await calendarFault(c, fields)
      if (fault) return refused(c, fault)
      const created = await transact(c.get('db'), async (trx) => {
        const outcome = await createSaleTime(trx, fields)
        if (outcome.ok) await audit(trx, { actor: signedIn(c), action: 'sale_time_added', subject, after: { saleTime: fields.name } })
        return outcome
      })
      if (!created.ok) return refused(c, created.refusal, 'name')
      c.header('ETag', etagOf(created.value.version))
      return c.json(created.value, 201)
    },
  )
  .put(
    '/:id',
    operation('updateSaleTime', {
      summary: 'Change a sale time',
      tag,
      answers: { 200: SaleTimeAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', SaleTimeInput),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const fields = c.req.valid('json')
      const fault = await calendarFault(c, fields)
      const updated = fault
        ? refuse(fault)
        : await transact(c.get('db'), async (trx) => {
            const before = await findSaleTime(trx, id)
            const outcome = await updateSaleTime(trx, id, version, fields)
            if (outcome.ok)
              await audit(trx, {
                actor: signedIn(c),
                action: 'sale_time_changed',
                subject,
                before: { saleTime: before?.name, when: before?.when, lengthDays: before?.lengthDays, stores: before?.storeIds.length },
                after: { saleTime: fields.name, when: fields.when, lengthDays: fields.lengthDays, stores: fields.storeIds.length },
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
    operation('deleteSaleTime', {
      summary: 'Take a sale time out; what was seen stays',
      tag,
      answers: { 204: null },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const { id } = c.req.valid('param')
      const deleted = await transact(c.get('db'), async (trx) => {
        const before = await findSaleTime(trx, id)
        const outcome = await deleteSaleTime(trx, id)
        if (outcome.ok) await audit(trx, { actor: signedIn(c), action: 'sale_time_deleted', subject, before: { saleTime: before?.name } })
        return outcome
      })
      return deleted.ok ? c.body(null, 204) : refused(c, deleted.refusal)
    },
  )
