import type { ErrorHandler } from 'hono'
import { HTTPException } from 'hono/http-exception'
import { isUnreachable } from '../../db/reach.ts'
import { TooBusyError } from '../auth/password-hash.ts'
import type { Ctx, Env } from '../context.ts'
import { problemPage } from '../../web/pages/problem-page.ts'
import { pagePolicy, setPolicy } from './headers.ts'
import type { Problem } from './problem.ts'
import { problemBody, ProblemError } from './problem.ts'

/** Long enough for a database to restart, short enough that nobody gives up. */
const RETRY_S = '5'

/** A customer's or beginner's page: its reader is shown a page, and a program problem details. */
const isPage = (c: Ctx): boolean => /^\/[qs]\//.test(c.req.path) && (c.req.header('accept') ?? '').includes('text/html')

function send(c: Ctx, body: Problem, headers: Record<string, string> = {}): Response | Promise<Response> {
  if (isPage(c)) {
    setPolicy(c, pagePolicy())
    const { status, title, detail } = body
    return c.html(
      problemPage({ status, title, detail, contact: null, backPath: c.req.method === 'GET' ? c.req.path : null }),
      status as 500,
      headers,
    )
  }
  return c.json({ ...body, requestId: c.get('requestId') }, body.status as 500, { 'content-type': 'application/problem+json', ...headers })
}

/** What is thrown and never returned: a machine that is down, a body that is no JSON, a bug. A bug's words stay in the log. */
export const answerFault: ErrorHandler<Env> = (error, c) => {
  if (error instanceof ProblemError) return send(c, error.problem, error.headers)
  if (error instanceof HTTPException && error.status === 400)
    return send(c, problemBody(400, 'malformed', 'The body is not well-formed. Check the JSON or the form.'))
  if (error instanceof TooBusyError)
    return send(c, problemBody(503, 'unavailable', 'Too many people are signing in at this moment. Try again shortly.'), {
      'Retry-After': RETRY_S,
    })
  if (isUnreachable(error)) {
    c.get('deps').log.warn({ requestId: c.get('requestId'), code: (error as { code?: unknown }).code }, 'the database does not answer')
    return send(
      c,
      problemBody(503, 'unavailable', 'The database does not answer at the moment. Nothing of this request was stored; try again shortly.'),
      { 'Retry-After': RETRY_S },
    )
  }
  c.get('deps').log.error({ requestId: c.get('requestId'), err: error }, 'failed')
  return send(
    c,
    problemBody(500, 'internal', 'This should not have happened. Nothing more can be said here; the log has it under the request id.'),
  )
}
