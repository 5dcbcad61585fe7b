import { useNavigate } from '@tanstack/react-router'
import type { ReactElement } from 'react'
import { discardQuote } from '../client/quotes.ts'
import type { Flush } from './autosave.ts'
import { useDesk, useDialog } from './desk-context.ts'
import { DiscardDialog } from './discard-dialog.tsx'

/** At the desk what is on the screen goes: saved first where it can be, so that the version is the one that is seen. */
export function DiscardFromDesk({ flush }: { flush: Flush }): ReactElement {
  const { state, act } = useDesk()
  const { shown, close } = useDialog('discard')
  const navigate = useNavigate()
  const { view, draft } = state
  return (
    <DiscardDialog
      open={shown !== null}
      quoteId={view.id}
      customerName={view.customer.name}
      draft={draft}
      discard={async () => discardQuote(view.id, `"${(await flush()) ?? view.version}"`)}
      onGone={async () => {
        act({ type: 'reloaded', view })
        await navigate({ to: '/quotes' })
      }}
      onClose={close}
    />
  )
}
