import type { MiddlewareHandler } from 'hono'
import type { Ctx, Env } from '../context.ts'
import { answerProblem } from './answer-problem.ts'
import { problemBody } from './problem.ts'
import { siteOf } from './site.ts'

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS'])

type Verdict = 'pass' | 'cross_site' | 'no_proof'

const WORDS: Record<Exclude<Verdict, 'pass'>, string> = {
  cross_site: 'Another site started this request. Open this site itself and do it there.',
  no_proof: 'The request says neither Sec-Fetch-Site nor Origin. Use an up-to-date browser, or send it without a cookie.',
}

/** The host a request was sent to, however the reader's proxy spells the scheme. */
function isOwnOrigin(c: Ctx, origin: string): boolean {
  if (origin === siteOf(c).origin) return true
  return URL.canParse(origin) && new URL(origin).host === new URL(c.req.url).host && c.get('deps').config.publicUrl === null
}

function judge(c: Ctx): Verdict {
  const site = c.req.header('sec-fetch-site')
  if (site !== undefined) return site === 'same-origin' ? 'pass' : 'cross_site'
  const origin = c.req.header('origin')
  if (origin !== undefined) return isOwnOrigin(c, origin) ? 'pass' : 'cross_site'
  // A program without a browser sends neither, and without a cookie there is no one's session to ride on.
  return c.req.header('cookie') === undefined ? 'pass' : 'no_proof'
}

/**
 * Refuses writes that another site started, whatever their content type. Browsers say where a request comes from in Sec-Fetch-Site; where one does
 * not, Origin must be ours; a request with a cookie and neither is refused. Nothing here leans on a preflight.
 */
export const guardCrossSite: MiddlewareHandler<Env> = async (c, next) => {
  const verdict = SAFE.has(c.req.method) ? 'pass' : judge(c)
  if (verdict !== 'pass') return answerProblem(c, problemBody(403, 'cross_site', WORDS[verdict]))
  await next()
  return undefined
}
