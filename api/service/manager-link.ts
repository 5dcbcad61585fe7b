import type { Kysely } from 'kysely'
import { audit } from '../../db/audit.ts'
import type { Database } from '../../db/database.ts'
import { createPasswordLink, enabledManagers } from '../../db/password-links.ts'
import type { Person } from '../../db/people.ts'
import { newToken, tokenHash } from '../auth/tokens.ts'

const VALID_MS = 24 * 3_600_000

export type ManagerLink = { ok: true; path: string; name: string; signInName: string } | { ok: false; words: string }

function managerOf(managers: Person[], signInName: string | undefined): Person | string {
  const [only] = managers
  if (only === undefined) return 'There is no manager yet. Start the service: it prints the link that makes the first one.'
  if (signInName === undefined && managers.length === 1) return only
  const names = managers.map((manager) => manager.signInName).join(', ')
  if (signInName === undefined)
    return `There are several managers: ${names}. Say whose password is lost: npm run manager-link -- ${only.signInName}`
  const named = managers.find((manager) => manager.signInName.toLowerCase() === signInName.toLowerCase())
  return named ?? `No manager signs in as "${signInName}". The managers are: ${names}.`
}

/** A new link that sets a manager's password, made at the console; the name may be left out where there is one manager. */
export async function managerLink(db: Kysely<Database>, signInName: string | undefined, nowMs: number): Promise<ManagerLink> {
  const manager = managerOf(await enabledManagers(db), signInName)
  if (typeof manager === 'string') return { ok: false, words: manager }
  const token = newToken()
  const made = await db.transaction().execute(async (trx) => {
    const link = { tokenHash: tokenHash(token), expiresAt: new Date(nowMs + VALID_MS) }
    const outcome = await createPasswordLink(trx, null, manager.id, link)
    if (outcome.ok) await audit(trx, { actor: null, action: 'password_link_made', subject: { kind: 'person', id: manager.id } })
    return outcome
  })
  if (!made.ok) return { ok: false, words: made.refusal.message }
  return { ok: true, path: `/join/${token}`, name: made.value.name, signInName: made.value.signInName }
}
