import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { getSession, takeLink, type LinkPurpose } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { homeOf } from '../places.ts'
import { sessionQuery } from '../session/session.ts'
import '../sign-in/sign-in.css'

/** Least length where a password is the only proof (NIST SP 800-63B-4). The server holds the rule; this is its words. */
const LEAST_PASSWORD = 15

export function JoinForm({ token, link }: { token: string; link: LinkPurpose }): ReactElement {
  const router = useRouter()
  const queries = useQueryClient()
  const [name, setName] = useState(link.name ?? '')
  const [signInName, setSignInName] = useState('')
  const [password, setPassword] = useState('')
  const [shown, setShown] = useState(false)
  const join = useMutation({
    mutationFn: async () => {
      await takeLink(token, { name: name.trim(), signInName: signInName.trim(), password })
      return getSession()
    },
    onSuccess: async (entered) => {
      queries.clear()
      queries.setQueryData(sessionQuery.queryKey, entered)
      await router.navigate({ to: link.purpose === 'first_manager' ? '/settings' : entered.person ? homeOf(entered.person.role) : '/' })
    },
  })
  const faults = faultsOf(join.error)
  return (
    <form
      className="form sign-in"
      onSubmit={(event) => {
        event.preventDefault()
        if (!join.isPending) join.mutate()
      }}
    >
      <p>
        {link.purpose === 'first_manager'
          ? 'You become the first manager: you add people, stores and products, and set the house’s units and money.'
          : `You join as ${link.role === 'advisor' ? 'an advisor' : `a ${link.role}`}.`}
      </p>
      <ErrorNotice error={join.error} shown={['name', 'signInName', 'password']} />
      <TextField
        label="Your name"
        name="name"
        autoComplete="name"
        value={name}
        onChange={setName}
        fault={faults['name']}
        required
        help="As others here see it beside what you report."
      />
      <TextField
        label="Sign-in name"
        name="username"
        autoComplete="username"
        value={signInName}
        onChange={setSignInName}
        fault={faults['signInName']}
        required
      />
      <TextField
        label="Password"
        name="new-password"
        type={shown ? 'text' : 'password'}
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
        fault={faults['password']}
        help={`At least ${LEAST_PASSWORD} characters; a sentence you will remember is good. Spaces and any letters are welcome.`}
        required
      />
      <TickField label="Show the password" checked={shown} onChange={setShown} />
      <p className="acts">
        <Button look="main" type="submit" busy={join.isPending}>
          {link.purpose === 'first_manager' ? 'Become the manager' : 'Join'}
        </Button>
      </p>
    </form>
  )
}
