import { useMutation } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { makePasswordLink, type PersonRow } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { MadeLink } from './made-link.tsx'

/** Makes the link that sets a new password, and shows it once. */
export function PasswordLinkDialog({ person, onClose }: { person: PersonRow | null; onClose: () => void }): ReactElement {
  const make = useMutation({ mutationFn: (id: string) => makePasswordLink(id) })
  const close = (): void => {
    make.reset()
    onClose()
  }
  return (
    <Dialog
      open={person !== null}
      title={make.data ? `New password for ${person?.called ?? ''}` : `Let ${person?.called ?? ''} set a new password?`}
      onClose={close}
      actions={
        make.data ? (
          <Button look="main" onClick={close}>
            I have sent it
          </Button>
        ) : (
          <>
            <Button onClick={close}>Leave it</Button>
            <Button look="main" busy={make.isPending} onClick={() => person && make.mutate(person.id)}>
              Make a one-use link
            </Button>
          </>
        )
      }
    >
      {!make.data && (
        <p>
          You get a link to send. Until it is used nothing changes; then the old password is gone and they are signed out everywhere. Make
          sure that it is really them who ask.
        </p>
      )}
      <ErrorNotice error={make.error} conflict="No link for this account" />
      {make.data && <MadeLink {...make.data} gives="sets the password" />}
    </Dialog>
  )
}
