import { useMutation } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { backupFormAddress, makeBackup } from '../client/backups.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { TickField } from '../parts/choice-fields.tsx'
import { TextField } from '../parts/field.tsx'
import { sendForm } from '../parts/send-form.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { OwnPasswordField } from '../session/own-password-field.tsx'
import { sayBytes } from './backup-words.ts'

/** Makes a backup now and hands it over as a file. The password is asked for once more: the file holds everything. */
export function MakeBackupForm({ onMade }: { onMade: () => void }): ReactElement {
  const [password, setPassword] = useState('')
  const [locked, setLocked] = useState(false)
  const [passphrase, setPassphrase] = useState('')
  const make = useMutation({
    mutationFn: async () => {
      const made = await makeBackup({ password, passphrase: locked ? passphrase : null })
      onMade()
      sendForm(backupFormAddress(made.name), { password })
      return made
    },
    onSuccess: () => {
      setPassword('')
      setPassphrase('')
    },
  })
  const faults = faultsOf(make.error)
  return (
    <form
      className="form backup-form"
      noValidate
      aria-labelledby="make-head"
      onSubmit={(event) => {
        event.preventDefault()
        if (!make.isPending) make.mutate()
      }}
    >
      <h2 id="make-head">Make one now</h2>
      <p className="quiet">
        One file with everything: catalog with its pictures, sightings, customers, quotes, accounts and the key of printed links. Whoever
        has it has all of that.
      </p>
      <OwnPasswordField value={password} onChange={setPassword} fault={faults['password']} />
      <TickField label="Lock the file with a passphrase" checked={locked} onChange={setLocked} />
      {locked && (
        <TextField
          label="Passphrase"
          name="passphrase"
          type="text"
          autoComplete="off"
          value={passphrase}
          onChange={setPassphrase}
          fault={faults['passphrase']}
          help="15 characters or more. Write it down: without it nobody opens the file, not you either."
          required
        />
      )}
      <ErrorNotice error={make.error} shown={locked ? ['password', 'passphrase'] : ['password']} />
      <p className="acts">
        <Button look="main" type="submit" busy={make.isPending}>
          Make a backup and download it
        </Button>
        <output>{make.data ? `Made, read again and found whole: ${sayBytes(make.data.bytes)}.` : ''}</output>
      </p>
    </form>
  )
}
