import type { MiddlewareHandler } from 'hono'
import { bodyLimit } from 'hono/body-limit'
import type { Env } from '../context.ts'
import { problem } from './problem.ts'

const MB = 1_000_000
/** The largest draft, four builds of sixty lines, is under 200 kB. */
const USUAL_BYTES = MB
/** 20 MB of CSV, and what JSON adds to it for quotes and line ends. */
const IMPORT_BYTES = 28 * MB
const IMPORT_PATH = '/api/products/import'

const limited = (bytes: number) =>
  bodyLimit({ maxSize: bytes, onError: (c) => problem(c, 413, 'too_large', `This is more than ${bytes / MB} MB. Send less at once.`) })
const [usual, importing] = [limited(USUAL_BYTES), limited(IMPORT_BYTES)]

/** Bounds what one request may send. */
export const limitBody: MiddlewareHandler<Env> = (c, next) => (c.req.path === IMPORT_PATH ? importing(c, next) : usual(c, next))

const WITH_BODY = new Set(['POST', 'PUT', 'PATCH'])
const mediaTypeOf = (header: string | undefined): string => (header ?? '').split(';')[0]?.trim().toLowerCase() ?? ''

const takesOnly =
  (types: readonly string[], words: string): MiddlewareHandler<Env> =>
  async (c, next) => {
    if (WITH_BODY.has(c.req.method)) {
      const type = mediaTypeOf(c.req.header('content-type'))
      const empty = type === '' && (c.req.header('content-length') ?? '0') === '0' && c.req.header('transfer-encoding') === undefined
      if (!empty && !types.includes(type)) return problem(c, 415, 'media_type', words)
    }
    await next()
    return undefined
  }

export const takesJson = takesOnly(['application/json'], 'Send JSON, with Content-Type: application/json.')
export const takesForms = takesOnly(['application/x-www-form-urlencoded', 'multipart/form-data'], 'Send the form of the page.')
