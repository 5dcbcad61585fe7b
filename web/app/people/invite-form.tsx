import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { ROLES, type Role } from '../../../core/people/roles.ts'
import { invite } from '../client/people.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { MadeLink } from './made-link.tsx'

const ROLE_WORDS: Record<Role, string> = {
  member: 'Posts and judges prices.',
  advisor: 'Also makes quotes and keeps the catalog.',
  manager: 'Also keeps stores, people and settings.',
}

/** Makes a one-use link. It is shown once: only its hash is kept. */
export function InviteForm(): ReactElement {
  const [name, setName] = useState('')
  const [role, setRole] = useState<Role>('member')
  const queries = useQueryClient()
  const make = useMutation({
    mutationFn: () => invite({ name: name.trim(), role }),
    onSuccess: async () => {
      setName('')
      await queries.invalidateQueries({ queryKey: ['people', 'invitations'] })
    },
  })
  const faults = faultsOf(make.error)
  return (
    <form
      className="form invite"
      onSubmit={(event) => {
        event.preventDefault()
        if (!make.isPending) make.mutate()
      }}
    >
      <div className="form-row">
        <TextField label="Name of the person to invite" value={name} onChange={setName} fault={faults['name']} required />
        <ChoiceField
          label="As"
          value={role}
          onChange={setRole}
          help={ROLE_WORDS[role]}
          options={ROLES.map((value) => ({ value, label: `${value[0]?.toUpperCase()}${value.slice(1)}` }))}
        />
      </div>
      <ErrorNotice error={make.error} shown={['name', 'role']} />
      <p className="acts">
        <Button type="submit" look="main" busy={make.isPending} off={name.trim() === ''}>
          Make a one-use link
        </Button>
        {name.trim() === '' && !make.data && <span className="reason">Write a name first.</span>}
      </p>
      {make.data && <MadeLink key={make.data.url} {...make.data} gives="gets the account" />}
    </form>
  )
}
