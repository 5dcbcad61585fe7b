import { useRouter, useSearch } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { signIn } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { Screen } from '../parts/screen.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { homeOf, safeNext } from '../places.ts'
import { useSession } from '../session/session.ts'
import { useEntering } from './use-entering.ts'
import './sign-in.css'

/** Signs in and goes on to where the person wanted to go. */
export function SignInScreen(): ReactElement {
  const { next } = useSearch({ from: '/sign-in' })
  const session = useSession()
  const router = useRouter()
  const [name, setName] = useState('')
  const [password, setPassword] = useState('')
  const enter = useEntering(
    () => signIn(name.trim(), password),
    ({ person }) => router.history.push(safeNext(next) ?? (person ? homeOf(person.role) : '/')),
  )
  const faults = faultsOf(enter.error)
  return (
    <Screen title="Sign in" above={session?.install.name} width="narrow">
      <form
        className="form sign-in"
        onSubmit={(event) => {
          event.preventDefault()
          if (!enter.isPending) enter.mutate()
        }}
      >
        <ErrorNotice error={enter.error} shown={['signInName', 'password']} />
        <TextField
          label="Sign-in name"
          name="username"
          autoComplete="username"
          value={name}
          onChange={setName}
          fault={faults['signInName']}
          required
          focusFirst
        />
        <TextField
          label="Password"
          name="password"
          type="password"
          autoComplete="current-password"
          value={password}
          onChange={setPassword}
          fault={faults['password']}
          required
        />
        <Button look="main" type="submit" busy={enter.isPending}>
          Sign in
        </Button>
        <p className="help">No account yet? A manager invites you with a one-use link.</p>
        <p className="help">The password is gone? Ask a manager for a one-use link, made under People; it lets you choose a new one.</p>
      </form>
    </Screen>
  )
}
