import { randomBytes } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'
import type { Ctx, Env } from '../context.ts'
import { siteOf } from './site.ts'

/** One year, the least that HSTS preloading and ASVS 3.4.1 ask for. Sub-domains are the operator's own business: many share one domain. */
const HSTS = 'max-age=31536000'

const PERMISSIONS =
  'accelerometer=(), autoplay=(), camera=(self), display-capture=(), geolocation=(), gyroscope=(), magnetometer=(), microphone=(), midi=(), payment=(), usb=(), screen-wake-lock=(self)'

/** Of JSON, files and refusals: nothing in them may run, load or be framed. */
const NOTHING = "default-src 'none'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; object-src 'none'"

/** Of the application's document. Scripts are files of ours alone; one named policy may make HTML, for the plots. */
export function appPolicy(nonce: string): string {
  return [
    "default-src 'none'",
    "script-src 'self'",
    `style-src 'self' 'nonce-${nonce}'`,
    "connect-src 'self'",
    "img-src 'self' data: blob:",
    "font-src 'self'",
    "worker-src 'self'",
    "manifest-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
    "require-trusted-types-for 'script'",
    'trusted-types driploop-plots',
  ].join('; ')
}

/** Of a page that a customer or beginner opens: it has no script at all. */
export const pagePolicy = (): string =>
  "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'; require-trusted-types-for 'script'"

/** Sets the policy of a document; everything else keeps the one that allows nothing. */
export const setPolicy = (c: Ctx, policy: string): void => c.header('Content-Security-Policy', policy)

/** For what only its reader should see: kept by no cache, found by no search. */
export function keepPrivate(c: Ctx): void {
  c.header('Cache-Control', 'no-store')
  c.header('X-Robots-Tag', 'noindex, nofollow')
}

/** First of all middleware, so that refusals and broken answers carry them too. */
export const securityHeaders: MiddlewareHandler<Env> = async (c, next) => {
  c.set('nonce', randomBytes(16).toString('base64'))
  await next()
  const headers = c.res.headers
  if (!headers.has('Content-Security-Policy')) headers.set('Content-Security-Policy', NOTHING)
  headers.set('X-Content-Type-Options', 'nosniff')
  headers.set('Referrer-Policy', 'no-referrer')
  headers.set('X-Frame-Options', 'DENY')
  headers.set('Cross-Origin-Opener-Policy', 'same-origin')
  headers.set('Cross-Origin-Resource-Policy', 'same-origin')
  headers.set('Permissions-Policy', PERMISSIONS)
  if (siteOf(c).https) headers.set('Strict-Transport-Security', HSTS)
  if (!headers.has('Cache-Control')) headers.set('Cache-Control', 'no-store')
}
