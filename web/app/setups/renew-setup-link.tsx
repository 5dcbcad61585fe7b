import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import type { SetupView } from '../../../core/quote/quote-view.ts'
import { renewSetupLink } from '../client/setups.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

/** Ends the link that hangs on a tank and makes a new one, to be printed and hung in its place. */
export function RenewSetupLink({ setup }: { setup: SetupView }): ReactElement {
  const [open, setOpen] = useState(false)
  const queries = useQueryClient()
  const renew = useMutation({
    mutationFn: () => renewSetupLink(setup.id),
    onSuccess: () => setOpen(false),
    onSettled: () =>
      Promise.all([queries.invalidateQueries({ queryKey: ['setups'] }), queries.invalidateQueries({ queryKey: ['customers'] })]),
  })
  const close = (): void => {
    renew.reset()
    setOpen(false)
  }
  return (
    <>
      <Button small look="plain" onClick={() => setOpen(true)}>
        New link<span className="sr"> for the setup of {setup.customerName}</span>
      </Button>
      <Dialog
        open={open}
        title={`End the setup link of ${setup.customerName} and make a new one?`}
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
          The sheet on the tank and every copy of the link stop opening. Steps and readings stay; give the new link to whoever looks after
          the tank.
        </p>
        <ErrorNotice error={renew.error} />
      </Dialog>
    </>
  )
}
