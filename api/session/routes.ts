import { Hono } from 'hono'
import { NewPassword, PasswordAgain, SignIn } from '../../core/people/schema.ts'
import { PROOF_MINUTES } from '../../core/people/sign-in-limits.ts'
import { ReaderUnitsSchema } from '../../core/install/schema.ts'
import type * as z from 'zod'
import { strict } from '../../core/schema.ts'
import { audit } from '../../db/audit.ts'
import { getInstall } from '../../db/install.ts'
import { findPersonBySignIn, getPerson, replacePasswordHash } from '../../db/people.ts'
import { setPersonUnits } from '../../db/person-units.ts'
import { changePassword, noteProof } from '../../db/sessions.ts'
import { SessionAnswer } from '../answers/people.ts'
import { confirmPassword } from '../auth/confirm-password.ts'
import { hashPassword, needsRehash, verifyNobody, verifyPassword } from '../auth/password-hash.ts'
import { checkPassword } from '../auth/password-rules.ts'
import { admitSignIn, forgetFailures } from '../auth/throttle.ts'
import type { Ctx, Env } from '../context.ts'
import { signedIn } from '../context.ts'
import { operation } from '../http/operation.ts'
import { invalid, problem } from '../http/problem.ts'
import { clientAddress, linkOrigin } from '../http/site.ts'
import { valid } from '../http/valid.ts'
import { sessionView } from './view.ts'

const tag = 'Session'
const PasswordChange = strict('Password change', { current: SignIn.shape.password, password: NewPassword })

const UnitsChange = strict('Units of a person', { units: ReaderUnitsSchema.nullable() })

const admit = (c: Ctx, signInName: string) => admitSignIn(c.get('db'), signInName, clientAddress(c), c.get('deps').clock())

function tooMany(c: Ctx, waitS: number) {
  c.header('Retry-After', String(waitS))
  return problem(c, 429, 'too_many', `Too many tries. Wait ${Math.ceil(waitS / 60)} minutes, then try again.`)
}

/** The person whose name and password these are. Takes the same time whether the name, the password or nothing is right. */
async function personOf(c: Ctx, { signInName, password }: z.output<typeof SignIn>) {
  const person = await findPersonBySignIn(c.get('db'), signInName)
  if (person === undefined) return verifyNobody(password)
  const right = await verifyPassword(person.passwordHash, password)
  if (!right || person.disabled) return false
  if (!needsRehash(person.passwordHash)) return person
  const passwordHash = await hashPassword(password)
  return (await replacePasswordHash(c.get('db'), person.id, person.passwordHash, passwordHash)) && { ...person, passwordHash }
}

function signInRefused(c: Ctx) {
  const words = 'There is no account with this sign-in name and password. Check both; capitals count in the password.'
  return problem(c, 401, 'sign_in_refused', words)
}

export const session = new Hono<Env>()
  .get('/', operation('getSession', { summary: 'Who is signed in', tag, answers: { 200: SessionAnswer } }), async (c) => {
    return c.json(await sessionView(c, c.get('who')), 200)
  })
  .post(
    '/',
    operation('signIn', { summary: 'Sign in', tag, answers: { 200: SessionAnswer }, refuses: [401, 429] }),
    valid('json', SignIn),
    async (c) => {
      if (linkOrigin(c) === null)
        return problem(
          c,
          403,
          'needs_https',
          'On plain http nobody can sign in but from this computer itself: set PUBLIC_URL to an https address and open that.',
        )
      const given = c.req.valid('json')
      const attempt = await admit(c, given.signInName)
      if ('waitS' in attempt) return tooMany(c, attempt.waitS)
      const person = await personOf(c, given)
      if (person === false || !(await c.get('auth').start(c, person.id, person.passwordHash))) return signInRefused(c)
      await forgetFailures(c.get('db'), attempt)
      return c.json(await sessionView(c, person), 200)
    },
  )
  .delete('/', operation('signOut', { summary: 'Sign out', tag, answers: { 204: null } }), async (c) => {
    await c.get('auth').end(c)
    c.header('Clear-Site-Data', '"cache"')
    return c.body(null, 204)
  })
  .post(
    '/proof',
    operation('proveOwnPassword', {
      summary: `Give your own password once more; for ${PROOF_MINUTES} minutes this session may then give and take what a manager may do`,
      tag,
      answers: { 204: null },
      refuses: [429],
    }),
    valid('json', PasswordAgain),
    async (c) => {
      const refusal = await confirmPassword(c, c.req.valid('json').password)
      if (refusal !== null) return refusal
      await noteProof(c.get('db'), signedIn(c).sessionHash, new Date(c.get('deps').clock()))
      return c.body(null, 204)
    },
  )
  .put(
    '/units',
    operation('setOwnUnits', {
      summary: 'Choose the units you read and type in; null: those of the club or store',
      tag,
      answers: { 200: SessionAnswer },
    }),
    valid('json', UnitsChange),
    async (c) => {
      const who = signedIn(c)
      await setPersonUnits(c.get('db'), who.id, c.req.valid('json').units)
      return c.json(await sessionView(c, who), 200)
    },
  )
  .put(
    '/password',
    operation('changePassword', {
      summary: 'Change your own password; ends every other session of yours',
      tag,
      answers: { 204: null },
      refuses: [429],
    }),
    valid('json', PasswordChange),
    async (c) => {
      const who = signedIn(c)
      const { current, password } = c.req.valid('json')
      const person = await getPerson(c.get('db'), who.id)
      const attempt = await admit(c, person.signInName)
      if ('waitS' in attempt) return tooMany(c, attempt.waitS)
      const found = await findPersonBySignIn(c.get('db'), person.signInName)
      if (found === undefined || !(await verifyPassword(found.passwordHash, current)))
        return invalid(c, 'current', 'This is not your present password.')
      const checked = checkPassword(password, [(await getInstall(c.get('db'))).name, person.name, person.signInName])
      if (!checked.ok) return invalid(c, 'password', checked.refusal.message, checked.refusal.limit)
      const { passwordHash: verifiedHash } = found
      const passwordHash = await hashPassword(password)
      const changed = await c
        .get('db')
        .transaction()
        .execute(async (trx) => {
          const done = await changePassword(trx, who.id, verifiedHash, passwordHash)
          if (done) await audit(trx, { actor: who, action: 'password_changed', subject: { kind: 'person', id: who.id } })
          return done
        })
      if (!changed) return invalid(c, 'current', 'This is not your present password.')
      await forgetFailures(c.get('db'), attempt)
      await c.get('auth').start(c, who.id, passwordHash)
      return c.body(null, 204)
    },
  )
