import { useMutation, useQueryClient } from '@tanstack/react-query'
import type { ReactElement } from 'react'
import { eraseCustomer, type CustomerView } from '../client/customers.ts'
import type { Versioned } from '../client/request.ts'
import { Button } from '../parts/button.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { ErrorNotice } from '../parts/states.tsx'

/** Forgets a person at their wish: what goes, what stays, and that it cannot be undone. */
export function EraseDialog({
  customer,
  open,
  onClose,
}: {
  customer: Versioned<CustomerView>
  open: boolean
  onClose: () => void
}): ReactElement {
  const queries = useQueryClient()
  const { value, etag } = customer
  const erase = useMutation({
    mutationFn: () => eraseCustomer(value.id, etag || `"${value.version}"`),
    onSuccess: async () => {
      onClose()
      await queries.invalidateQueries({ queryKey: ['customers'] })
    },
  })
  return (
    <Dialog
      open={open}
      title={`Erase ${value.name}?`}
      onClose={onClose}
      actions={
        <>
          <Button onClick={onClose}>Keep them</Button>
          <Button look="main" busy={erase.isPending} onClick={() => erase.mutate()}>
            Erase this customer
          </Button>
        </>
      }
    >
      <p>Name, how to reach them, the note, their gear and what they wrote with an answer are gone for good. This cannot be undone.</p>
      <p>
        Quotes that were issued stay, with their figures; page and paper then say on which day the name was erased. Titles, notes and places
        that you wrote in a quote stay as they are, and so does what is in a backup.
      </p>
      <ErrorNotice error={erase.error} />
    </Dialog>
  )
}
