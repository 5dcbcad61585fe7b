import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { faultsOf } from '../client/problem.ts'
import { changePassword } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import '../sign-in/sign-in.css'
import { PASSWORD_HELP } from '../sign-in/password-words.ts'

/** A new password against the present one. Other devices are signed out; this one stays. */
export function PasswordForm(): ReactElement {
  const [current, setCurrent] = useState('')
  const [password, setPassword] = useState('')
  const [shown, setShown] = useState(false)
  const queries = useQueryClient()
  const change = useMutation({
    mutationFn: () => changePassword(current, password),
    onSuccess: () => {
      setCurrent('')
      setPassword('')
      // It ended every other session, and began this one anew.
      void queries.invalidateQueries({ queryKey: ['own-sessions'] })
    },
  })
  const faults = faultsOf(change.error)
  const typing = (set: (text: string) => void) => (text: string) => {
    if (change.isSuccess) change.reset()
    set(text)
  }
  const type = shown ? 'text' : 'password'
  return (
    <form
      className="form sign-in"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (!change.isPending) change.mutate()
      }}
    >
      <h2>Change your password</h2>
      <TextField
        label="Present password"
        name="current-password"
        type={type}
        autoComplete="current-password"
        value={current}
        onChange={typing(setCurrent)}
        fault={faults['current']}
        required
      />
      <TextField
        label="New password"
        name="new-password"
        type={type}
        autoComplete="new-password"
        value={password}
        onChange={typing(setPassword)}
        fault={faults['password']}
        help={PASSWORD_HELP}
        required
      />
      <TickField label="Show the passwords" checked={shown} onChange={setShown} />
      <ErrorNotice error={change.error} shown={['current', 'password']} />
      <p className="acts">
        <Button look="main" type="submit" busy={change.isPending}>
          Change the password
        </Button>
        <output>{change.isSuccess ? 'Changed. You are signed out everywhere else.' : ''}</output>
      </p>
    </form>
  )
}
