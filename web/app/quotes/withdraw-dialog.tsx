import { useState, type ReactElement } from 'react'
import type { QuoteView } from '../../../core/quote/quote-view.ts'
import { getQuote, withdrawQuote } from '../client/quotes.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useDesk, useDialog } from './desk-context.ts'

/** Takes an issued quote back: the links stay and say so. */
export function WithdrawDialog({ reload }: { reload(view: QuoteView): void }): ReactElement {
  const { state } = useDesk()
  const { shown, close } = useDialog('withdraw')
  const { view } = state
  const [busy, setBusy] = useState(false)
  const [failed, setFailed] = useState<unknown>(null)
  const withdraw = async (): Promise<void> => {
    setBusy(true)
    try {
      await withdrawQuote(view.id)
      reload((await getQuote(view.id)).value)
      close()
    } catch (error) {
      setFailed(error)
    } finally {
      setBusy(false)
    }
  }
  return (
    <Dialog
      open={shown !== null}
      title={`Withdraw quote ${view.number ?? ''}?`}
      onClose={close}
      actions={
        <>
          <Button onClick={close}>Let it stand</Button>
          <Button look="main" busy={busy} onClick={() => void withdraw()}>
            Withdraw it
          </Button>
        </>
      }
    >
      <p>{view.customer.name} can then no longer accept it. This cannot be undone; a new quote can be made.</p>
      <p>
        Both links stay open and say so: the quote link, and the setup link, whose checklist can still be followed where the tank is set up.
      </p>
      <ErrorNotice error={failed} />
    </Dialog>
  )
}
