import * as z from 'zod'
import { timeZone } from '../catalog/schema.ts'
import { isPlainText } from '../plain-text.ts'
import { oneOf, strict, text, yesNo } from '../schema.ts'
import { isMailAddress } from './mail-address.ts'
import { ROLES } from './roles.ts'
import { foldSignInName } from './sign-in-name.ts'

/** NIST SP 800-63B-4, 3.1.1.2: 15 characters where the password is the only factor; at least 64 must be allowed. */
export const SHORTEST_PASSWORD = 15
/** Ours: long enough for any sentence, short enough that hashing it cannot be used to tie the server up. */
export const LONGEST_PASSWORD = 256

/** Code points, as the standard counts them: one emoji is one. */
const characters = (value: string): number => Array.from(value).length

/** A new password. Any character counts, spaces and emoji too; nothing is cut off, nothing else is demanded. */
export const NewPassword = z
  .string({ error: (issue) => (issue.input === undefined ? 'Password is missing.' : 'Password is text.') })
  .min(1, { error: 'Password is empty. Fill it in.', abort: true })
  .refine((value) => characters(value) >= SHORTEST_PASSWORD, {
    error: `Password is too short: at least ${SHORTEST_PASSWORD} characters. A sentence you remember is best.`,
  })
  .refine((value) => characters(value) <= LONGEST_PASSWORD, { error: `Password is too long: at most ${LONGEST_PASSWORD} characters.` })
  .refine((value) => value.isWellFormed(), { error: 'Password has half of a character in it. Type it again.' })
  .meta({ minLength: SHORTEST_PASSWORD })

/** What a person signs in with. Compared, and kept, without regard to case or to the form of a letter. */
export const SignInName = text('Sign-in name', 2, 60)
  .overwrite(foldSignInName)
  .regex(/^[\p{L}\p{N}][\p{L}\p{N}._@+-]*$/u, {
    error: 'Sign-in name has letters, digits and . _ - @ + only, and begins with a letter or a digit.',
  })

const PersonName = text('Name', 1, 80)

export const NewPerson = strict('Person', {
  name: PersonName,
  signInName: SignInName,
  password: NewPassword,
  /** Of the place, as the first manager's browser has it; of anybody else it counts for nothing. */
  timeZone: timeZone.optional(),
})
export type NewPerson = z.output<typeof NewPerson>

/** No policy here: an old password, or a wrong one, is looked up and refused, never judged. Only what no database can look up is refused. */
export const SignIn = strict('Sign-in', {
  signInName: z
    .string({ error: 'Sign-in name is missing.' })
    .trim()
    .toLowerCase()
    .min(1, { error: 'Sign-in name is empty.' })
    .max(200, { error: 'Sign-in name is too long.' })
    .refine(isPlainText, { error: 'Sign-in name has a control character or half of a character. Type it again without it.' }),
  password: z
    .string({ error: 'Password is missing.' })
    .min(1, { error: 'Password is empty.' })
    .max(4 * LONGEST_PASSWORD, { error: 'Password is too long.' }),
})
export type SignIn = z.output<typeof SignIn>

/** The password of whoever is signed in, once more. */
export const PasswordAgain = strict('Password', { password: SignIn.shape.password })

export const Invitation = strict('Invitation', { name: PersonName, role: oneOf('Role', ROLES) })
export type Invitation = z.output<typeof Invitation>

export const PersonChange = strict('Change', { role: oneOf('Role', ROLES).optional(), disabled: yesNo('Disabled').optional() }).refine(
  (change) => change.role !== undefined || change.disabled !== undefined,
  { error: 'Nothing to change: give a role, or say whether the account is disabled.' },
)
export type PersonChange = z.output<typeof PersonChange>

/** Where a person wants to hear of deals. Compared and kept as it was typed: what stands before the @ is the mail server's business. */
export const MailAddressInput = strict('Address', {
  address: text('E-mail address', 3, 254).refine(isMailAddress, {
    error: 'E-mail address is one address and nothing else, like ida@post.example. A host with other letters is written with xn--.',
  }),
})

const key = (label: string, length: number) =>
  z
    .string({ error: `${label} is missing.` })
    .regex(new RegExp(`^[A-Za-z0-9_-]{${length}}$`), { error: `${label} has ${length} characters in base64url, as the browser gives it.` })

/** What a browser gives for messages, as the Push API spells it: 65 bytes of a key, 16 of a secret (RFC 8291). */
export const DeviceInput = strict('Device', {
  endpoint: z.string({ error: 'Endpoint is missing.' }).max(2_000, { error: 'Endpoint has at most 2000 characters.' }),
  keys: strict('Keys', { p256dh: key('Key p256dh', 87), auth: key('Key auth', 22) }),
})
