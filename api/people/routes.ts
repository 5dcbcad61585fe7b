import { Hono } from 'hono'
import { Invitation, PersonChange } from '../../core/people/schema.ts'
import { createOneUseLink } from '../../db/one-use-links.ts'
import { listPeople, updatePerson } from '../../db/people.ts'
import { deleteSessionsOf } from '../../db/sessions.ts'
import { InvitationAnswer, PeopleAnswer, PersonAnswer } from '../answers/people.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { refused } from '../http/refusal.ts'
import { siteOf } from '../http/site.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'People'
/** Long enough for someone who opens mail once a week. */
const INVITATION_MS = 7 * 86_400_000

export const people = new Hono<Env>()
  .get('/', operation('listPeople', { summary: 'Everyone with an account', tag, answers: { 200: PeopleAnswer } }), async (c) => {
    return c.json({ items: await listPeople(c.get('db'), signedIn(c)) }, 200)
  })
  .post(
    '/invitations',
    operation('invitePerson', { summary: 'A one-use link that creates an account', tag, answers: { 201: InvitationAnswer } }),
    valid('json', Invitation),
    async (c) => {
      const { name, role } = c.req.valid('json')
      const token = newToken()
      const expiresAt = new Date(c.get('deps').clock() + INVITATION_MS)
      await createOneUseLink(c.get('db'), {
        tokenHash: tokenHash(token),
        purpose: 'invite',
        role,
        name,
        createdBy: signedIn(c).id,
        expiresAt,
      })
      return c.json({ url: `${siteOf(c).origin}/join/${token}`, expiresAt: expiresAt.toISOString() }, 201)
    },
  )
  .patch(
    '/:id',
    operation('updatePerson', {
      summary: 'Change a role, disable or enable; ends all sessions of that person',
      tag,
      answers: { 200: PersonAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', PersonChange),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const { id } = c.req.valid('param')
      const updated = await transact(c.get('db'), async (trx) => {
        const outcome = await updatePerson(trx, signedIn(c), id, version, c.req.valid('json'))
        if (outcome.ok) await deleteSessionsOf(trx, id)
        return outcome
      })
      if (!updated.ok) return refused(c, updated.refusal)
      c.header('ETag', etagOf(updated.value.version))
      return c.json(updated.value, 200)
    },
  )
