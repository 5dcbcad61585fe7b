import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { takeLink, type LinkPurpose } from '../client/session.ts'
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
  const [person, setPerson] = useState({ name: link.name ?? '', signInName: '', password: '' })
  const first = link.purpose === 'first_manager'
  const join = useEntering(
    () => takeLink(token, { ...person, name: person.name.trim(), signInName: person.signInName.trim() }),
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
      <ErrorNotice error={join.error} shown={['name', 'signInName', 'password']} />
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
}

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
    </>
  )
}
