import { useMutation, useQueryClient } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { yearOf } from '../../../core/dates.ts'
import { removeOwnMail, setOwnMail, type HearingView } from '../client/hearing.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { TextField } from '../parts/field.tsx'
import { sayDay } from '../parts/say-instant.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { Told } from '../parts/told.tsx'
import { useInstall, useToday } from '../session/session.ts'
import { HEARING } from './hearing-key.ts'

type Mail = NonNullable<HearingView['mail']>

/** An address for deals: given, confirmed through a mail, taken away. */
export function MailForm({ mail }: { mail: Mail }): ReactElement {
  const queries = useQueryClient()
  const [typed, setTyped] = useState<string | null>(null)
  const ask = useMutation({
    mutationFn: setOwnMail,
    onSuccess: (view) => {
      queries.setQueryData(HEARING, view)
      setTyped(null)
    },
    // A mail that was not taken leaves the address all the same.
    onError: () => queries.invalidateQueries({ queryKey: HEARING }),
  })
  const remove = useMutation({
    mutationFn: removeOwnMail,
    onMutate: () => ask.reset(),
    onSettled: () => queries.invalidateQueries({ queryKey: HEARING }),
  })
  const address = typed ?? mail.address ?? ''
  const isNew = address.trim() !== (mail.address ?? '')
  return (
    <form
      noValidate
      className="hearing-way"
      onSubmit={(event) => {
        event.preventDefault()
        if (!ask.isPending) ask.mutate(address.trim())
      }}
    >
      <h3>By e-mail</h3>
      <TextField
        label="E-mail address"
        name="email"
        type="email"
        autoComplete="email"
        inputMode="email"
        value={address}
        onChange={(text) => {
          ask.reset()
          setTyped(text)
        }}
        fault={faultsOf(ask.error)['address']}
        help="At most one mail an hour, none while there is nothing to tell. It is used for nothing else and shown to nobody."
      />
      <MailState mail={mail} />
      <ErrorNotice error={ask.error ?? remove.error} shown={['address']} />
      <p className="acts">
        {(isNew || !mail.confirmed) && (
          <Button type="submit" busy={ask.isPending}>
            {mail.address !== null && !isNew ? 'Send the mail again' : 'Send a mail to confirm it'}
          </Button>
        )}
        {mail.address !== null && (
          <Button busy={remove.isPending} onClick={() => remove.mutate(undefined, { onSuccess: () => setTyped(null) })}>
            Take the address away
          </Button>
        )}
        <output>{ask.isSuccess ? 'Sent. Open the link in the mail within two days.' : ''}</output>
      </p>
    </form>
  )
}

/** Where the kept address stands: waiting for its link, good, or not reached. */
function MailState({ mail: { address, confirmed, failingSince } }: { mail: Mail }): ReactElement | null {
  const { timeZone } = useInstall()
  const thisYear = yearOf(useToday())
  if (address === null) return null
  if (failingSince !== null)
    return (
      <Told kind="warn" title={`No mail to ${address} was taken since ${sayDay(failingSince, timeZone, thisYear)}`}>
        <p>Check the address, or take it away. What could not be sent for a day stands under your watches alone.</p>
      </Told>
    )
  return (
    <p className="quiet">
      {confirmed
        ? `Confirmed: deals come to ${address}.`
        : `Not confirmed yet: nothing is sent to ${address} until you open the link in the mail.`}
    </p>
  )
}
