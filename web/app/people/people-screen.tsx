import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import type { Role } from '../../../core/people/roles.ts'
import { changePerson, listPeople, type PersonRow } from '../client/people.ts'
import { RuledTable } from '../parts/ruled-table.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice, LoadingRows } from '../parts/states.tsx'
import { PasswordAgainDialog } from '../session/password-again-dialog.tsx'
import { usePerson } from '../session/session.ts'
import { DisableDialog } from './disable-dialog.tsx'
import { InviteForm } from './invite-form.tsx'
import { PasswordLinkDialog } from './password-link-dialog.tsx'
import { OpenInvitations } from './open-invitations.tsx'
import { peopleColumns } from './people-columns.tsx'
import { RoleDialog, type RoleChange } from './role-dialog.tsx'
import './people.css'

/** Who may sign in, as what. */
export function PeopleScreen(): ReactElement {
  const people = useQuery({ queryKey: ['people'], queryFn: listPeople })
  const queries = useQueryClient()
  const me = usePerson()
  const [forgot, setForgot] = useState<PersonRow | null>(null)
  const [asked, setAsked] = useState<PersonRow | null>(null)
  const [roleAsked, setRoleAsked] = useState<RoleChange | null>(null)
  const change = useMutation({
    mutationFn: ({ person, body }: { person: PersonRow; body: { role?: Role; disabled?: boolean } }) => changePerson(person, body),
    onSettled: () => queries.invalidateQueries({ queryKey: ['people'] }),
    onSuccess: () => {
      setAsked(null)
      setRoleAsked(null)
    },
  })
  const columns = peopleColumns({
    myId: me.id,
    onRole: (person, role) => {
      change.reset()
      setRoleAsked({ person, role })
    },
    onLetIn: (person) => change.mutate({ person, body: { disabled: false } }),
    onDisable: setAsked,
    onPassword: setForgot,
  })
  return (
    <Screen
      title="People"
      below="A change of role ends that person’s sessions; they sign in again."
      actions={
        <>
          <Link to="/people/waiting" className="btn">
            Sightings that wait
          </Link>
          <Link to="/people/trail" className="btn">
            Who changed what
          </Link>
        </>
      }
    >
      <InviteForm />
      <OpenInvitations />
      <section className="form" aria-labelledby="people-head">
        <div className="sechead">
          <h2 id="people-head">Accounts</h2>
          {people.data && <p className="quiet">{people.data.length === 1 ? 'One account' : `${people.data.length} accounts`}</p>}
        </div>
        <ErrorNotice
          error={people.error ?? (asked || roleAsked ? null : change.error)}
          onRetry={() => void people.refetch()}
          retryWords="Read again"
        />
        {people.isPending && <LoadingRows what="the accounts" />}
        {people.data && <RuledTable caption="Accounts" columns={columns} rows={people.data} rowKey={({ id }) => id} />}
      </section>
      <RoleDialog
        asked={roleAsked}
        busy={change.isPending}
        error={change.error}
        onClose={() => {
          setRoleAsked(null)
          change.reset()
        }}
        onChange={({ person, role }) => change.mutate({ person, body: { role } })}
      />
      <PasswordLinkDialog person={forgot} onClose={() => setForgot(null)} />
      <DisableDialog
        name={asked?.called ?? null}
        busy={change.isPending}
        error={change.error}
        onClose={() => setAsked(null)}
        onDisable={() => asked && change.mutate({ person: asked, body: { disabled: true } })}
      />
      <PasswordAgainDialog />
    </Screen>
  )
}
