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

/** For the styles of one answer. */
export const newNonce = (): string => randomBytes(16).toString('base64')

/** Of the application's document. Scripts are files of ours alone; one named policy may make HTML, for the plots, another starts the worker. */
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
    'trusted-types driploop-plots driploop-worker',
  ].join('; ')
}

/** Of a page that a customer or beginner opens: it has no script at all. */
export const pagePolicy = (): string =>
  "default-src 'none'; style-src 'self'; font-src 'self'; img-src 'self' data:; base-uri 'none'; form-action 'self'; frame-ancestors 'none'; object-src 'none'; require-trusted-types-for 'script'"

/** Of the worker that opens the application without a signal: it fetches files of our own address, and nothing else. */
export const workerPolicy = (): string => "default-src 'none'; connect-src 'self'"

/** Sets the policy of a document; everything else keeps the one that allows nothing. */
export const setPolicy = (c: Ctx, policy: string): void => c.header('Content-Security-Policy', policy)

/** For what only its reader should see: kept by no cache, found by no search. */
export function keepPrivate(c: Ctx): void {
  c.header('Cache-Control', 'no-store')
  c.header('X-Robots-Tag', 'noindex, nofollow')
}

const ALWAYS = {
  'Content-Security-Policy': NOTHING,
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'X-Frame-Options': 'DENY',
  'Cross-Origin-Opener-Policy': 'same-origin',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Permissions-Policy': PERMISSIONS,
}

/** Of every answer, whoever makes it. */
export const standingHeaders = (isHttps: boolean): Record<string, string> => ({
  ...ALWAYS,
  ...(isHttps ? { 'Strict-Transport-Security': HSTS } : {}),
})

/**
 * First of all middleware: set before anything can answer, so that refusals and broken answers carry them too.
 * A route may put another policy or another keeping time in their place.
 */
export const securityHeaders: MiddlewareHandler<Env> = async (c, next) => {
  for (const [name, value] of Object.entries(standingHeaders(siteOf(c).https))) c.header(name, value)
  await next()
}
