import { useCallback, useEffect, useMemo, useReducer, useState } from 'react'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { getQuote } from '../client/quotes.ts'
import { assembleForDesk, makeAssembler } from './assemble-builds.ts'
import { useReader } from '../session/session.ts'
import { useAutosave, type Flush } from './autosave.ts'
import type { Desk, DeskDialog } from './desk-context.ts'
import { deskInputs } from './desk-inputs.ts'
import type { ExactKey } from './exact-fields.ts'
import { deskReducer, openDesk } from './desk-state.ts'
import { keptDraft } from './kept-draft.ts'
import { isClosed } from './saving-words.ts'
import { PHONE, useMedia } from './use-media.ts'

interface OpenDesk {
  desk: Desk
  flush: Flush
  /** Shows the server's copy, after issue or withdrawal. */
  reload(view: QuoteView): void
}

/** The desk's state: the draft with its saving, the builds worked out from it, what is chosen and what lies open. */
export function useDeskState(opened: QuoteView): OpenDesk {
  const [state, dispatch] = useReducer(deskReducer, opened, (view) => openDesk(view, keptDraft(sessionStorage, view.id)))
  const [chosenId, setChosenId] = useState(opened.draft.suggestion?.buildId ?? opened.draft.builds[0]?.id ?? '')
  const [dialog, open] = useState<DeskDialog | null>(null)
  const [asked, ask] = useState<ExactKey | null>(null)
  const flush = useAutosave(opened.id, state, dispatch)
  const reload = useCallback((view: QuoteView) => dispatch({ type: 'reloaded', view }), [])
  useFreshCopy(state.saving.state === 'saved', state.view, reload)

  const [assemble] = useState(() => makeAssembler(assembleForDesk))
  const { draft, products, prices, view } = state
  const reader = useReader()
  // The desk tells everything in the advisor's own units; the customer's are the document's.
  const install = useMemo(() => ({ ...view.install, units: reader }), [view.install, reader])
  const inputs = useMemo(() => deskInputs(view, { draft, products, prices }, install), [view, draft, products, prices, install])
  const builds = useMemo(() => assemble(inputs), [assemble, inputs])
  const chosen = builds.find((build) => build.id === chosenId) ?? builds[0]
  if (!chosen) throw new Error('A quote has at least one build')
  const phone = useMedia(PHONE)
  const shown = useMemo(() => (phone ? [chosen] : builds), [phone, chosen, builds])

  const desk = useMemo(
    (): Desk => ({
      state, inputs, builds,
      shown, chosen, dialog, open, asked, ask,
      locked: isClosed(state.view.state),
      choose: setChosenId,
      edit: (edit) => dispatch({ type: 'edit', edit }),
      priced: (products, prices) => dispatch({ type: 'priced', products, prices }),
      act: dispatch,
      reader,
      currency: install.currency,
    }), // prettier-ignore
    [state, inputs, builds, shown, chosen, dialog, asked, install, reader],
  )
  return { desk, flush, reload }
}

/** Back at this tab: what happened meanwhile (the customer accepted, a colleague saved) is shown, unless something here is unsaved. */
function useFreshCopy(saved: boolean, view: QuoteView, reload: (view: QuoteView) => void): void {
  useEffect(() => {
    if (!saved) return
    let gone = false
    const look = (): void => {
      if (document.visibilityState !== 'visible') return
      getQuote(view.id).then(
        ({ value }) => !gone && (value.version !== view.version || value.state !== view.state) && reload(value),
        () => undefined,
      )
    }
    document.addEventListener('visibilitychange', look)
    return () => {
      gone = true
      document.removeEventListener('visibilitychange', look)
    }
  }, [saved, view, reload])
}
