import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

export function ArchiveDialog({
  open,
  name,
  onClose,
  onArchive,
}: {
  open: boolean
  name: string
  onClose: () => void
  onArchive: () => void
}): ReactElement {
  return (
    <Dialog
      open={open}
      title={`Archive ${name}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep it in the catalog</Button>
          <Button look="main" onClick={onArchive}>
            Archive it
          </Button>
        </>
      }
    >
      <p>It stays in old quotes and takes no new sightings; builds that hold it say so. You can take it out of the archive again.</p>
      <p>What is typed in the form now is not saved with it.</p>
    </Dialog>
  )
}
