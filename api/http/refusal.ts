import type { Context } from 'hono'
import type { ProblemCode } from './problem.ts'
import { problem } from './problem.ts'

/** A rule's or a repository's refusal, as they all look. */
export interface SaidRefusal {
  code: string
  message: string
  field?: string
  retryAfterS?: number
}

type RefusedStatus = 403 | 404 | 409 | 410 | 412 | 422 | 429
/** Which status a refusal becomes; what is not here is about a field of the input: 422. */
const BY_CODE: Record<string, readonly [RefusedStatus, ProblemCode]> = {
  password_needed: [403, 'password_needed'],
  not_found: [404, 'not_found'],
  stale: [412, 'stale'],
  link_gone: [410, 'gone'],
  exists: [409, 'exists'],
  closed: [409, 'conflict'],
  issued: [409, 'conflict'],
  answered: [409, 'conflict'],
  superseded: [409, 'conflict'],
  lapsed: [409, 'conflict'],
  withdrawn: [409, 'conflict'],
  last_manager: [409, 'last_manager'],
  in_use: [409, 'in_use'],
  own: [409, 'not_yours'],
  not_yours: [409, 'not_yours'],
  full: [409, 'full'],
  disabled: [409, 'disabled'],
  too_late: [409, 'too_late'],
  too_many: [429, 'too_many'],
}

/** The one place that turns a refusal into problem details. `field` stands in where the refusal names none. */
export function refused(c: Context, refusal: SaidRefusal, field?: string) {
  const [status, code] = BY_CODE[refusal.code] ?? ([422, 'invalid'] as const)
  const named = refusal.field ?? (status === 429 ? undefined : field)
  if (refusal.retryAfterS !== undefined) c.header('Retry-After', String(refusal.retryAfterS))
  return problem(c, status, code, refusal.message, named === undefined ? [] : [{ field: named, message: refusal.message }])
}
