import type { ReactElement } from 'react'
import { civilDateAt, sayDate, yearOf } from '../../../core/dates.ts'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { Button } from '../parts/button.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useDesk } from './desk-context.ts'
import { sayClosed } from './saving-words.ts'
import { useCopyQuote } from './use-copy-quote.ts'

/** An accepted or withdrawn quote: that it changes no more, and the way on. A change that came too late goes to a new quote, or is dropped. */
export function ClosedPanel(): ReactElement | null {
  const { state, locked, act } = useDesk()
  const { view, saving } = state
  const copy = useCopyQuote(view)
  if (!locked) return null
  const kept = saving.state === 'closed' ? saving.mine : null
  return (
    <Told kind={kept ? 'warn' : 'note'} title={closedTitle(view)} live={kept !== null}>
      <p>
        {kept
          ? 'A change of yours came too late and is not saved. It is kept in this tab: take it to a new quote, or drop it.'
          : 'To change something, make a new quote from it.'}
      </p>
      <ErrorNotice error={copy.error} />
      <div className="acts">
        <Button small busy={copy.isPending} onClick={() => copy.mutate(kept ?? view.draft)}>
          {kept ? 'Make a new quote with my change' : 'Make a new quote from it'}
        </Button>
        {kept && (
          <Button small onClick={() => act({ type: 'discard' })}>
            Drop my change
          </Button>
        )}
      </div>
    </Told>
  )
}

function closedTitle(view: QuoteView): string {
  const { answer, install } = view
  const on = answer && sayDate(civilDateAt(Date.parse(answer.at), install.timeZone), yearOf(view.asOf))
  return sayClosed(view.state, answer?.letter ?? null, on)
}
