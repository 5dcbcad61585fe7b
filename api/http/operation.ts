import type { MiddlewareHandler } from 'hono'
import { describeRoute, uniqueSymbol } from 'hono-openapi'
import type { z } from 'zod'
import { atLeast } from '../../core/people/roles.ts'
import { answerRef } from '../answers/registry.ts'
import type { OperationId } from '../auth/rules.ts'
import { RULES } from '../auth/rules.ts'
import type { Env } from '../context.ts'
import { boundBody, mostBytes } from './body.ts'
import { problem } from './problem.ts'

/** A schema, the name of another content type, or several of them to choose from. */
type Content = z.ZodType | string | ReadonlyArray<z.ZodType | string>

/** How a route is described; from it comes the OpenAPI document. */
export interface Description {
  summary: string
  tag: string
  /** Good answers by status. A schema must be registered in answers/registry.ts; text names another content type; null is an empty body. */
  answers: Partial<Record<200 | 201 | 202 | 204 | 303 | 304 | 503, Content | null>>
  /** What is sent, where no validator reads it: a file. */
  body?: Content
  /** Statuses it may refuse with, beside those every route has. */
  refuses?: number[]
  hide?: boolean
  /** Content types of a body that is a file and no JSON. */
  takes?: readonly string[]
}

const MEANING: Record<number, string> = {
  200: 'Done', 201: 'Created', 204: 'Done, nothing to say', 303: 'See the page', 304: 'The copy you hold is right', 400: 'Cannot be read', 401: 'Sign in first', 403: 'Not allowed', 404: 'Nothing here',
  409: 'It is no longer in a state for this', 410: 'No longer valid', 412: 'Someone saved it meanwhile', 413: 'Too large', 415: 'Content type not taken', 422: 'Fields need correcting',
  428: 'If-Match is missing', 429: 'Too many tries', 500: 'Something broke here', 503: 'Not available right now', 507: 'No room on the disk',
} // prettier-ignore

function contentOf(given: Content) {
  const options = Array.isArray(given) ? (given as ReadonlyArray<z.ZodType | string>) : [given as z.ZodType | string]
  const shapes = options.filter((option) => typeof option !== 'string').map((schema) => ({ $ref: answerRef(schema) }))
  const [only, another] = shapes
  const texts = options.filter((option) => typeof option === 'string').map((type) => [type, { schema: { type: 'string' as const } }])
  const json = only === undefined ? {} : { 'application/json': { schema: another === undefined ? only : { anyOf: shapes } } }
  return { content: { ...Object.fromEntries(texts), ...json } as Record<string, { schema: { type: 'string' } }> }
}
const answerContent = (answer: Content | null) => (answer === null ? {} : contentOf(answer))

/** What is changed on the version it was read at: the reading says 304, the writing asks for the version. */
const isWrittenOnVersion = ({ refuses = [] }: Description): boolean => refuses.includes(428)
const isVersioned = (description: Description): boolean => isWrittenOnVersion(description) || 304 in description.answers

const ETAG = { description: 'The version of what is answered: send it back as If-Match.', schema: { type: 'string' as const } }
const IF_MATCH = {
  name: 'If-Match',
  in: 'header' as const,
  required: true,
  description: 'The ETag of what was edited, so that nobody else’s change is overwritten.',
  schema: { type: 'string' as const, examples: ['"3"'] },
}

const REFUSAL = { content: { 'application/problem+json': { schema: { $ref: '#/components/schemas/Problem' } } } }

function responsesOf(id: OperationId, description: Description) {
  const always = RULES[id] === 'public' ? [400, 403, 413, 415, 422, 500, 503, 507] : [400, 401, 403, 413, 415, 422, 500, 503, 507]
  const refused = [...always, ...(description.refuses ?? [])].map((status) => [
    status,
    { description: MEANING[status] ?? 'Refused', ...REFUSAL },
  ])
  const good = Object.entries(description.answers).map(([status, answer]) => [
    status,
    {
      description: MEANING[Number(status)] ?? 'Done',
      ...answerContent(answer ?? null),
      ...(isVersioned(description) ? { headers: { ETag: ETAG } } : {}),
    },
  ])
  return Object.fromEntries([...refused, ...good]) as Record<string, { description: string }>
}

const fileContent = (types: readonly string[]) =>
  Object.fromEntries(types.map((type) => [type, { schema: { type: 'string' as const, format: 'binary' } }]))

/** The least role, as an extension of the document that its own types do not know. */
const roleOf = (id: OperationId): object => ({ 'x-role': RULES[id] })

/**
 * First handler of every route: describes it and lets only the roles of its rule pass (401 without a session, 403 below the role).
 * Then it bounds the body. One function does it all, so that no route is described and unguarded, or guarded and undescribed.
 */
export function operation(id: OperationId, description: Description): MiddlewareHandler<Env> {
  const described = describeRoute({
    ...roleOf(id),
    operationId: id,
    summary: description.summary,
    tags: [description.tag],
    security: RULES[id] === 'public' ? [] : [{ session: [] }],
    responses: responsesOf(id, description),
    ...(isWrittenOnVersion(description) ? { parameters: [IF_MATCH] } : {}),
    ...(description.takes === undefined ? {} : { requestBody: { required: true, content: fileContent(description.takes) } }),
    ...(description.body === undefined ? {} : { requestBody: contentOf(description.body) }),
    ...(description.hide === true ? { hide: true } : {}),
  })
  const [rule, most] = [RULES[id], mostBytes(id)]
  const guard: MiddlewareHandler<Env> = async (c, next) => {
    if (rule !== 'public') {
      const who = c.get('who')
      if (who === null) return problem(c, 401, 'sign_in_needed', 'Your session has ended, or you have not signed in.')
      if (!atLeast(who.role, rule))
        return problem(c, 403, 'not_allowed', `Only ${rule === 'manager' ? 'a manager' : `an ${rule} or a manager`} may do this.`)
    }
    const tooLarge = await boundBody(c, most)
    if (tooLarge !== undefined) return tooLarge
    await next()
    return undefined
  }
  return Object.assign(guard, {
    operationId: id,
    [uniqueSymbol]: (described as MiddlewareHandler & { [uniqueSymbol]: unknown })[uniqueSymbol],
  })
}
