import { Hono } from 'hono'
import { ok } from '../../core/result.ts'
import { NewPassword, NewPerson } from '../../core/people/schema.ts'
import { audit } from '../../db/audit.ts'
import { getInstall, placeInstall } from '../../db/install.ts'
import { deleteOneUseLinks, findOneUseLink, useOneUseLink } from '../../db/one-use-links.ts'
import { usePasswordLink } from '../../db/password-links.ts'
import { createPerson, getPerson } from '../../db/people.ts'
import { strict } from '../../core/schema.ts'
import { LinkAnswer, SessionAnswer } from '../answers/people.ts'
import { hashPassword } from '../auth/password-hash.ts'
import { checkPassword } from '../auth/password-rules.ts'
import { tokenHash } from '../auth/tokens.ts'
import type { Ctx, Env } from '../context.ts'
import { ByToken } from '../http/inputs.ts'
import { operation } from '../http/operation.ts'
import { invalid, problem } from '../http/problem.ts'
import { refused } from '../http/refusal.ts'
import { linkOrigin } from '../http/site.ts'
import { noteWrongLink } from '../http/wrong-links.ts'
import { valid } from '../http/valid.ts'
import { sessionView } from '../session/view.ts'
import { transact } from '../transact.ts'

const tag = 'Session'
function gone(c: Ctx) {
  noteWrongLink(c)
  return problem(c, 410, 'gone', 'This link has been used or has expired. Ask for a new one.')
}
function needsHttps(c: Ctx) {
  const words = 'On plain http this can only be done on this computer itself: open the https address of this place.'
  return problem(c, 403, 'needs_https', words)
}
const SetPassword = strict('Password', { password: NewPassword })
const now = (c: Ctx): Date => new Date(c.get('deps').clock())

interface Joining {
  name: string
  signInName: string
  passwordHash: string
}

/** Uses the link up and makes the person, both or neither; the first manager says where the place is. */
function join(c: Ctx, hash: string, person: Joining, timeZone: string | undefined) {
  return transact(c.get('db'), async (trx) => {
    const used = await useOneUseLink(trx, hash, now(c))
    if (!used.ok) return used
    const { role, createdBy, purpose } = used.value
    const created = await createPerson(trx, { ...person, role, invitedBy: createdBy })
    if (created.ok && purpose === 'first_manager') await deleteOneUseLinks(trx, 'first_manager')
    if (!created.ok) return created
    const { id } = created.value
    await audit(trx, { actor: { id }, action: 'person_joined', subject: { kind: 'person', id }, after: { role } })
    const placed = purpose === 'first_manager' && timeZone !== undefined ? await placeInstall(trx, timeZone) : null
    if (placed) await audit(trx, { actor: { id }, action: 'install_changed', subject: { kind: 'install' }, ...placed })
    return ok(created.value)
  })
}

export const links = new Hono<Env>()
  .get(
    '/:token',
    operation('showLink', { summary: 'What a one-use link is for', tag, answers: { 200: LinkAnswer }, refuses: [410, 429] }),
    valid('param', ByToken),
    async (c) => {
      const link = await findOneUseLink(c.get('db'), tokenHash(c.req.valid('param').token), now(c))
      if (link === undefined) return gone(c)
      const { purpose, role, name, personId } = link
      const owner = personId === null ? null : await getPerson(c.get('db'), personId)
      return c.json({ purpose, role, name: owner?.name ?? name, signInName: owner?.signInName ?? null }, 200)
    },
  )
  .post(
    '/:token',
    operation('useLink', {
      summary: 'Create the account a one-use link is for, and sign in',
      tag,
      answers: { 201: SessionAnswer },
      refuses: [404, 409, 410, 412, 429],
    }),
    valid('param', ByToken),
    valid('json', NewPerson),
    async (c) => {
      if (linkOrigin(c) === null) return needsHttps(c)
      const hash = tokenHash(c.req.valid('param').token)
      const { name, signInName, password, timeZone } = c.req.valid('json')
      const link = await findOneUseLink(c.get('db'), hash, now(c))
      if (link === undefined || link.purpose === 'new_password') return gone(c)
      const checked = checkPassword(password, [(await getInstall(c.get('db'))).name, name, signInName])
      if (!checked.ok) return invalid(c, 'password', checked.refusal.message, checked.refusal.limit)
      const passwordHash = await hashPassword(password)
      const joined = await join(c, hash, { name, signInName, passwordHash }, timeZone)
      if (!joined.ok) return refused(c, joined.refusal, joined.refusal.code === 'sign_in_name_taken' ? 'signInName' : undefined)
      await c.get('auth').start(c, joined.value.id, passwordHash)
      return c.json(await sessionView(c, joined.value), 201)
    },
  )
  .put(
    '/:token/password',
    operation('setPasswordByLink', {
      summary: 'Set a new password with the link a manager made; ends all sessions of that person and signs in',
      tag,
      answers: { 200: SessionAnswer },
      refuses: [410, 429],
    }),
    valid('param', ByToken),
    valid('json', SetPassword),
    async (c) => {
      if (linkOrigin(c) === null) return needsHttps(c)
      const hash = tokenHash(c.req.valid('param').token)
      const { password } = c.req.valid('json')
      const link = await findOneUseLink(c.get('db'), hash, now(c))
      if (link === undefined || link.personId === null) return gone(c)
      const { name, signInName } = await getPerson(c.get('db'), link.personId)
      const checked = checkPassword(password, [(await getInstall(c.get('db'))).name, name, signInName])
      if (!checked.ok) return invalid(c, 'password', checked.refusal.message, checked.refusal.limit)
      const passwordHash = await hashPassword(password)
      const set = await transact(c.get('db'), async (trx) => {
        const outcome = await usePasswordLink(trx, hash, now(c), passwordHash)
        if (!outcome.ok) return outcome
        const { id } = outcome.value
        await audit(trx, { actor: { id }, action: 'password_link_used', subject: { kind: 'person', id } })
        return outcome
      })
      if (!set.ok) return gone(c)
      await c.get('auth').start(c, set.value.id, passwordHash)
      return c.json(await sessionView(c, { id: set.value.id, name: set.value.name, role: set.value.role }), 200)
    },
  )
