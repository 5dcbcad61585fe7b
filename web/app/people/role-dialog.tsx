import type { ReactElement } from 'react'
import type { Role } from '../../../core/people/roles.ts'
import type { PersonRow } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

export interface RoleChange {
  person: PersonRow
  role: Role
}
interface Props {
  /** Null: closed. */
  asked: RoleChange | null
  busy: boolean
  error: unknown
  onClose: () => void
  onChange: (change: RoleChange) => void
}

/** An arrow key in the list of roles is soon pressed: the change is asked for before it is made. */
export function RoleDialog({ asked, busy, error, onClose, onChange }: Props): ReactElement {
  return (
    <Dialog
      open={asked !== null}
      title={asked ? `Make ${asked.person.called} ${asked.role === 'advisor' ? 'an' : 'a'} ${asked.role}?` : ''}
      onClose={onClose}
      actions={
        asked && (
          <>
            <Button onClick={onClose}>Leave as {asked.person.role}</Button>
            <Button look="main" busy={busy} onClick={() => onChange(asked)}>
              Change {asked.person.role} to {asked.role}
            </Button>
          </>
        )
      }
    >
      <p>{asked?.person.called} is signed out everywhere and signs in again with the new role.</p>
      <ErrorNotice error={error} />
    </Dialog>
  )
}
