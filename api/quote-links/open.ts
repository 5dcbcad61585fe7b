import { addDays } from '../../core/dates.ts'
import type { LinkedQuote } from '../../db/revisions.ts'
import { findLinkedQuote } from '../../db/revisions.ts'
import { idInToken, isLinkToken } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { installToday } from '../day.ts'
import { demandFewWrites } from '../http/link-writes.ts'
import { demandFewWrongLinks, noteWrongLink } from '../http/wrong-links.ts'
import type { Install } from '../../core/install.ts'
import { lapseOn } from '../jobs/lapse.ts'

/** A customer who asks a month later still sees what was offered; after that the paper is what is left. */
const OPEN_DAYS_AFTER = 30

export type OpenedQuote =
  { found: true; quote: LinkedQuote; install: Install; today: string } | { found: false; gone: boolean; install: Install }

/** The quote behind a link: missing for a forged or revoked one, gone for one that has expired. */
export async function openQuoteLink(c: Ctx, token: string): Promise<OpenedQuote> {
  demandFewWrongLinks(c)
  const { install, today } = await installToday(c)
  await lapseOn(c.get('db'), today)
  const id = idInToken(token)
  const quote = id === undefined ? undefined : await findLinkedQuote(c.get('db'), id)
  if (quote === undefined || !isLinkToken(c.get('deps').linkKey, 'quote', quote.id, quote.linkVersion, token)) {
    noteWrongLink(c)
    return { found: false, gone: false, install }
  }
  if (addDays(quote.standsUntil, OPEN_DAYS_AFTER) < today) return { found: false, gone: true, install }
  demandFewWrites(c, quote.id)
  return { found: true, quote, install, today }
}
