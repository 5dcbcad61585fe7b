import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { extname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { Hono } from 'hono'
import type { Env } from '../context.ts'
import { encodedBytes, encodedFile, type EncodedFile } from './encoded.ts'
import { appPolicy, newNonce, setPolicy, workerPolicy } from './headers.ts'
import { problem } from './problem.ts'

const WEB = fileURLToPath(new URL('../../web/', import.meta.url))

const TYPES: Record<string, string> = {
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
  '.json': 'application/json',
  '.webmanifest': 'application/manifest+json',
  '.txt': 'text/plain; charset=utf-8',
}
/** Hashed names never change what they hold. */
const FOR_EVER = 'public, max-age=31536000, immutable'
const A_DAY = 'public, max-age=86400'

/** Runs beside the pages and must be let at the network, which no other file needs. */
const WORKER = '/worker.js'

interface StaticFile extends EncodedFile {
  keep: string
}

const staticFile = (bytes: Uint8Array<ArrayBuffer>, type: string, keep: string): StaticFile => ({ ...encodedFile(bytes, type), keep })

/** Files of one folder by their address; other kinds than the ones above are not served. Sub-folders are not looked into. */
function filesIn(folder: string, prefix: string, keep: string): Array<[string, StaticFile]> {
  if (!existsSync(folder)) return []
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry): Array<[string, StaticFile]> => {
    const type = TYPES[extname(entry.name)]
    if (!entry.isFile() || type === undefined) return []
    return [[`${prefix}${entry.name}`, staticFile(new Uint8Array(readFileSync(join(folder, entry.name))), type, keep)]]
  })
}

const textAt = (path: string): string => (existsSync(path) ? readFileSync(path, 'utf8') : '')

function loadFiles(): Map<string, StaticFile> {
  const css = new TextEncoder().encode(`${textAt(join(WEB, 'tokens.css'))}\n${textAt(join(WEB, 'pages', 'pages.css'))}`)
  const mark = new TextEncoder().encode(textAt(join(WEB, 'app', 'mark.svg')))
  return new Map([
    ...filesIn(join(WEB, 'dist'), '/', A_DAY),
    ...filesIn(join(WEB, 'dist', 'assets'), '/assets/', FOR_EVER),
    ...filesIn(join(WEB, 'fonts'), '/fonts/', A_DAY),
    ['/mark.svg', staticFile(mark, 'image/svg+xml', A_DAY)] as const,
    ['/pages.css', staticFile(css, 'text/css; charset=utf-8', 'public, max-age=300')] as const,
  ])
}

/** Addresses of the application's screens: each answers with its one document. */
const SCREENS =
  /^\/(?:$|sign-in$|join\/[^/]+$|prices$|prices\/[^/]+$|post$|watches$|catalog$|catalog\/[^/]+$|catalog\/price-list\/[^/]+$|stores$|stores\/[^/]+$|quotes$|quotes\/[^/]+$|customers$|customers\/[^/]+$|setups$|people$|people\/[^/]+$|settings$|settings\/backups$|settings\/other-clubs$|settings\/livestock$|settings\/livestock\/[^/]+$|account$)/

/** Whether an address is one of a screen; that every screen of the router has one is tested. */
export const isScreen = (path: string): boolean => SCREENS.test(path)

const NOT_BUILT =
  '<!doctype html><html lang="en"><meta charset="utf-8"><title>Driploop</title><p>The web application has not been built yet: run <code>npm run build</code>.</p></html>'

/** The browser application, the style and fonts of the pages. Read once: nothing of it changes while the process runs. */
export function staticRoutes(): Hono<Env> {
  const files = loadFiles()
  const shell = textAt(join(WEB, 'dist', 'index.html')) || NOT_BUILT
  return new Hono<Env>().get('*', async (c, next) => {
    const file = files.get(c.req.path)
    if (file !== undefined) {
      c.header('Content-Type', file.type)
      c.header('Cache-Control', file.keep)
      if (c.req.path === WORKER) setPolicy(c, workerPolicy())
      return c.body(await encodedBytes(c, file), 200)
    }
    if (c.req.path.startsWith('/assets/'))
      return problem(c, 404, 'not_found', 'There is no such file. The application was updated: load the page again.')
    if (isScreen(c.req.path)) {
      const nonce = newNonce()
      setPolicy(c, appPolicy(nonce))
      c.header('Cache-Control', 'no-store')
      return c.html(shell.replaceAll('__CSP_NONCE__', nonce), 200)
    }
    await next()
    return undefined
  })
}
