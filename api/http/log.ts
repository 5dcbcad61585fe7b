import { randomUUID } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'
import type { Env } from '../context.ts'

/** A token in a path opens what it names: the log keeps the kind of link and not the link. @example redacted('/q/AbC…/pdf') // '/q/…/pdf' */
export function redacted(path: string): string {
  return path.replace(/^(\/(?:q|s|join|api\/links|api\/quote-links|api\/setup-links)\/)[^/]+/, '$1…')
}

/** One line a request: what, how it ended, how long. No names, no addresses, no bodies, no queries. */
export const requestLog: MiddlewareHandler<Env> = async (c, next) => {
  const requestId = randomUUID()
  c.set('requestId', requestId)
  c.header('X-Request-Id', requestId)
  const started = performance.now()
  await next()
  const line = {
    requestId,
    method: c.req.method,
    path: redacted(c.req.path),
    status: c.res.status,
    ms: Math.round(performance.now() - started),
    role: c.get('who')?.role,
  }
  if (c.res.status === 500) c.get('deps').log.error(line, 'answered')
  else c.get('deps').log.info(line, 'answered')
}
