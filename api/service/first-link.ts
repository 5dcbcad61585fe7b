import type { Kysely } from 'kysely'
import type { Database } from '../../db/database.ts'
import { createOneUseLink, deleteOneUseLinks } from '../../db/one-use-links.ts'
import { countPeople } from '../../db/people.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'

const VALID_MS = 24 * 3_600_000

/** Path of a new link that creates the first manager, the one before it ended; null once anyone has an account. */
export async function firstManagerPath(db: Kysely<Database>, nowMs: number): Promise<string | null> {
  if ((await countPeople(db)) > 0) return null
  const token = newToken()
  await deleteOneUseLinks(db, 'first_manager')
  await createOneUseLink(db, {
    tokenHash: tokenHash(token),
    purpose: 'first_manager',
    role: 'manager',
    name: null,
    createdBy: null,
    expiresAt: new Date(nowMs + VALID_MS),
  })
  return `/join/${token}`
}
