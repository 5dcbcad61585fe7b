import type { ReactElement, ReactNode } from 'react'
import { ROLES, type Role } from '../../../core/people/roles.ts'
import type { PersonRow } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import type { Column } from '../parts/ruled-table.tsx'

interface Setting {
  /** One's own role and account are changed by another manager. */
  myId: string
  onRole: (person: PersonRow, role: Role) => void
  onLetIn: (person: PersonRow) => void
  onDisable: (person: PersonRow) => void
  onPassword: (person: PersonRow) => void
}

export const peopleColumns = (setting: Setting): Array<Column<PersonRow>> => [
  { key: 'name', head: 'Name', rowHead: true, phone: 'lead', cell: ({ name, id }) => (id === setting.myId ? `${name} (you)` : name) },
  { key: 'sign-in', head: 'Sign-in name', phone: 'below', cell: ({ signInName }) => signInName },
  { key: 'role', head: 'Role', phone: 'figure', cell: (person) => roleCell(person, setting) },
  { key: 'state', head: 'State', end: true, phone: 'state', cell: (person) => stateCell(person, setting) },
]

function roleCell(person: PersonRow, { myId, onRole }: Setting): ReactNode {
  if (person.id === myId) return person.role
  return (
    <div className="entry">
      <select aria-label={`Role of ${person.called}`} value={person.role} onChange={(event) => onRole(person, event.target.value as Role)}>
        {ROLES.map((role) => (
          <option key={role} value={role}>
            {role}
          </option>
        ))}
      </select>
    </div>
  )
}

function stateCell(person: PersonRow, { myId, onLetIn, onDisable, onPassword }: Setting): ReactElement | string {
  if (person.id === myId) return 'signed in'
  if (!person.disabled) {
    return (
      <span className="row-acts">
        <Button small look="plain" aria-label={`New password for ${person.called}`} onClick={() => onPassword(person)}>
          New password
        </Button>
        <Button small aria-label={`Disable ${person.called}`} onClick={() => onDisable(person)}>
          Disable
        </Button>
      </span>
    )
  }
  return (
    <span className="row-acts">
      <span>disabled</span>
      <Button small aria-label={`Let in again: ${person.called}`} onClick={() => onLetIn(person)}>
        Let in again
      </Button>
    </span>
  )
}
