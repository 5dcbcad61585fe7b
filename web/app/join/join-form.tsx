import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { takeLink, type LinkPurpose, type NewAccount } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { homeOf } from '../places.ts'
import { PASSWORD_HELP } from '../sign-in/password-words.ts'
import { useEntering } from '../sign-in/use-entering.ts'
import '../sign-in/sign-in.css'

const welcomeOf = (link: LinkPurpose): string =>
  link.purpose === 'first_manager'
    ? 'You become the first manager: you add people, stores and products, and set units and paper.'
    : `You join as ${link.role === 'advisor' ? 'an advisor' : `a ${link.role}`}.`

export function JoinForm({ token, link }: { token: string; link: LinkPurpose }): ReactElement {
  const router = useRouter()
  const first = link.purpose === 'first_manager'
  const [person, setPerson] = useState<Joining>({
    name: link.name ?? '',
    signInName: '',
    password: '',
    timeZone: first ? ownTimeZone() : null,
  })
  const join = useEntering(
    () => takeLink(token, accountOf(person)),
    (session) => router.history.push(first ? '/settings' : session.person ? homeOf(session.person.role) : '/'),
  )
  return (
    <form
      className="form sign-in"
      onSubmit={(event) => {
        event.preventDefault()
        if (!join.isPending) join.mutate()
      }}
    >
      <p>{welcomeOf(link)}</p>
      <ErrorNotice error={join.error} shown={['name', 'signInName', 'password', 'timeZone']} />
      <JoinFields person={person} faults={faultsOf(join.error)} set={(part) => setPerson({ ...person, ...part })} />
      <Button look="main" type="submit" busy={join.isPending}>
        {first ? 'Become the manager' : 'Join'}
      </Button>
    </form>
  )
}

interface Joining {
  name: string
  signInName: string
  password: string
  /** Of the place; null for everyone but its first manager. */
  timeZone: string | null
}

const ownTimeZone = (): string => Intl.DateTimeFormat().resolvedOptions().timeZone

const accountOf = ({ name, signInName, password, timeZone }: Joining): NewAccount => ({
  name: name.trim(),
  signInName: signInName.trim(),
  password,
  ...(timeZone !== null && { timeZone: timeZone.trim() }),
})

function JoinFields({
  person,
  faults,
  set,
}: {
  person: Joining
  faults: Record<string, string>
  set: (part: Partial<Joining>) => void
}): ReactElement {
  const [shown, setShown] = useState(false)
  return (
    <>
      <TextField
        label="Your name"
        name="name"
        autoComplete="name"
        value={person.name}
        onChange={(name) => set({ name })}
        fault={faults['name']}
        help="As others here see it beside what you report."
        required
      />
      <TextField
        label="Sign-in name"
        name="username"
        autoComplete="username"
        value={person.signInName}
        onChange={(signInName) => set({ signInName })}
        fault={faults['signInName']}
        required
      />
      <TextField
        label="Password"
        name="new-password"
        type={shown ? 'text' : 'password'}
        autoComplete="new-password"
        value={person.password}
        onChange={(password) => set({ password })}
        fault={faults['password']}
        help={PASSWORD_HELP}
        required
      />
      <TickField label="Show the password" checked={shown} onChange={setShown} />
      {person.timeZone !== null && (
        <TextField
          label="Time zone of this place"
          value={person.timeZone}
          onChange={(timeZone) => set({ timeZone })}
          fault={faults['timeZone']}
          help="As this browser has it. It says when a day begins, and the last day of a sale ends."
          required
        />
      )}
    </>
  )
}
