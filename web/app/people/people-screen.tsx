import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { ROLES, type Role } from '../../../core/people/roles.ts'
import { changePerson, listPeople, type PersonRow } from '../client/people.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RuledTable, type Column } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { usePerson } from '../session/session.ts'
import { InviteForm } from './invite-form.tsx'
import './people.css'

/** Who may sign in, as what. */
export function PeopleScreen(): ReactElement {
  const people = useQuery({ queryKey: ['people'], queryFn: listPeople })
  const queries = useQueryClient()
  const me = usePerson()
  const [asked, setAsked] = useState<PersonRow | null>(null)
  const change = useMutation({
    mutationFn: ({ person, body }: { person: PersonRow; body: { role?: Role; disabled?: boolean } }) => changePerson(person, body),
    onSettled: () => queries.invalidateQueries({ queryKey: ['people'] }),
    onSuccess: () => setAsked(null),
  })
  const columns: Array<Column<PersonRow>> = [
    { key: 'name', head: 'Name', rowHead: true, phone: 'lead', cell: ({ name, id }) => (id === me.id ? `${name} (you)` : name) },
    { key: 'sign-in', head: 'Sign-in name', phone: 'below', cell: ({ signInName }) => signInName },
    {
      key: 'role',
      head: 'Role',
      phone: 'figure',
      cell: (person) =>
        person.id === me.id ? (
          person.role
        ) : (
          <div className="entry">
            <select
              aria-label={`Role of ${person.name}`}
              value={person.role}
              onChange={(event) => change.mutate({ person, body: { role: event.target.value as Role } })}
            >
              {ROLES.map((role) => (
                <option key={role} value={role}>
                  {role}
                </option>
              ))}
            </select>
          </div>
        ),
    },
    {
      key: 'act',
      head: 'State',
      phone: 'state',
      cell: (person) =>
        person.id === me.id ? (
          'signed in'
        ) : person.disabled ? (
          <>
            disabled{' '}
            <Button small aria-label={`Let ${person.name} in again`} onClick={() => change.mutate({ person, body: { disabled: false } })}>
              Let in again
            </Button>
          </>
        ) : (
          <Button small aria-label={`Disable ${person.name}`} onClick={() => setAsked(person)}>
            Disable
          </Button>
        ),
    },
  ]
  return (
    <Screen title="People" below="A change of role ends that person’s sessions; they sign in again.">
      <InviteForm />
      <section className="form" aria-labelledby="people-head">
        <div className="sechead">
          <h2 id="people-head">Accounts</h2>
          {people.data && <p className="quiet">{people.data.length === 1 ? 'One account' : `${people.data.length} accounts`}</p>}
        </div>
        <ErrorNotice error={people.error ?? (asked ? null : change.error)} onRetry={() => void people.refetch()} retryWords="Read again" />
        {people.isPending && <LoadingRows what="the accounts" />}
        {people.data && <RuledTable caption="Accounts" columns={columns} rows={people.data} rowKey={({ id }) => id} />}
      </section>
      <Dialog
        open={asked !== null}
        title={`Disable ${asked?.name ?? ''}?`}
        onClose={() => setAsked(null)}
        actions={
          <>
            <Button onClick={() => setAsked(null)}>Leave as it is</Button>
            <Button look="main" busy={change.isPending} onClick={() => asked && change.mutate({ person: asked, body: { disabled: true } })}>
              Disable the account
            </Button>
          </>
        }
      >
        <p>They are signed out everywhere and cannot sign in. What they reported stays; you can let them in again.</p>
        <ErrorNotice error={change.error} />
      </Dialog>
    </Screen>
  )
}
