import { useMutation } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { renewQuoteLink } from '../client/quotes.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { useDesk } from './desk-context.ts'

/** Ends the customer's link, sent to the wrong person say, and puts a new one in its place. Nothing of the draft moves. */
export function RenewLink(): ReactElement {
  const { state, act } = useDesk()
  const [open, setOpen] = useState(false)
  const renew = useMutation({
    mutationFn: () => renewQuoteLink(state.view.id),
    onSuccess: ({ links }) => {
      act({ type: 'links', links })
      setOpen(false)
    },
  })
  const close = (): void => {
    renew.reset()
    setOpen(false)
  }
  return (
    <>
      <Button small look="plain" onClick={() => setOpen(true)}>
        New quote link
      </Button>
      <Dialog
        open={open}
        title="End the quote link and make a new one?"
        onClose={close}
        actions={
          <>
            <Button onClick={close}>Keep this link</Button>
            <Button look="main" busy={renew.isPending} onClick={() => renew.mutate()}>
              Make a new link
            </Button>
          </>
        }
      >
        <p>
          Whoever has the present link, on paper or in a message, can then no longer open the quote. Send {state.view.customer.name} the new
          one.
        </p>
        <p>
          The setup link stays as it is
          {state.view.state === 'withdrawn' ? ', and tells whoever opens it that this quote was withdrawn' : ''}. A new one is made under
          Setups.
        </p>
        <ErrorNotice error={renew.error} />
      </Dialog>
    </>
  )
}
