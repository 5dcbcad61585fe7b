import { useQuery } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { QuoteListRow } from '../../../core/quote/quote-view.ts'
import { discardQuote, getQuote } from '../client/quotes.ts'
import { Button } from '../parts/button.tsx'
import { DiscardDialog } from './discard-dialog.tsx'

/** What a row of the list offers for a quote that has no number yet. It is read again when asked, so that what goes is named as it stands now. */
export function DiscardFromList({ row }: { row: QuoteListRow }): ReactElement | null {
  const [asked, setAsked] = useState(false)
  const quote = useQuery({
    queryKey: ['quote-to-discard', row.id],
    queryFn: () => getQuote(row.id),
    enabled: asked,
    gcTime: 0,
    staleTime: 0,
  })
  if (row.number !== null) return null
  const read = quote.data
  return (
    <>
      <Button small look="plain" onClick={() => setAsked(true)}>
        Discard
        <span className="sr">
          {' '}
          the draft for {row.customerName}
          {row.title && `, ${row.title}`}
        </span>
      </Button>
      <DiscardDialog
        open={asked}
        quoteId={row.id}
        customerName={row.customerName}
        draft={quote.isFetching ? undefined : read?.value.draft}
        discard={() => discardQuote(row.id, read?.etag || `"${read?.value.version ?? 0}"`)}
        // The row goes and what had the focus with it: the reader is put at the head of the screen.
        onGone={() => document.querySelector<HTMLElement>('.screen h1')?.focus()}
        onClose={() => setAsked(false)}
        unread={quote.error}
      />
    </>
  )
}
