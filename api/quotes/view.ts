import type { QuoteView } from '../../core/quote/quote-view.ts'
import type { QuoteInputs } from '../../core/quote/revision.ts'
import type { QuoteRecord } from '../../db/quote-record.ts'
import { linkToken } from '../auth/tokens.ts'
import type { Ctx } from '../context.ts'
import { linkOrigin } from '../http/site.ts'
import { setupLink } from '../setups/views.ts'
import { quoteInputs } from './inputs.ts'

/** Addresses of the quote's and the setup's page; null before the first issue, and where links are off. */
export function quoteLinks(c: Ctx, quote: Pick<QuoteRecord, 'id' | 'linkVersion' | 'setup'>): QuoteView['links'] {
  const origin = linkOrigin(c)
  const setup = quote.setup === null ? null : setupLink(c, quote.setup)
  if (origin === null || setup === null) return null
  return { quote: `${origin}/q/${linkToken(c.get('deps').linkKey, 'quote', quote.id, quote.linkVersion)}`, setup }
}

/** A quote as the desk opens it. */
export async function quoteView(c: Ctx, record: QuoteRecord, inputs?: QuoteInputs): Promise<QuoteView> {
  const { id, number, state, version, customer, advisor, savedAt, revisions, answer } = record
  return {
    ...(inputs ?? (await quoteInputs(c, record.draft))),
    id,
    number,
    state,
    version,
    customer,
    advisor,
    savedAt,
    revisions,
    answer,
    links: quoteLinks(c, record),
  }
}
