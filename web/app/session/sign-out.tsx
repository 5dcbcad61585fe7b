import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { signOut, type SignedIn } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'
import { forgetRecent } from '../post/recent.ts'
import { sendUnsent } from '../post/send-unsent.ts'
import { discardAllUnsent, readUnsent } from '../post/unsent.ts'

/** Ends the session and deletes what this browser keeps of it. With unsent sightings it asks first: send, keep or discard. */
export function SignOut({ person }: { person: SignedIn }): ReactElement {
  const [asking, setAsking] = useState(false)
  const [left, setLeft] = useState(0)
  const router = useRouter()
  const queries = useQueryClient()
  const leave = useMutation({
    mutationFn: signOut,
    onSuccess: async () => {
      setAsking(false)
      forgetRecent(person.id)
      queries.clear()
      await router.navigate({ to: '/sign-in', search: {} })
    },
  })
  const send = useMutation({
    mutationFn: () => sendUnsent(person.id),
    onSuccess: () => {
      const count = readUnsent(person.id).length
      setLeft(count)
      if (count === 0) leave.mutate()
    },
  })
  const ask = (): void => {
    const count = readUnsent(person.id).length
    setLeft(count)
    if (count === 0) leave.mutate()
    else setAsking(true)
  }
  return (
    <>
      <Button onClick={ask} busy={leave.isPending}>
        Sign out
      </Button>
      <Dialog
        open={asking}
        title={left === 1 ? 'One sighting is not sent yet. Sign out?' : `${left} sightings are not sent yet. Sign out?`}
        onClose={() => setAsking(false)}
        actions={
          <>
            <Button onClick={() => leave.mutate()}>Keep them and sign out</Button>
            <Button
              onClick={() => {
                discardAllUnsent(person.id)
                leave.mutate()
              }}
            >
              Discard them and sign out
            </Button>
            <Button look="main" busy={send.isPending} onClick={() => send.mutate()}>
              Send, then sign out
            </Button>
          </>
        }
      >
        <p>Kept ones stay on this device for {person.name} alone and post by themselves after the next sign-in. Discarded ones are gone.</p>
        {send.isSuccess && left > 0 && <p className="fault">{left === 1 ? 'One' : left} could not be sent now.</p>}
        <ErrorNotice error={leave.error ?? send.error} />
      </Dialog>
    </>
  )
}
