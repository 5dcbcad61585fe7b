import { isProvenSince } from '../../db/sessions.ts'
import { PROOF_MINUTES } from '../../core/people/sign-in-limits.ts'
import { signedIn, type Ctx } from '../context.ts'

/** What is refused where the proof is missing; nothing was changed. */
export const PROOF_NEEDED = {
  code: 'password_needed',
  message: 'This gives or takes what a manager may do. Nothing was changed: give your own password once more, then it is done.',
} as const

/** Whether whoever is signed in gave the password in this session within the last minutes. Ask it before a transaction begins. */
export const isProven = (c: Ctx): Promise<boolean> =>
  isProvenSince(c.get('db'), signedIn(c).sessionHash, new Date(c.get('deps').clock() - PROOF_MINUTES * 60_000))
