import { useQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { getQuote } from '../client/quotes.ts'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { DeskView } from './desk.tsx'
import './desk.css'
import './desk-builds.css'
import './desk-slots.css'
import './desk-report.css'

/** One quote at the counter. Read once: from then on the desk keeps its own copy and saves it. */
export function DeskScreen(): ReactElement {
  const { quoteId } = useParams({ from: '/quotes/$quoteId' })
  const quote = useQuery({
    queryKey: ['quote', quoteId],
    queryFn: () => getQuote(quoteId),
    gcTime: 0,
    staleTime: Infinity,
    refetchOnWindowFocus: false,
  })
  if (quote.data) return <DeskView key={quoteId} opened={quote.data.value} />
  return (
    <Screen title="Quote" width="wide">
      {quote.isError ? (
        <ErrorNotice error={quote.error} onRetry={() => void quote.refetch()} />
      ) : (
        <LoadingRows what="the quote" rows={12} />
      )}
    </Screen>
  )
}
