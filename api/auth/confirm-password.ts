import { findPersonBySignIn, getPerson } from '../../db/people.ts'
import { signedIn, type Ctx } from '../context.ts'
import { invalid, problem } from '../http/problem.ts'
import { clientAddress } from '../http/site.ts'
import { verifyPassword } from './password-hash.ts'
import { admitSignIn, forgetFailures } from './throttle.ts'

/**
 * Asks whoever is signed in for the password once more, before something that an unattended screen should not give away. Null where it is
 * right, else the refusal; wrong ones count as failed sign-ins do.
 */
export async function confirmPassword(c: Ctx, password: string) {
  const person = await getPerson(c.get('db'), signedIn(c).id)
  const attempt = await admitSignIn(c.get('db'), person.signInName, clientAddress(c), c.get('deps').clock())
  if ('waitS' in attempt) {
    c.header('Retry-After', String(attempt.waitS))
    return problem(c, 429, 'too_many', `Too many tries. Wait ${Math.ceil(attempt.waitS / 60)} minutes, then try again.`)
  }
  const found = await findPersonBySignIn(c.get('db'), person.signInName)
  if (found === undefined || !(await verifyPassword(found.passwordHash, password)))
    return invalid(c, 'password', 'This is not your password. Check it; capitals count.')
  await forgetFailures(c.get('db'), attempt)
  return null
}
