import type { NotFoundHandler } from 'hono'
import type { Env } from '../context.ts'
import { answerProblem } from './answer-problem.ts'
import { problemBody } from './problem.ts'

/** For an address without a route: 405 with what it takes where only the method is wrong, else 404. */
export const answerNothing: NotFoundHandler<Env> = (c) => {
  const allowed = c.get('allows')(c.req.path)
  if (allowed.length === 0) return answerProblem(c, problemBody(404, 'not_found', 'There is nothing at this address.'))
  const allow = allowed.join(', ')
  return answerProblem(c, problemBody(405, 'method_not_allowed', `This address takes ${allow}.`), { Allow: allow })
}
