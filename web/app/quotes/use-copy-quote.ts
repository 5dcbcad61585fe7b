import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useNavigate } from '@tanstack/react-router'
import type { QuoteDraft } from '../../../core/quote/draft.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { createQuote } from '../client/quotes.ts'
import { useDesk } from './desk-context.ts'
import { forgetDraft } from './kept-draft.ts'
import { copiedDraft } from './quote-copy.ts'

/** The new quote is the same customer's. What was kept of the old one is in it, so it is no longer kept here. */
export function useCopyQuote(view: QuoteView) {
  const navigate = useNavigate()
  const queries = useQueryClient()
  const { act } = useDesk()
  return useMutation({
    mutationFn: (draft: QuoteDraft) => createQuote({ customerId: view.customer.id, draft: copiedDraft(draft, view) }),
    onSuccess: async (made) => {
      act({ type: 'discard' })
      forgetDraft(sessionStorage, view.id)
      await queries.invalidateQueries({ queryKey: ['customers'] })
      await navigate({ to: '/quotes/$quoteId', params: { quoteId: made.id } })
    },
  })
}
