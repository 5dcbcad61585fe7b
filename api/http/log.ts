import { randomUUID } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'
import type { Env } from '../context.ts'

/** A token in a path opens what it names: the log keeps the kind of link and not the link. @example redacted('/q/AbC…/pdf') // '/q/…/pdf' */
export function redacted(path: string): string {
  return path.replace(/^(\/(?:q|s|join|m\/confirm|m\/stop|api\/links|api\/quote-links|api\/setup-links|feeds)\/)[^/]+/, '$1…')
}

/** A failure as the log keeps it. */
export interface Loggable {
  name: string
  message: string
  code?: unknown
  constraint?: unknown
  stack?: string | undefined
  /** Its cause: under a name of its own, since the log writer folds `cause` into the message and drops its code. */
  because?: Loggable
}

/**
 * What the log keeps of a failure. A database's error also carries the statement, its values and the row in question: names, hashes, what
 * customers wrote. None of that goes into a log.
 */
export function loggable(error: unknown): Loggable {
  if (!(error instanceof Error)) return { name: typeof error, message: String(error) }
  // The two drivers spell it differently.
  const { code, constraint, constraint_name: constraintName } = error as { code?: unknown; constraint?: unknown; constraint_name?: unknown }
  const { name, message, stack, cause } = error
  return {
    name,
    message,
    code,
    constraint: constraint ?? constraintName,
    stack,
    ...(cause === undefined ? {} : { because: loggable(cause) }),
  }
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
