import { Hono } from 'hono'
import { SetupsAnswer } from '../answers/quotes.ts'
import type { Env } from '../context.ts'
import { operation } from '../http/operation.ts'
import { setupViews } from './views.ts'

export const setups = new Hono<Env>().get(
  '/',
  operation('listSetups', { summary: 'Setups with their ticks', tag: 'Setups', answers: { 200: SetupsAnswer } }),
  async (c) => c.json({ items: await setupViews(c) }, 200),
)
