import { Hono } from 'hono'
import * as z from 'zod'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { inTransaction } from '../../db/refusal.ts'
import { endOtherSessions, endSession, listSessions } from '../../db/sessions.ts'
import { OwnSessionsAnswer } from '../answers/people.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { problem } from '../http/problem.ts'
import { valid } from '../http/valid.ts'

const tag = 'Session'
const BySession = strict('Path', { id: z.string().regex(/^[0-9a-f]{64}$/, { error: 'This is not the id of a session.' }) })

/** Where a person is signed in. Everyone sees and ends their own alone. */
export const sessions = new Hono<Env>()
  .get('/', operation('listSessions', { summary: 'Where you are signed in', tag, answers: { 200: OwnSessionsAnswer } }), async (c) => {
    const { id, sessionHash } = signedIn(c)
    const own = await listSessions(c.get('db'), id, new Date(c.get('deps').clock()))
    const items = own.map(({ idHash, device, createdAt, lastSeenAt }) => ({
      id: idHash,
      device: device === '' ? ('computer' as const) : device,
      begunAt: createdAt.toISOString(),
      lastUsedAt: lastSeenAt.toISOString(),
      current: idHash === sessionHash,
    }))
    return c.json({ items }, 200)
  })
  .delete('/', operation('endOtherSessions', { summary: 'Sign out everywhere else', tag, answers: { 204: null } }), async (c) => {
    const actor = signedIn(c)
    await inTransaction(c.get('db'), async (trx) => {
      const ended = await endOtherSessions(trx, actor.id, actor.sessionHash)
      if (ended > 0) await audit(trx, { actor, action: 'sessions_ended', subject: { kind: 'person', id: actor.id } })
    })
    return c.body(null, 204)
  })
  .delete(
    '/:id',
    operation('endSession', { summary: 'Sign one device out', tag, answers: { 204: null }, refuses: [404] }),
    valid('param', BySession),
    async (c) => {
      const actor = signedIn(c)
      const ended = await inTransaction(c.get('db'), async (trx) => {
        const done = await endSession(trx, actor.id, c.req.valid('param').id)
        if (done) await audit(trx, { actor, action: 'sessions_ended', subject: { kind: 'person', id: actor.id } })
        return done
      })
      return ended ? c.body(null, 204) : problem(c, 404, 'not_found', 'This session has ended already.')
    },
  )
