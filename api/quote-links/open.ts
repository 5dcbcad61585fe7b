import { addDays } from '../../core/dates.ts'
import type { Install } from '../../core/install.ts'
import type { LinkedQuote } from '../../db/revisions.ts'
import { findLinkedQuote } from '../../db/revisions.ts'
import type { Ctx } from '../context.ts'
import { installToday } from '../day.ts'
import { openLink } from '../http/open-link.ts'
import { lapseOn } from '../jobs/lapse.ts'

/** A customer who asks a month later still sees what was offered; after that the paper is what is left. */
const OPEN_DAYS_AFTER = 30

export type OpenedQuote =
  { found: true; quote: LinkedQuote; install: Install; today: string } | { found: false; gone: boolean; install: Install }

/** The quote behind a link, lapsed first where its last day is past; gone a month after that day. */
export async function openQuoteLink(c: Ctx, token: string): Promise<OpenedQuote> {
  const opened = await openLink(c, token, {
    purpose: 'quote',
    find: async (id) => {
      await lapseOn(c.get('db'), (await installToday(c)).today)
      return findLinkedQuote(c.get('db'), id)
    },
    isOver: (quote, today) => addDays(quote.standsUntil, OPEN_DAYS_AFTER) < today,
  })
  if (!opened.found) return opened
  const { linked: quote, install, today } = opened
  return { found: true, quote, install, today }
}
