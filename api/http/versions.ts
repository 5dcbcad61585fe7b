import type { Context } from 'hono'
import { problem } from './problem.ts'

/** Strong entity tag of a versioned row. @example etagOf(3) // '"3"' */
export const etagOf = (version: number): string => `"${version}"`

/**
 * The version an edit was based on, from `If-Match`; 428 without one, 412 where it is no version of ours.
 *
 * A weak tag never matches here (RFC 9110, 13.1.1), and `*` is no version: it would overwrite what nobody looked at.
 */
export function basedOn(c: Context) {
  const header = c.req.header('if-match')?.trim()
  if (header === undefined || header === '' || header === '*') {
    return problem(c, 428, 'version_needed', 'Send the ETag of what you edited as If-Match, so that nobody else’s change is overwritten.')
  }
  const version = /^"(\d{1,9})"$/.exec(header)?.[1]
  if (version === undefined)
    return problem(c, 412, 'stale', 'This If-Match is no version of this thing: open it again and make your change there.')
  return Number(version)
}

/** True where the reader's copy is still right (weak comparison, RFC 9110, 13.1.2). */
export function unchanged(c: Context, tag: string): boolean {
  const header = c.req.header('if-none-match')
  if (header === undefined) return false
  return header === '*' || header.split(',').some((part) => part.trim().replace(/^W\//, '') === tag)
}
