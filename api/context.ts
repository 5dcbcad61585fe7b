import type { Context } from 'hono'
import type { Kysely } from 'kysely'
import type { Logger } from 'pino'
import type { Role } from '../core/people/roles.ts'
import type { Database } from '../db/database.ts'
import type { Auth } from './auth/lucia.ts'
import type { BackupDesk } from './backups/backup-desk.ts'
import type { Config } from './config.ts'
import type { Site } from './http/site.ts'
import type { SendLetter } from './mail/transport.ts'
import type { RenderQuote } from './quotes/paper.ts'

/** What the application is made of; a test supplies its own. */
export interface Deps {
  /** Null while the database has never been reached since the start: everything that needs it answers 503. */
  db: Kysely<Database> | null
  engine: 'embedded' | 'postgres'
  /** Milliseconds since 1970, UTC. */
  clock: () => number
  config: Config
  pdf: RenderQuote
  /** 32 bytes or more; quote and setup links are made with it. */
  linkKey: Uint8Array
  log: Logger
  /** False from the moment a stop was asked for. */
  ready?: () => boolean
  /** Null or left out while there is no database to back up. */
  backups?: BackupDesk | null
  /** Null or left out where the operator named no mail server. */
  sendLetter?: SendLetter | null
  /** Tells the worker of this process that there is a new job. */
  wake?: () => void
}

/** The signed-in person behind a request. */
export interface Who {
  id: string
  name: string
  role: Role
  /** Hash of the session's id: the session cannot be used with it. */
  sessionHash: string
}

export interface Env {
  Variables: {
    deps: Deps
    db: Kysely<Database>
    auth: Auth
    requestId: string
    who: Who | null
    /** How the reader reached this site. */
    site: Site
    /** Methods that some route takes at a path. */
    allows: (path: string) => string[]
  }
  Bindings: { incoming?: { socket?: { remoteAddress?: string } } }
}
export type Ctx = Context<Env>

/** The person of a route whose rule asks for a role. Throws on a public route, where there may be none: that is a bug. */
export function signedIn(c: Ctx): Who {
  const who = c.get('who')
  if (who === null) throw new Error('signedIn() on a route without a role')
  return who
}
