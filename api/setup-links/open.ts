import type { Install } from '../../core/install.ts'
import type { LinkedSetup } from '../../db/setups.ts'
import { findLinkedSetup } from '../../db/setups.ts'
import { idInToken, isLinkToken } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { installToday } from '../day.ts'
import { demandFewWrites } from '../http/link-writes.ts'
import { demandFewWrongLinks, noteWrongLink } from '../http/wrong-links.ts'

/** A tank that nobody looked after for a year needs no checklist; the sheet on its lid may by then be anyone's. */
const OPEN_MS = 365 * 86_400_000

export type OpenedSetup =
  { found: true; setup: LinkedSetup; install: Install; today: string } | { found: false; gone: boolean; install: Install }

/** The setup behind a link: missing for a forged or revoked one, gone a year after its last tick or reading. */
export async function openSetupLink(c: Ctx, token: string): Promise<OpenedSetup> {
  demandFewWrongLinks(c)
  const { install, today } = await installToday(c)
  const id = idInToken(token)
  const setup = id === undefined ? undefined : await findLinkedSetup(c.get('db'), id)
  if (setup === undefined || !isLinkToken(c.get('deps').linkKey, 'setup', setup.id, setup.linkVersion, token)) {
    noteWrongLink(c)
    return { found: false, gone: false, install }
  }
  if (Date.parse(setup.lastUsedAt ?? setup.issuedAt) + OPEN_MS < c.get('deps').clock()) return { found: false, gone: true, install }
  demandFewWrites(c, setup.id)
  return { found: true, setup, install, today }
}

/** A test cannot have been taken tomorrow; null where the day is right. */
export function dayFault(day: string, today: string): string | null {
  return day > today ? `The day ${day} is in the future. Today is ${today}.` : null
}
