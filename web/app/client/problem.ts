/** One refused field of a problem document (RFC 9457, our extension `errors`). */
export interface FieldProblem {
  field: string
  limit?: string
  message: string
}

/** A refusal as screens use it. Status 0: the server was not reached. */
export interface Problem {
  status: number
  code: string
  title: string
  detail: string | null
  errors: FieldProblem[]
}

/** Thrown by the client for every answer that is not a success, so that queries and mutations carry it as their error. */
export class ProblemError extends Error {
  readonly problem: Problem
  constructor(problem: Problem) {
    super(problem.detail ?? problem.title)
    this.name = 'ProblemError'
    this.problem = problem
  }
}

const text = (value: unknown): string | null => (typeof value === 'string' && value !== '' ? value : null)
const isRecord = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null && !Array.isArray(value)

function readErrors(value: unknown): FieldProblem[] {
  if (!Array.isArray(value)) return []
  return value.filter(isRecord).flatMap((item) => {
    const message = text(item['message'])
    if (message === null) return []
    const limit = text(item['limit'])
    return [{ field: text(item['field']) ?? '', message, ...(limit === null ? {} : { limit }) }]
  })
}

const TITLES: Record<number, string> = {
  0: 'The server was not reached',
  401: 'You are signed out',
  403: 'Your role does not allow this',
  404: 'Not found',
  409: 'Someone was faster',
  412: 'Someone changed this meanwhile',
  413: 'Too large',
  422: 'Not saved: something in it needs another look',
  428: 'The version is missing',
  429: 'Too many tries',
  503: 'The database is not answering',
}

/** What to do next, where the answer itself does not say. */
const ADVICE: Record<number, string> = {
  0: 'Check the connection and try again. What you typed is kept here.',
  401: 'Sign in again; what you typed is kept where it can be.',
  403: 'Ask the manager for the role that may.',
  404: 'It may have been removed, or the address has a slip in it.',
  412: 'What you typed is kept here. Load the newest version and compare.',
  429: 'Wait a minute, then try again.',
  503: 'Nothing was changed. Try again in a moment.',
}

/**
 * Reads a problem document, or makes one from the bare status.
 *
 * @example readProblem(422, { title: 'Refused', errors: [{ field: 'priceMinor', message: 'A price is above 0.' }] }).errors[0].field // 'priceMinor'
 */
export function readProblem(status: number, body: unknown): Problem {
  const document = isRecord(body) ? body : {}
  const title = text(document['title']) ?? TITLES[status] ?? (status >= 500 ? 'The server made a mistake' : 'Refused')
  const detail =
    text(document['detail']) ?? ADVICE[status] ?? (status >= 500 ? 'Nothing was changed. Try again; if it stays, tell the manager.' : null)
  const code = text(document['code']) ?? text(document['type'])?.split(/[/:#]/).pop() ?? `status_${status}`
  return { status, code, title, detail, errors: readErrors(document['errors']) }
}

/**
 * First message of each field. Nested fields keep their dotted path; a leading "body." or "/" is dropped.
 *
 * @example faultsByField({ errors: [{ field: '/spec/lengthMm', message: 'At least 100 mm.' }] }) // { 'spec.lengthMm': 'At least 100 mm.' }
 */
export function faultsByField(problem: Pick<Problem, 'errors'>): Record<string, string> {
  const faults: Record<string, string> = {}
  for (const { field, message } of problem.errors) faults[fieldKey(field)] ??= message
  return faults
}

/** @example fieldKey('/parts/0/quantity') // 'parts.0.quantity' */
export const fieldKey = (field: string): string =>
  field
    .replace(/^\//, '')
    .replaceAll('/', '.')
    .replace(/\[(\d+)\]/g, '.$1')
    .replace(/^body\./, '')

/** Faults of whatever was thrown, by field; none where nothing was. */
export const faultsOf = (error: unknown): Record<string, string> => (error ? faultsByField(problemOf(error)) : {})

/** How browsers name a request or a part of the page that did not come; every other TypeError is a mistake of ours. */
const OUT_OF_REACH = /failed to fetch|networkerror|load failed|dynamically imported module|importing a module script|unable to preload css/i

/** The problem inside whatever was thrown. What did not come over the network is "not reached"; anything else is a mistake of the page. */
export function problemOf(error: unknown): Problem {
  if (error instanceof ProblemError) return error.problem
  if (error instanceof Error && OUT_OF_REACH.test(error.message)) return readProblem(0, null)
  return {
    status: -1,
    code: 'page_fault',
    title: 'The page made a mistake',
    detail: 'Load the page again. If it stays, tell the manager.',
    errors: [],
  }
}
