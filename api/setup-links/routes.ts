import { Hono } from 'hono'
import * as z from 'zod'
import { ReadingInput, TickInput } from '../../core/startup/schema.ts'
import { rowId } from '../../core/schema.ts'
import { addReading, removeReading } from '../../db/setup-readings.ts'
import { tickStep } from '../../db/setup-progress.ts'
import { LinkedSetupAnswer, ReadingAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { ByToken } from '../http/inputs.ts'
import { linkRefused } from '../http/open-link.ts'
import { operation } from '../http/operation.ts'
import { invalid } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { valid } from '../http/valid.ts'
import { readingDayFault } from './days.ts'
import { givenWord, openSetupLink, tickFault } from './open.ts'

const tag = 'Links'
const ByReading = z.strictObject({ token: ByToken.shape.token, id: rowId('Id') })
const ByStep = z.strictObject({ token: ByToken.shape.token, stepId: z.string().max(100) })

export const setupLinkRoutes = new Hono<Env>()
  .get(
    '/:token',
    operation('getSetupByLink', {
      summary: 'A setup’s steps and readings, for whoever holds its link',
      tag,
      answers: { 200: LinkedSetupAnswer },
      refuses: [404, 410, 429],
    }),
    valid('param', ByToken),
    async (c) => {
      const opened = await openSetupLink(c, c.req.valid('param').token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const { setup, install, today } = opened
      const { plan, quoteWithdrawn, units, startedOn, ticks, readings } = setup
      return c.json({ plan, quoteWithdrawn, units, contact: install.contact, startedOn, ticks, readings, today }, 200)
    },
  )
  .put(
    '/:token/ticks/:stepId',
    operation('tickSetupByLink', {
      summary: 'Tick a step, or take the tick back',
      tag,
      answers: { 204: null },
      refuses: [404, 409, 410, 412, 429],
    }),
    valid('param', ByStep),
    valid('json', TickInput),
    async (c) => {
      const { token, stepId } = c.req.valid('param')
      const opened = await openSetupLink(c, token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const { done, tested, on = opened.today } = c.req.valid('json')
      const tick = { stepId, on, tested }
      const fault = done ? tickFault(tick, opened) : null
      if (fault !== null) return invalid(c, fault.field, fault.message)
      const ticked = await tickStep(c.get('db'), opened.setup.id, stepId, done, on, givenWord(tick, opened))
      return ticked.ok ? c.body(null, 204) : refused(c, ticked.refusal, 'stepId')
    },
  )
  .post(
    '/:token/readings',
    operation('addReadingByLink', {
      summary: 'Add a water test; the same id again is the same test',
      tag,
      answers: { 200: ReadingAnswer, 201: ReadingAnswer },
      refuses: [404, 409, 410, 412, 429],
    }),
    valid('param', ByToken),
    valid('json', ReadingInput),
    async (c) => {
      const opened = await openSetupLink(c, c.req.valid('param').token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const reading = c.req.valid('json')
      const fault = readingDayFault(reading.takenOn, opened)
      if (fault !== null) return invalid(c, 'takenOn', fault)
      const added = await addReading(c.get('db'), opened.setup.id, reading)
      if (!added.ok) return refused(c, added.refusal, 'id')
      return added.value.repeated ? c.json(added.value.reading, 200) : c.json(added.value.reading, 201)
    },
  )
  .delete(
    '/:token/readings/:id',
    operation('removeReadingByLink', {
      summary: 'Take a water test out of the log',
      tag,
      answers: { 204: null },
      refuses: [404, 410, 429],
    }),
    valid('param', ByReading),
    async (c) => {
      const { token, id } = c.req.valid('param')
      const opened = await openSetupLink(c, token)
      if (!opened.found) return linkRefused(c, opened.gone)
      const removed = await removeReading(c.get('db'), opened.setup.id, id)
      return removed.ok ? c.body(null, 204) : refused(c, removed.refusal)
    },
  )
