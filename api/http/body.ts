import type { MiddlewareHandler } from 'hono'
import type { OperationId } from '../auth/rules.ts'
import { RULES } from '../auth/rules.ts'
import type { Ctx, Env } from '../context.ts'
import { MOST_PICTURE_BYTES, PICTURE_TYPES } from '../../core/catalog/picture.ts'
import { answerProblem } from './answer-problem.ts'
import { problemBody, ProblemError } from './problem.ts'

const KB = 1_000
/** What anyone may send: a sign-in, an answer, a water test. Ten times the longest of them. */
const PUBLIC_BYTES = 64 * KB
/** The largest draft, four builds of sixty lines, is under 200 kB. */
const USUAL_BYTES = 1_000 * KB

/** How much the body of an operation may hold; null where the route itself counts it on its way to the disk. */
export function mostBytes(id: OperationId): number | null {
  if (id === 'startImport') return null
  if (RULES[id] === 'public') return PUBLIC_BYTES
  return id === 'putPicture' ? MOST_PICTURE_BYTES : USUAL_BYTES
}

const WITH_BODY = new Set(['POST', 'PUT', 'PATCH'])

/** A body whose length nobody said, counted as it comes; null beyond `most`. Errors: ProblemError 400 where the sender goes away. */
async function countedBody(stream: ReadableStream<Uint8Array>, most: number): Promise<Blob | null> {
  const reader = stream.getReader()
  const chunks: Uint8Array<ArrayBuffer>[] = []
  let bytes = 0
  for (;;) {
    const { done, value } = await reader.read().catch(() => {
      throw new ProblemError(problemBody(400, 'malformed', 'The request broke off before all of it was here. Nothing of it was stored.'))
    })
    if (done) return new Blob(chunks)
    bytes += value.length
    if (bytes > most) return null
    chunks.push(new Uint8Array(value))
  }
}

/**
 * Bounds what a request may send; the refusal, or undefined. Asked by a route once its rule is met: until then nothing of a body is read,
 * so that nobody without a session or below the role makes the server hold one.
 */
export async function boundBody(c: Ctx, most: number | null): Promise<Response | undefined> {
  if (!WITH_BODY.has(c.req.method) || most === null) return undefined
  const declared = c.req.header('content-length')
  const isDeclared = declared !== undefined && c.req.header('transfer-encoding') === undefined
  if (isDeclared && Number(declared) <= most) return undefined
  const body = isDeclared ? null : c.req.raw.body && (await countedBody(c.req.raw.body, most))
  if (body === null && (isDeclared || c.req.raw.body !== null)) {
    const limit = most < 1_000 * KB ? `${most / KB} kB` : `${most / KB / 1_000} MB`
    return answerProblem(c, problemBody(413, 'too_large', `This is more than ${limit}. Send less at once.`))
  }
  if (body !== null) c.req.raw = new Request(c.req.raw, { method: c.req.method, body })
  return undefined
}

/** A file to import; spreadsheets and systems name CSV in more than one way. */
export const FILE_TYPES = ['text/csv', 'application/json', 'text/tab-separated-values', 'text/plain', 'application/vnd.ms-excel'] as const

export const mediaTypeOf = (header: string | undefined): string => (header ?? '').split(';')[0]?.trim().toLowerCase() ?? ''

const takesOnly =
  (types: readonly string[], words: string): MiddlewareHandler<Env> =>
  async (c, next) => {
    if (WITH_BODY.has(c.req.method)) {
      const type = mediaTypeOf(c.req.header('content-type'))
      const empty = type === '' && (c.req.header('content-length') ?? '0') === '0' && c.req.header('transfer-encoding') === undefined
      if (!empty && !types.includes(type)) return answerProblem(c, problemBody(415, 'media_type', words))
    }
    await next()
    return undefined
  }

const takesJsonOnly = takesOnly(['application/json'], 'Send JSON, with Content-Type: application/json.')
const takesPictures = takesOnly(
  PICTURE_TYPES,
  'A picture is a photograph in JPEG, PNG or WebP. Save it as one of these, or choose another.',
)

const takesFiles = takesOnly(FILE_TYPES, `Send the file as it is, with one of these as its Content-Type: ${FILE_TYPES.join(', ')}.`)

export const takesForms = takesOnly(['application/x-www-form-urlencoded', 'multipart/form-data'], 'Send the form of the page.')

/** Addresses whose body is a file. */
const PICTURE_PATH = /^\/api\/products\/[^/]+\/picture$/
const IMPORT_PATH = '/api/imports'
/** What a form of the application sends, so that the browser writes the answer to the disk. */
const FORM_PATH = /^\/api\/backups\/[^/]+\/file$/

/** True where a body may take minutes to arrive. */
export const takesFile = (path: string): boolean => path === IMPORT_PATH || PICTURE_PATH.test(path)

/** JSON nearly everywhere, a picture where pictures are put, a file where one is imported. */
export const takesJson: MiddlewareHandler<Env> = (c, next) => {
  if (c.req.path === IMPORT_PATH) return takesFiles(c, next)
  if (FORM_PATH.test(c.req.path)) return takesForms(c, next)
  return PICTURE_PATH.test(c.req.path) ? takesPictures(c, next) : takesJsonOnly(c, next)
}
