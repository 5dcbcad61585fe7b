import type { SetupView } from '../../core/quote/quote-view.ts'
import { listSetups } from '../../db/setups.ts'
import { linkToken } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { signedIn } from '../context.ts'
import { linkOrigin } from '../http/site.ts'

/** Address of a setup's page; null where links are off. */
export function setupLink(c: Ctx, setup: { id: string; linkVersion: number }): string | null {
  const origin = linkOrigin(c)
  return origin === null ? null : `${origin}/s/${linkToken(c.get('deps').linkKey, 'setup', setup.id, setup.linkVersion)}`
}

/** Setups as the desk lists them. */
export async function setupViews(c: Ctx, filter: { customerId?: string } = {}): Promise<SetupView[]> {
  const setups = await listSetups(c.get('db'), signedIn(c), filter)
  return setups.map(({ linkVersion, quoteId: _quoteId, ...setup }) => ({ ...setup, link: setupLink(c, { id: setup.id, linkVersion }) }))
}
