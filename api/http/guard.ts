import type { MiddlewareHandler } from 'hono'
import type { Ctx, Env } from '../context.ts'
import { problem } from './problem.ts'
import { siteOf } from './site.ts'

const SAFE = new Set(['GET', 'HEAD', 'OPTIONS'])

type Verdict = 'pass' | 'cross_site' | 'no_proof'

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
  if (!SAFE.has(c.req.method)) {
    const verdict = judge(c)
    if (verdict === 'cross_site')
      return problem(c, 403, 'cross_site', 'Another site started this request. Open this site itself and do it there.')
    if (verdict === 'no_proof')
      return problem(
        c,
        403,
        'cross_site',
        'The request says neither Sec-Fetch-Site nor Origin. Use an up-to-date browser, or send it without a cookie.',
      )
  }
  await next()
  return undefined
}
