import type { Ctx } from '../context.ts'
import { problemPage } from '../../web/pages/problem-page.ts'
import { pagePolicy, setPolicy } from './headers.ts'
import type { Problem } from './problem.ts'

/** Path of the page a customer or beginner holds the link of; undefined elsewhere. @example pagePath('/q/AbC/answer') // '/q/AbC' */
const pagePath = (path: string): string | undefined => /^\/[qs]\/[^/]+/.exec(path)?.[0]

/** Where a person reads, and no program: everything but the API, the probes and the files of the application. */
const isForPeople = (path: string): boolean => !/^\/(?:api|health|assets|fonts)(?:\/|$)/.test(path)

/** What was only read, and will be there in a moment: a page without script waits for it all the same. A form is sent again by whoever filled it in, and a wrong link is not tried again. */
function askedAgain(c: Ctx, status: number, headers: Record<string, string>): { inS: number; path: string } | undefined {
  const inS = Number(headers['Retry-After'] ?? Number.NaN)
  if (status !== 503 || c.req.method !== 'GET' || !Number.isInteger(inS)) return undefined
  const { pathname, search } = new URL(c.req.url)
  return { inS, path: pathname + search }
}

/** A refusal from before or beside the routes: a browser at an address for people is shown a page, and a program problem details. */
export function answerProblem(c: Ctx, body: Problem, headers: Record<string, string> = {}): Response | Promise<Response> {
  const back = pagePath(c.req.path) ?? (isForPeople(c.req.path) ? '/' : undefined)
  if (back === undefined || !(c.req.header('accept') ?? '').includes('text/html')) {
    const json = { ...body, requestId: c.get('requestId') }
    return c.json(json, body.status as 500, { 'content-type': 'application/problem+json', ...headers })
  }
  setPolicy(c, pagePolicy())
  const { status, title, detail } = body
  const again = askedAgain(c, status, headers)
  if (again !== undefined) c.header('Refresh', String(again.inS))
  return c.html(problemPage({ status, title, detail, contact: null, backPath: back, again }), status as 500, headers)
}
