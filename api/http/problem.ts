import type { Context } from 'hono'
import type { ContentfulStatusCode } from 'hono/utils/http-status'

/** One fault of an input: which field, what its limit is, what to do. */
export interface FieldError {
  field: string
  limit?: string
  message: string
}

/** RFC 9457. `type` is stable; `detail` is for a person. */
export interface Problem {
  type: string
  title: string
  status: number
  detail: string
  requestId?: string
  errors: FieldError[]
}

/** Every kind of refusal, with its title. The key is the last part of the problem's `type`. */
export const PROBLEM_TITLES = {
  malformed: 'The request cannot be read',
  sign_in_needed: 'Sign in first',
  sign_in_refused: 'Name or password is wrong',
  not_allowed: 'Your role may not do this',
  password_needed: 'Your password is needed once more',
  cross_site: 'Refused: the request did not come from this site',
  needs_https: 'A secure address is needed',
  not_found: 'There is nothing here',
  gone: 'This is no longer valid',
  method_not_allowed: 'This address does not take that method',
  conflict: 'It has changed meanwhile',
  in_use: 'Something still names it',
  last_manager: 'One manager has to stay',
  exists: 'It is here already',
  not_yours: 'Somebody else has to do this',
  full: 'It takes no more',
  disabled: 'The account is disabled',
  not_offered: 'This place does not offer it',
  too_late: 'It is too late for this',
  busy: 'Something else has to end first',
  stale: 'Someone saved it meanwhile',
  too_large: 'Too much at once',
  media_type: 'This content type is not taken',
  invalid: 'Something needs correcting',
  version_needed: 'The version it was based on is missing',
  too_many: 'Too many tries',
  internal: 'Something broke here',
  no_room: 'There is no room for it',
  unavailable: 'Not available right now',
} as const
export type ProblemCode = keyof typeof PROBLEM_TITLES

const PROBLEM_JSON = { 'content-type': 'application/problem+json' }

export function problemBody(status: number, code: ProblemCode, detail: string, errors: FieldError[] = []): Problem {
  return { type: `/api/reference#${code}`, title: PROBLEM_TITLES[code], status, detail, errors }
}

/**
 * A refusal as an answer, typed for the client.
 *
 * @example return problem(c, 404, 'not_found', 'No product has this id.')
 */
export function problem<Status extends ContentfulStatusCode>(
  c: Context,
  status: Status,
  code: ProblemCode,
  detail: string,
  errors: FieldError[] = [],
) {
  return c.json<Problem, Status>(problemBody(status, code, detail, errors), status, PROBLEM_JSON)
}

/** 422 for one field. @example invalid(c, 'seenOn', 'The day is in the future.', 'today at the store: 2026-10-20') */
export function invalid(c: Context, field: string, message: string, limit?: string) {
  return problem(c, 422, 'invalid', message, [limit === undefined ? { field, message } : { field, limit, message }])
}

export const notFound = (c: Context, what: string) => problem(c, 404, 'not_found', `There is no ${what} with this id.`)

export const stale = (c: Context, what: string) =>
  problem(
    c,
    412,
    'stale',
    `This ${what} was saved by someone else after you opened it. Nothing of yours is stored yet: open the newer one and make your change again.`,
  )

/** Thrown where no handler can return: middleware far from the route, a machine that is down. */
export class ProblemError extends Error {
  readonly problem: Problem
  readonly headers: Record<string, string>
  constructor(problem: Problem, headers: Record<string, string> = {}) {
    super(problem.title)
    this.problem = problem
    this.headers = headers
  }
}
