import type { Kysely } from 'kysely'
import type { Adapter } from 'lucia'
import { Lucia, TimeSpan } from 'lucia'
import { setCookie } from 'hono/cookie'
import { deleteSession, findSessionByHash, insertSession, markSessionSeen, touchSession } from '../../db/sessions.ts'
import type { Database } from '../../db/database.ts'
import { deviceOf, type DeviceWord } from '../../core/people/device.ts'
import type { Role } from '../../core/people/roles.ts'
import type { Ctx, Who } from '../context.ts'
import { siteOf } from '../http/site.ts'
import { tokenHash } from './tokens.ts'

/**
 * Sessions, behind this one file: what the rest asks is `read`, `start` and `end`. Replacing the package changes nothing outside it.
 *
 * Idle: a session unused for 90 days has ended (a member's phone between two seasons); it is renewed once less than half of that is left.
 */
const IDLE_DAYS = 90
/** However busy, a session ends half a year after its sign-in: a lost phone is not a key for ever. */
const ABSOLUTE_MS = 180 * 86_400_000

/** "Last used" in a list of sessions is told in quarters of an hour: exact enough, and no write at every request. */
const SEEN_EVERY_MS = 15 * 60_000

declare module 'lucia' {
  interface Register {
    Lucia: ReturnType<typeof luciaOf>
    /** `verifiedHash` and `device` only while a session begins. */
    DatabaseSessionAttributes: { createdAt: Date; verifiedHash?: string; device?: DeviceWord }
    DatabaseUserAttributes: { name: string; role: Role }
  }
}

const endsAt = (createdAt: Date): number => createdAt.getTime() + ABSOLUTE_MS
const clamped = (expiresAt: Date, createdAt: Date): Date => new Date(Math.min(expiresAt.getTime(), endsAt(createdAt)))

/** Thrown through the package, which knows no answer but a session. */
class PasswordChangedError extends Error {}

/** The package's storage over our own repository. It hands the plain id back as it came and stores nothing but its SHA-256. */
function adapterOf(db: Kysely<Database>): Adapter {
  return {
    async getSessionAndUser(id) {
      const row = await findSessionByHash(db, tokenHash(id))
      if (row === undefined || endsAt(row.createdAt) <= Date.now()) return [null, null]
      const { person } = row
      const now = Date.now()
      if (now - row.lastSeenAt.getTime() > SEEN_EVERY_MS) await markSessionSeen(db, row.idHash, new Date(now))
      return [
        { id, userId: person.id, expiresAt: row.expiresAt, attributes: { createdAt: row.createdAt } },
        { id: person.id, attributes: { name: person.name, role: person.role } },
      ]
    },
    async setSession(session) {
      const { createdAt, verifiedHash = '', device = 'computer' } = session.attributes
      const begun = await insertSession(db, {
        idHash: tokenHash(session.id),
        personId: session.userId,
        verifiedHash,
        device,
        createdAt,
        expiresAt: clamped(session.expiresAt, createdAt),
      })
      if (!begun) throw new PasswordChangedError('the password was changed, or the person disabled, since it was verified')
    },
    async updateSessionExpiration(id, expiresAt) {
      const row = await findSessionByHash(db, tokenHash(id))
      if (row !== undefined)
        await touchSession(db, row.idHash, { expiresAt: clamped(expiresAt, row.createdAt), lastSeenAt: new Date(Date.now()) })
    },
    deleteSession: (id) => deleteSession(db, tokenHash(id)),
    // Listing and ending a person's sessions go by hash through our repository, never through the package.
    getUserSessions: () => Promise.reject(new Error('sessions are listed in db/sessions.ts')),
    deleteUserSessions: () => Promise.reject(new Error('sessions are ended in db/sessions.ts')),
    deleteExpiredSessions: () => Promise.reject(new Error('sessions expire in db/sessions.ts')),
  }
}

const COOKIE = { secure: '__Host-driploop', plain: 'driploop' } as const

function luciaOf(db: Kysely<Database>, secure: boolean) {
  return new Lucia(adapterOf(db), {
    sessionExpiresIn: new TimeSpan(IDLE_DAYS, 'd'),
    sessionCookie: { name: secure ? COOKIE.secure : COOKIE.plain, attributes: { secure, sameSite: 'lax', path: '/' } },
    getSessionAttributes: ({ createdAt }) => ({ createdAt }),
    getUserAttributes: ({ name, role }) => ({ name, role }),
  })
}

export interface Auth {
  /** Who sends this request, or null. Sends the cookie again where the session was renewed. */
  read(c: Ctx): Promise<Who | null>
  /** Begins a session and ends the one the request came with, if any. False where the hash that was verified is no longer the person's. */
  start(c: Ctx, personId: string, verifiedHash: string): Promise<boolean>
  /** Ends the request's session; true if there was one. */
  end(c: Ctx): Promise<void>
}

export function createAuth(db: Kysely<Database>): Auth {
  const bySite = { secure: luciaOf(db, true), plain: luciaOf(db, false) }
  const luciaFor = (c: Ctx) => (siteOf(c).https || !siteOf(c).loopback ? bySite.secure : bySite.plain)
  const idOf = (c: Ctx): string | null => luciaFor(c).readSessionCookie(c.req.header('cookie') ?? '')

  function sendCookie(c: Ctx, id: string, expiresAt: Date): void {
    const cookie = luciaFor(c).createSessionCookie(id)
    const maxAge = Math.max(0, Math.floor((expiresAt.getTime() - Date.now()) / 1000))
    setCookie(c, cookie.name, cookie.value, {
      path: '/',
      httpOnly: true,
      sameSite: 'Lax',
      secure: cookie.attributes.secure ?? true,
      maxAge,
    })
  }

  return {
    async read(c) {
      const id = idOf(c)
      if (id === null || id === '') return null
      const { session, user } = await luciaFor(c).validateSession(id)
      if (session === null) return null
      if (session.fresh) sendCookie(c, id, clamped(session.expiresAt, session.createdAt))
      return { id: user.id, name: user.name, role: user.role, sessionHash: tokenHash(id) }
    },
    async start(c, personId, verifiedHash) {
      const before = idOf(c)
      if (before !== null && before !== '') await luciaFor(c).invalidateSession(before)
      const createdAt = new Date(Date.now())
      try {
        const session = await luciaFor(c).createSession(personId, { createdAt, verifiedHash, device: deviceOf(c.req.header('user-agent')) })
        sendCookie(c, session.id, clamped(session.expiresAt, createdAt))
        return true
      } catch (error) {
        if (error instanceof PasswordChangedError) return false
        throw error
      }
    },
    async end(c) {
      const id = idOf(c)
      if (id !== null && id !== '') await luciaFor(c).invalidateSession(id)
      sendCookie(c, '', new Date(0))
    },
  }
}
