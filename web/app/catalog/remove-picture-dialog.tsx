import type { ReactElement } from 'react'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'

interface Props {
  open: boolean
  name: string
  onClose: () => void
  onRemove: () => void
}

export function RemovePictureDialog({ open, name, onClose, onRemove }: Props): ReactElement {
  return (
    <Dialog
      open={open}
      title={`Take away the picture of ${name}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep it</Button>
          <Button look="main" onClick={onRemove}>
            Take it away
          </Button>
        </>
      }
    >
      <p>It is not kept anywhere else here. The product stays as it is.</p>
    </Dialog>
  )
}
