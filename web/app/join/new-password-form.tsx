import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { setPasswordByLink, type LinkPurpose } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { homeOf } from '../places.ts'
import { PASSWORD_HELP } from '../sign-in/password-words.ts'
import { useEntering } from '../sign-in/use-entering.ts'
import '../sign-in/sign-in.css'

/** Opened from a link that a manager made: a new password for an account that is there. The sign-in name stands in a field for password keepers. */
export function NewPasswordForm({ token, link }: { token: string; link: LinkPurpose }): ReactElement {
  const router = useRouter()
  const [password, setPassword] = useState('')
  const [shown, setShown] = useState(false)
  const set = useEntering(
    () => setPasswordByLink(token, password),
    (session) => router.history.push(session.person ? homeOf(session.person.role) : '/'),
  )
  return (
    <form
      className="form sign-in"
      onSubmit={(event) => {
        event.preventDefault()
        if (!set.isPending) set.mutate()
      }}
    >
      <p>For {link.name}. Afterwards you are signed in here, and signed out everywhere else.</p>
      <ErrorNotice error={set.error} shown={['password']} />
      <p>
        <label className="label" htmlFor="link-sign-in-name">
          Sign-in name
        </label>
        <input
          id="link-sign-in-name"
          className="sign-in-name"
          name="username"
          autoComplete="username"
          readOnly
          value={link.signInName ?? ''}
        />
      </p>
      <TextField
        label="New password"
        name="new-password"
        type={shown ? 'text' : 'password'}
        autoComplete="new-password"
        value={password}
        onChange={setPassword}
        fault={faultsOf(set.error)['password']}
        help={PASSWORD_HELP}
        required
      />
      <TickField label="Show the password" checked={shown} onChange={setShown} />
      <Button look="main" type="submit" busy={set.isPending}>
        Set the password and sign in
      </Button>
    </form>
  )
}
