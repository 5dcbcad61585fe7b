import { Hono } from 'hono'
import { movesManagerPower } from '../../core/people/manager-power.ts'
import { Invitation, PersonChange } from '../../core/people/schema.ts'
import { refuse } from '../../core/result.ts'
import { audit } from '../../db/audit.ts'
import { createOneUseLink, listInvitations, withdrawInvitation } from '../../db/one-use-links.ts'
import { createPasswordLink } from '../../db/password-links.ts'
import { findPerson, listPeople, updatePerson } from '../../db/people.ts'
import { inTransaction } from '../../db/refusal.ts'
import { deleteSessionsOf } from '../../db/sessions.ts'
import { InvitationAnswer, InvitationsAnswer, PeopleAnswer, PersonAnswer } from '../answers/people.ts'
import { isProven, PROOF_NEEDED } from '../auth/proof.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'
import type { Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { ById } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { problem } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { siteOf } from '../http/site.ts'
import { valid } from '../http/valid.ts'
import { basedOn, etagOf } from '../http/versions.ts'
import { transact } from '../transact.ts'

const tag = 'People'
/** Long enough for someone who opens mail once a week. */
const INVITATION_MS = 7 * 86_400_000
/** It opens an account that is there already: no longer than until tomorrow at the same time. */
const PASSWORD_LINK_MS = 86_400_000

export const people = new Hono<Env>()
  .get('/', operation('listPeople', { summary: 'Everyone with an account', tag, answers: { 200: PeopleAnswer } }), async (c) => {
    return c.json({ items: await listPeople(c.get('db'), signedIn(c)) }, 200)
  })
  .post(
    '/invitations',
    operation('invitePerson', {
      summary: 'A one-use link that creates an account; for a manager’s the own password must have been given again',
      tag,
      answers: { 201: InvitationAnswer },
    }),
    valid('json', Invitation),
    async (c) => {
      const { name, role } = c.req.valid('json')
      if (role === 'manager' && !(await isProven(c))) return refused(c, PROOF_NEEDED)
      const token = newToken()
      const expiresAt = new Date(c.get('deps').clock() + INVITATION_MS)
      const actor = signedIn(c)
      await inTransaction(c.get('db'), async (trx) => {
        await createOneUseLink(trx, { tokenHash: tokenHash(token), purpose: 'invite', role, name, createdBy: actor.id, expiresAt })
        await audit(trx, { actor, action: 'invitation_made', subject: { kind: 'invitation' }, after: { role } })
      })
      const { origin, loopback } = siteOf(c)
      return c.json({ url: `${origin}/join/${token}`, expiresAt: expiresAt.toISOString(), thisComputerOnly: loopback }, 201)
    },
  )
  .get(
    '/invitations',
    operation('listInvitations', { summary: 'Invitations that nobody has used yet', tag, answers: { 200: InvitationsAnswer } }),
    async (c) => {
      const open = await listInvitations(c.get('db'), signedIn(c), new Date(c.get('deps').clock()))
      return c.json({ items: open.map(({ expiresAt, ...rest }) => ({ ...rest, expiresAt: expiresAt.toISOString() })) }, 200)
    },
  )
  .delete(
    '/invitations/:id',
    operation('withdrawInvitation', { summary: 'Take an invitation back', tag, answers: { 204: null }, refuses: [404] }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const gone = await inTransaction(c.get('db'), async (trx) => {
        const done = await withdrawInvitation(trx, actor, id)
        if (done) await audit(trx, { actor, action: 'invitation_withdrawn', subject: { kind: 'invitation', id } })
        return done
      })
      return gone ? c.body(null, 204) : problem(c, 404, 'not_found', 'There is no open invitation with this id: it was used or taken back.')
    },
  )
  .patch(
    '/:id',
    operation('updatePerson', {
      summary:
        'Change a role, disable or enable; ends all sessions of that person. Of a manager, or to make one, the own password must have been given again',
      tag,
      answers: { 200: PersonAnswer },
      refuses: [404, 409, 410, 412, 428],
    }),
    valid('param', ById),
    valid('json', PersonChange),
    async (c) => {
      const version = basedOn(c)
      if (typeof version !== 'number') return version
      const [actor, { id }, change] = [signedIn(c), c.req.valid('param'), c.req.valid('json')]
      const proven = await isProven(c)
      const updated = await transact(c.get('db'), async (trx) => {
        const before = await findPerson(trx, id)
        const outcome = await updatePerson(trx, actor, id, version, change)
        if (!outcome.ok) return outcome
        // Last: what cannot be done for another reason is not worth a password. Saved by somebody between the two readings, it counts as power.
        if (!proven && (before?.version !== version || movesManagerPower(before, change))) return refuse(PROOF_NEEDED)
        await deleteSessionsOf(trx, id)
        await audit(trx, {
          actor,
          action: 'person_changed',
          subject: { kind: 'person', id },
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
  .post(
    '/:id/password-link',
    operation('makePasswordLink', {
      summary:
        'A one-use link that sets a new password for this person; good for 24 hours, shown once. For a manager the own password must have been given again',
      tag,
      answers: { 201: InvitationAnswer },
      refuses: [404, 409, 410, 412],
    }),
    valid('param', ById),
    async (c) => {
      const [actor, { id }] = [signedIn(c), c.req.valid('param')]
      const token = newToken()
      const expiresAt = new Date(c.get('deps').clock() + PASSWORD_LINK_MS)
      const proven = await isProven(c)
      const made = await transact(c.get('db'), async (trx) => {
        const outcome = await createPasswordLink(trx, actor, id, { tokenHash: tokenHash(token), expiresAt })
        if (outcome.ok && outcome.value.role === 'manager' && !proven) return refuse(PROOF_NEEDED)
        if (outcome.ok) await audit(trx, { actor, action: 'password_link_made', subject: { kind: 'person', id } })
        return outcome
      })
      if (!made.ok) return refused(c, made.refusal)
      const { origin, loopback } = siteOf(c)
      return c.json({ url: `${origin}/join/${token}`, expiresAt: expiresAt.toISOString(), thisComputerOnly: loopback }, 201)
    },
  )
