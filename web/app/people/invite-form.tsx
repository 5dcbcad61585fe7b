import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { ROLES, type Role } from '../../../core/people/roles.ts'
import { civilDateAt, sayWeekday, yearOf } from '../../../core/dates.ts'
import { invite, type Invitation } from '../client/people.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { ChoiceField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'

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
      {make.data && <MadeLink key={make.data.url} {...make.data} />}
    </form>
  )
}

function MadeLink({ url, expiresAt, thisComputerOnly }: Invitation): ReactElement {
  const install = useInstall()
  const thisYear = yearOf(useToday())
  const [copied, setCopied] = useState<boolean | null>(null)
  const until = sayWeekday(civilDateAt(Date.parse(expiresAt), install.timeZone), thisYear)
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(url)
      setCopied(true)
    } catch {
      setCopied(false)
    }
  }
  return (
    <Told kind="warn" title="Copy it now: it is shown once" live>
      <p className="made-link">
        <label className="sr" htmlFor="made-link">
          One-use link
        </label>
        <input id="made-link" readOnly value={url} onFocus={(event) => event.target.select()} />
      </p>
      <p>Works once, until {until}. Whoever opens it first gets the account, so send it to that person alone.</p>
      {thisComputerOnly && (
        <p>
          <strong>This computer only:</strong> the link names this computer, and on any other it leads nowhere. Set PUBLIC_URL to the https
          address of this place first.
        </p>
      )}
      <p className="acts">
        <Button onClick={() => void copy()}>Copy the link</Button>
        <output>{copied === true ? 'Copied.' : copied === false ? 'Not copied: select it and copy by hand.' : ''}</output>
      </p>
    </Told>
  )
}
