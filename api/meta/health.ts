import { Hono } from 'hono'
import { isReachable } from '../../db/reach.ts'
import { HealthAnswer } from '../answers/people.ts'
import type { Env } from '../context.ts'
import { operation } from '../http/operation.ts'

const tag = 'Service'

/** For a supervisor: alive means the process answers; ready means it can do its work. */
export const health = new Hono<Env>()
  .get('/live', operation('checkLive', { summary: 'The process answers', tag, answers: { 200: HealthAnswer } }), (c) =>
    c.json({ status: 'live' as const }, 200),
  )
  .get(
    '/ready',
    operation('checkReady', { summary: 'It can do its work', tag, answers: { 200: HealthAnswer, 503: HealthAnswer } }),
    async (c) => {
      const { db, ready } = c.get('deps')
      if (ready?.() === false) return c.json({ status: 'stopping' as const }, 503)
      if (db === null) return c.json({ status: 'starting' as const }, 503)
      return (await isReachable(db)) ? c.json({ status: 'ready' as const }, 200) : c.json({ status: 'no_database' as const }, 503)
    },
  )
