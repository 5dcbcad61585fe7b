import type { ErrorHandler } from 'hono'
import { HTTPException } from 'hono/http-exception'
import { isDiskFull, isUnreachable } from '../../db/reach.ts'
import { TooBusyError } from '../auth/password-hash.ts'
import type { Env } from '../context.ts'
import { OutlookBusy } from '../outlook/outlook-thread.ts'
import { PdfBusyError, PdfUnwantedError } from '../pdf/pdf-desk.ts'
import { PictureBusyError } from '../pictures/picture-desk.ts'
import { answerProblem as send } from './answer-problem.ts'
import { loggable } from './log.ts'
import { problemBody, ProblemError } from './problem.ts'

/** Long enough for a database to restart, short enough that nobody gives up. */
const RETRY_S = '5'

/** What is thrown and never returned: a machine that is down, a body that is no JSON, a bug. A bug's words stay in the log. */
export const answerFault: ErrorHandler<Env> = (error, c) => {
  if (error instanceof ProblemError) return send(c, error.problem, error.headers)
  if (error instanceof HTTPException && error.status === 400)
    return send(c, problemBody(400, 'malformed', 'The body is not well-formed. Check the JSON or the form.'))
  if (error instanceof TooBusyError)
    return send(c, problemBody(503, 'unavailable', 'Too many people are signing in at this moment. Try again shortly.'), {
      'Retry-After': RETRY_S,
    })
  if (error instanceof PictureBusyError)
    return send(c, problemBody(503, 'unavailable', 'Too many pictures are being made at this moment. Try again shortly.'), {
      'Retry-After': RETRY_S,
    })
  if (error instanceof OutlookBusy)
    return send(c, problemBody(503, 'unavailable', 'Too much is being reckoned at this moment. Try again shortly.'), {
      'Retry-After': RETRY_S,
    })
  if (error instanceof PdfBusyError)
    return send(c, problemBody(503, 'unavailable', 'Too many documents are being made at this moment. Try again shortly.'), {
      'Retry-After': RETRY_S,
    })
  // Nobody reads this answer; the log tells it from a failure of ours.
  if (error instanceof PdfUnwantedError) return send(c, problemBody(400, 'malformed', 'The reader went away before the document was made.'))
  if (isDiskFull(error)) {
    c.get('deps').log.error({ requestId: c.get('requestId'), err: loggable(error) }, 'the disk is full')
    return send(
      c,
      problemBody(507, 'no_room', 'The disk of the server is full. Nothing of this request was stored; make room, then send it again.'),
    )
  }
  if (isUnreachable(error)) {
    c.get('deps').log.warn({ requestId: c.get('requestId'), code: (error as { code?: unknown }).code }, 'the database does not answer')
    return send(
      c,
      problemBody(503, 'unavailable', 'The database does not answer at the moment. Nothing of this request was stored; try again shortly.'),
      { 'Retry-After': RETRY_S },
    )
  }
  c.get('deps').log.error({ requestId: c.get('requestId'), err: loggable(error) }, 'failed')
  return send(
    c,
    problemBody(500, 'internal', 'This should not have happened. Nothing more can be said here; the log has it under the request id.'),
  )
}
