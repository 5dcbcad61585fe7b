import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useRouter } from '@tanstack/react-router'
import { useState, type ReactElement } from 'react'
import { signOut, type SignedIn } from '../client/session.ts'
import { Button } from '../parts/button.tsx'
import { forgetAnswers } from '../offline/kept-answer.ts'
import { endMessagesHere } from '../offline/messages-here.ts'
import { forgetFiles } from '../offline/start-worker.ts'
import { forgetRecent } from '../post/recent.ts'
import { sendUnsent } from '../post/send-unsent.ts'
import { discardAllUnsent, readUnsent } from '../post/unsent.ts'
import { UnsentDialog } from './unsent-dialog.tsx'

/** Ends the session and deletes what this browser keeps of it. With unsent sightings it asks first: send, keep or discard. */
export function SignOut({ person }: { person: SignedIn }): ReactElement {
  const [left, setLeft] = useState<number | null>(null)
  const router = useRouter()
  const queries = useQueryClient()
  const leave = useMutation({
    // While there still is a session: a device that is passed on tells nobody's deals.
    mutationFn: async () => {
      await endMessagesHere().catch(() => undefined)
      return signOut()
    },
    onSuccess: async () => {
      setLeft(null)
      forgetRecent(person.id)
      forgetAnswers()
      await forgetFiles()
      queries.clear()
      await router.navigate({ to: '/sign-in', search: {} })
    },
  })
  const leaveIfSent = (): void => {
    const count = readUnsent(person.id).length
    if (count === 0) leave.mutate()
    else setLeft(count)
  }
  const send = useMutation({ mutationFn: () => sendUnsent(person.id), onSuccess: leaveIfSent })
  return (
    <>
      <Button onClick={leaveIfSent} busy={leave.isPending}>
        Sign out
      </Button>
      <UnsentDialog
        name={person.name}
        left={left}
        tried={send.isSuccess}
        busy={send.isPending || leave.isPending}
        error={leave.error ?? send.error}
        onClose={() => setLeft(null)}
        onKeep={() => leave.mutate()}
        onSend={() => send.mutate()}
        onDiscard={() => {
          discardAllUnsent(person.id)
          leave.mutate()
        }}
      />
    </>
  )
}
