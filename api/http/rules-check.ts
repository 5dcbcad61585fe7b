import type { Hono } from 'hono'
import { RULES, type OperationId } from '../auth/rules.ts'
import type { Env } from '../context.ts'

/** The operation ids of every route, by method and path. Middleware (any method) and the files of the web application are no routes. */
export function operationsOf(app: Hono<Env>): Map<string, OperationId | undefined> {
  const found = new Map<string, OperationId | undefined>()
  for (const { method, path, handler } of app.routes) {
    if (method === 'ALL' || path === '/*') continue
    const key = `${method} ${path}`
    const { operationId } = handler as { operationId?: OperationId }
    found.set(key, found.get(key) ?? operationId)
  }
  return found
}

/** Errors: throws where a route has no rule or a rule no route. An unguarded route must not start. */
export function demandRules(app: Hono<Env>): void {
  const operations = operationsOf(app)
  const bare = [...operations].filter(([, id]) => id === undefined).map(([route]) => route)
  if (bare.length > 0) throw new Error(`without a rule in api/auth/rules.ts: ${bare.join(', ')}`)
  const used = new Set(operations.values())
  const idle = Object.keys(RULES).filter((id) => !used.has(id as OperationId))
  if (idle.length > 0) throw new Error(`rules without a route: ${idle.join(', ')}`)
}
