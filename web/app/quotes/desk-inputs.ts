import type { Install } from '../../../core/install.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import type { QuoteInputs } from '../../../core/quote/revision.ts'

/** What the desk works builds out from: what is being edited, over all else that the server reckons with, rates of exchange and regions included. */
export function deskInputs(view: QuoteView, edited: Pick<QuoteInputs, 'draft' | 'products' | 'prices'>, install: Install): QuoteInputs {
  const { stores, asOf, rates, regions } = view
  return { ...edited, stores, install, asOf, ...(rates && { rates }), ...(regions && { regions }) }
}
