import { Hono } from 'hono'
import { addDays } from '../../core/dates.ts'
import { MOST_AHEAD_DAYS } from '../../core/pricing/outlook-view.ts'
import { OutlookBody } from '../../core/pricing/schema.ts'
import { OutlookAnswer } from '../answers/outlook.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { installToday } from '../day.ts'
import { operation } from '../http/operation.ts'
import { invalid } from '../http/problem.ts'
import { valid } from '../http/valid.ts'
import { loadOutlook } from './load-outlook.ts'
import { outlookView } from './outlook-view.ts'

export const outlookRoutes = new Hono<Env>().post(
  '/',
  operation('getOutlook', { summary: 'What to expect of prices by a day', tag: 'Prices', answers: { 200: OutlookAnswer } }),
  valid('json', OutlookBody),
  async (c) => {
    const { install, today } = await installToday(c)
    const ask = c.req.valid('json')
    const last = addDays(today, MOST_AHEAD_DAYS)
    if (ask.until < today) return invalid(c, 'until', `The day ${ask.until} is past. Choose ${today} or later.`)
    if (ask.until > last) return invalid(c, 'until', `The day ${ask.until} is more than a year ahead. Choose ${last} or earlier.`)
    return c.json(outlookView(await loadOutlook(c.get('db'), ask, today, install, signedIn(c).id), ask, today, install.currency), 200)
  },
)
