import { useState, type ReactElement } from 'react'
import { addDays } from '../../../core/dates.ts'
import { draftPdfAddress } from '../client/quotes.ts'
import { Button } from '../parts/button.tsx'
import type { Flush } from './autosave.ts'
import { useDesk } from './desk-context.ts'
import { isClosed } from './saving-words.ts'

/** Two weeks: long enough to decide, short enough that most prices seen still hold. The advisor changes it in the dialog. */
const STANDS_DAYS = 14

/** What is done with the whole quote: seen on paper, issued. */
export function DeskActs({ flush }: { flush: Flush }): ReactElement {
  const { state, open, edit } = useDesk()
  const { view, draft } = state
  const ask = (): void => {
    if (draft.standsUntil === null || draft.standsUntil < view.asOf) edit({ do: 'stands_until', date: addDays(view.asOf, STANDS_DAYS) })
    open({ at: 'issue' })
  }
  return (
    <>
      <PaperButton flush={flush} />
      {isClosed(view.state) ? (
        <span className="reason">
          {view.state === 'accepted' ? 'Accepted: it is not changed any more.' : 'Withdrawn: it is not changed any more.'}
        </span>
      ) : (
        <Button look="main" onClick={ask}>
          {view.revisions.length === 0 ? 'Issue quote' : `Issue version ${view.revisions.length + 1}`}
        </Button>
      )}
    </>
  )
}

/** Opens the draft as it would be printed, once the server has what is on the screen. */
function PaperButton({ flush }: { flush: Flush }): ReactElement {
  const { view } = useDesk().state
  const [state, setState] = useState<'idle' | 'saving' | 'not_saved'>('idle')
  const see = async (): Promise<void> => {
    // The window is opened first, within the press, or the browser takes it for a pop-up.
    const page = window.open('', '_blank')
    setState('saving')
    const version = await flush()
    setState(version === null ? 'not_saved' : 'idle')
    if (version === null) page?.close()
    else if (page) page.location.href = draftPdfAddress(view.id)
  }
  return (
    <>
      {state === 'not_saved' && <span className="reason">Not shown: the draft is not saved yet.</span>}
      <Button busy={state === 'saving'} onClick={() => void see()}>
        See it on paper
      </Button>
    </>
  )
}
