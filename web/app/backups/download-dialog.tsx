import { useMutation } from '@tanstack/react-query'
import { useState, type ReactElement } from 'react'
import { backupFormAddress, checkBackup, type BackupView } from '../client/backups.ts'
import { faultsOf } from '../client/problem.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { sendForm } from '../parts/send-form.ts'
import { ErrorNotice } from '../parts/states.tsx'
import { OwnPasswordField } from '../session/own-password-field.tsx'

/** Asks for the password once more before a kept backup leaves the server. */
export function DownloadDialog({ backup, when, onClose }: { backup: BackupView | null; when: string; onClose: () => void }): ReactElement {
  const [password, setPassword] = useState('')
  const close = (): void => {
    setPassword('')
    download.reset()
    onClose()
  }
  const download = useMutation({
    // Asked first: a form that is refused would put its refusal in place of the screen.
    mutationFn: async (name: string) => {
      await checkBackup(name, password)
      sendForm(backupFormAddress(name), { password })
    },
    onSuccess: () => close(),
  })
  return (
    <Dialog
      open={backup !== null}
      title={`Download the backup of ${when}?`}
      onClose={close}
      actions={
        <>
          <Button onClick={close}>Leave it here</Button>
          <Button look="main" type="submit" form="download-backup" busy={download.isPending}>
            Download
          </Button>
        </>
      }
    >
      <form
        id="download-backup"
        className="form"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if (backup !== null && !download.isPending) download.mutate(backup.name)
        }}
      >
        <p>
          {backup?.locked
            ? 'It opens with the passphrase it was made with.'
            : 'It is not locked: whoever has the file has everything in it.'}
        </p>
        <OwnPasswordField value={password} onChange={setPassword} fault={faultsOf(download.error)['password']} />
        <ErrorNotice error={download.error} shown={['password']} />
      </form>
    </Dialog>
  )
}
