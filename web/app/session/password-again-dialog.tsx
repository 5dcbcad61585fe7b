import { useMutation } from '@tanstack/react-query'
import { useEffect, useState, type ReactElement } from 'react'
import { PROOF_MINUTES } from '../../../core/people/sign-in-limits.ts'
import { answerPasswordAgain } from '../client/password-again.ts'
import { faultsOf } from '../client/problem.ts'
import { proveOwnPassword } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { OwnPasswordField } from './own-password-field.tsx'

type Answer = (given: boolean) => void

/** Stands on a screen whose calls may be refused until the password is given once more: asks for it, and the call goes on by itself. */
export function PasswordAgainDialog(): ReactElement {
  const [waiting, setWaiting] = useState<{ answer: Answer } | null>(null)
  const [password, setPassword] = useState('')
  const prove = useMutation({ mutationFn: proveOwnPassword, onSuccess: () => end(true) })
  useEffect(() => answerPasswordAgain(() => new Promise((answer) => setWaiting({ answer }))), [])
  function end(given: boolean): void {
    waiting?.answer(given)
    setWaiting(null)
    setPassword('')
    prove.reset()
  }
  return (
    <Dialog
      open={waiting !== null}
      title="Is it you?"
      onClose={() => end(false)}
      actions={
        <>
          <Button onClick={() => end(false)}>Leave it</Button>
          <Button look="main" type="submit" form="password-again" busy={prove.isPending}>
            Go on
          </Button>
        </>
      }
    >
      <form
        id="password-again"
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (!prove.isPending) prove.mutate(password)
        }}
      >
        <p>
          This gives or takes what a manager may do, so give your password once more. You are not asked again for {PROOF_MINUTES} minutes on
          this device.
        </p>
        <OwnPasswordField value={password} onChange={setPassword} fault={faultsOf(prove.error)['password']} focusFirst />
        <ErrorNotice error={prove.error} shown={['password']} />
      </form>
    </Dialog>
  )
}
